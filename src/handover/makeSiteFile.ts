/** The site itself: the one file that opens again with all that it holds. */
import { siteFileName, writeSite } from "../site/index.js";
import type { HandoverMaker } from "./job.js";

export const makeSiteFile: HandoverMaker = ({ site }) =>
  Promise.resolve([
    { name: siteFileName(site.name), type: "application/json", data: writeSite(site) },
  ]);
