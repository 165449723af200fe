import type { Leaf } from "../store/index.js";
import { words } from "../words/index.js";

/** The steps of the job as they are written on the page. */
export const LEAF_TITLES: Readonly<Record<Leaf, string>> = {
  survey: words.desk.survey,
  dig: words.desk.dig,
  flow: words.desk.flow,
  machines: words.desk.machines,
  cost: words.desk.cost,
  handover: words.desk.handover,
};
