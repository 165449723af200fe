/** All sheets of a job in their order, each with its frame and its number. */
import { framedPage, roomOf } from "./frame.js";
import type { LegendRow, Page, PlanWindow, SheetContent, SheetJob, SheetMaker } from "./paper.js";
import { pipeProfiles } from "./sections/profiles.js";

/** Who draws what, in the order of the set. Whoever adds a kind of sheet adds its maker here. */
const MAKERS: readonly SheetMaker[] = [pipeProfiles];

/**
 * The whole set of sheets.
 * @param windows what a person chose to see on a plan, by the sheet's id
 */
export function sheetsOf(
  job: SheetJob,
  windows: Readonly<Record<string, PlanWindow>> = {},
): Page[] {
  const room = (legend: readonly LegendRow[]) => roomOf(job.paper, legend);
  const contents: SheetContent[] = MAKERS.flatMap((make) => [...make(job, room, windows)]);
  return contents.map((content, i) => framedPage(job, content, i + 1, contents.length));
}
