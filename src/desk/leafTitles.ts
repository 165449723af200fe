import type { Leaf } from "../store/index.js";

/** The steps of the job as they are written on the page. */
export const LEAF_TITLES: Readonly<Record<Leaf, string>> = {
  survey: "Survey",
  dig: "Dig",
  flow: "Flow",
  machines: "Machines",
  cost: "Cost",
  handover: "Handover",
};
