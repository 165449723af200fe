/** All sheets of a job in their order, each with its frame and its number. */
import { frontSheets } from "./front/frontSheets.js";
import { framedPage, roomOf } from "./frame.js";
import { costSheets } from "./lists/cost.js";
import { flowSheets } from "./lists/flow.js";
import { machineSheets } from "./lists/machines.js";
import { quantitySheets } from "./lists/quantities.js";
import type { Site } from "../site/index.js";
import type { LegendRow, Page, PaperId, Room, SheetJob, SheetMaker } from "./paper.js";
import { excavationPlan, existingGround, layoutPlan } from "./plan/index.js";
import { details } from "./sections/details.js";
import { pipeProfiles } from "./sections/profiles.js";
import { workSections } from "./sections/sections.js";

/**
 * Who draws what, in the order of the set, after the cover, the permit's list and the findings.
 * Whoever adds a kind of sheet adds its maker here.
 */
const MAKERS: readonly SheetMaker[] = [
  existingGround,
  layoutPlan,
  excavationPlan,
  pipeProfiles,
  workSections,
  details,
  flowSheets,
  quantitySheets,
  machineSheets,
  costSheets,
];

/** The sheets that are printed, and what a person has left out of them. */
export interface SheetSet {
  pages: Page[];
  /** Ids of the pages that are always there: they carry the cautions and what was found. */
  always: ReadonlySet<string>;
  /** All sheets in their order, those left out among them. */
  all: readonly { id: string; title: string; page: Page | null }[];
}

/** The set as a person has chosen it in the site: see `sheets` there. */
export function sheetSet(job: SheetJob): SheetSet {
  const { windows = {}, without = [] } = job.site.sheets ?? {};
  const room = (legend: readonly LegendRow[]): Room => roomOf(job.paper, legend);
  const drawn = MAKERS.flatMap((make) => [...make(job, room, windows)]);
  const body = drawn.filter(({ id }) => !without.includes(id));
  const front = frontSheets(job, room, body);
  const contents = [...front, ...body];
  const pages = contents.map((content, i) => framedPage(job, content, i + 1, contents.length));
  const pageOf = new Map(pages.map((page) => [page.id, page]));
  return {
    pages,
    always: new Set(front.map(({ id }) => id)),
    all: [...front, ...drawn].map(({ id, title }) => ({ id, title, page: pageOf.get(id) ?? null })),
  };
}

/** The sheets that are printed, in their order. */
export function sheetsOf(job: SheetJob): Page[] {
  return sheetSet(job).pages;
}

/** Sites in feet are printed on Letter, others on A4, unless the site says otherwise. */
export function usualPaper({ units, sheets }: Pick<Site, "units" | "sheets">): PaperId {
  return sheets?.paper ?? (units === "us" ? "letter" : "a4");
}
