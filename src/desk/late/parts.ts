import type { Leaf } from "../../store/index.js";
import { fetchInTurn, latePart } from "./latePart.js";
import type { LatePart } from "./latePart.js";

/** The leaves of the book, each with a file of its own. */
export const LEAF_PARTS: Readonly<Record<Leaf, LatePart<object>>> = {
  survey: latePart(async () => (await import("../survey/SurveyLeaf.js")).SurveyLeaf),
  dig: latePart(async () => (await import("../dig/DigLeaf.js")).DigLeaf),
  flow: latePart(async () => (await import("../flow/FlowLeaf.js")).FlowLeaf),
  machines: latePart(async () => (await import("../machines/MachinesLeaf.js")).MachinesLeaf),
  cost: latePart(async () => (await import("../cost/CostLeaf.js")).CostLeaf),
  handover: latePart(async () => (await import("../handover/HandoverLeaf.js")).HandoverLeaf),
};

/** The drawn ground, with all that draws it. */
export const SCENE_PART = latePart(async () => (await import("../../scene/index.js")).SiteScene);

/** The leaf for a site of one's own. */
export const START_PART = latePart(async () => (await import("../start/StartSite.js")).StartSite);

/** The ground cut open. */
export const SECTION_PART = latePart(
  async () => (await import("../section/SectionPanel.js")).SectionPanel,
);

/** What is printed. */
export const REPORT_PART = latePart(
  async () => (await import("../handover/ReportBody.js")).ReportBody,
);

/** Resolves when the page has nothing else to do. */
function atRest(): Promise<void> {
  return new Promise((done) => {
    if ("requestIdleCallback" in window) requestIdleCallback(() => done(), { timeout: 500 });
    else setTimeout(done, 200);
  });
}

/** Fetches every part that was not wanted yet, so that it opens at once, network or not. */
export function fetchTheRest(): Promise<void> {
  return fetchInTurn([...Object.values(LEAF_PARTS), SECTION_PART, REPORT_PART, START_PART], atRest);
}
