/** All sheets of a job in their order, each with its frame and its number. */
import { frontSheets } from "./front/frontSheets.js";
import { framedPage, roomOf } from "./frame.js";
import { costSheets } from "./lists/cost.js";
import { machineSheets } from "./lists/machines.js";
import { quantitySheets } from "./lists/quantities.js";
import type { LegendRow, Page, PlanWindow, Room, SheetJob, SheetMaker } from "./paper.js";
import { excavationPlan, existingGround, layoutPlan } from "./plan/index.js";
import { pipeProfiles } from "./sections/profiles.js";

/**
 * Who draws what, in the order of the set, after the cover, the permit's list and the findings.
 * Whoever adds a kind of sheet adds its maker here.
 */
const MAKERS: readonly SheetMaker[] = [
  existingGround,
  layoutPlan,
  excavationPlan,
  pipeProfiles,
  quantitySheets,
  machineSheets,
  costSheets,
];

/**
 * The whole set of sheets.
 * @param windows what a person chose to see on a plan, by the sheet's id
 */
export function sheetsOf(
  job: SheetJob,
  windows: Readonly<Record<string, PlanWindow>> = {},
): Page[] {
  const room = (legend: readonly LegendRow[]): Room => roomOf(job.paper, legend);
  const body = MAKERS.flatMap((make) => [...make(job, room, windows)]);
  const contents = [...frontSheets(job, room, body), ...body];
  return contents.map((content, i) => framedPage(job, content, i + 1, contents.length));
}
