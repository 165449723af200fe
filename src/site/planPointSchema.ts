import { z } from "zod";

/** A place in plan: [x, y] in metres, x east and y north of the site's origin. */
export const planPointSchema = z.tuple([z.number(), z.number()]);
