/** All sheets of a job in their order, each with its frame and its number. */
import { frontSheets } from "./front/frontSheets.js";
import { framedPage, roomOf } from "./frame.js";
import { costSheets } from "./lists/cost.js";
import { flowSheets } from "./lists/flow.js";
import { machineSheets } from "./lists/machines.js";
import { quantitySheets } from "./lists/quantities.js";
import { isLeftOut } from "../site/index.js";
import type { SheetSubjects, Site } from "../site/index.js";
import type {
  LegendRow,
  Page,
  PaperId,
  Room,
  SheetContent,
  SheetJob,
  SheetMaker,
} from "./paper.js";
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
  all: readonly { id: string; of: readonly string[]; title: string; page: Page | null }[];
}

/** The set as a person has chosen it in the site: see `sheets` there. */
export function sheetSet(job: SheetJob): SheetSet {
  return sheetDrawer(job)(job.site.sheets);
}

/**
 * Draws one job's sheets again and again, as a person chooses among them. What the choice does not
 * change is drawn once: leaving a sheet out numbers all anew and makes the first sheets, which say
 * where everything is; moving a plan draws the plans.
 */
export function sheetDrawer(job: SheetJob): (chosen: Site["sheets"]) => SheetSet {
  const room = (legend: readonly LegendRow[]): Room => roomOf(job.paper, legend);
  const draw = MAKERS.map((make) => drawnOnce(make, job, room));
  return ({ windows = {}, without = [] } = {}) => {
    const drawn = draw.flatMap((one) => one(windows, new Set(without)));
    const body = drawn.filter((one) => !isLeftOut({ without }, subjectsOf(one)));
    const front = frontSheets(job, room, body);
    const contents = [...front, ...body];
    const pages = contents.map((content, i) => framedPage(job, content, i + 1, contents.length));
    const pageOf = new Map(pages.map((page) => [page.id, page]));
    return {
      pages,
      always: new Set(front.map(({ id }) => id)),
      all: [...front, ...drawn].map((content) => ({
        ...subjectsOf(content),
        title: content.title,
        page: pageOf.get(content.id) ?? null,
      })),
    };
  };
}

const subjectsOf = ({ id, of = [id] }: SheetContent): SheetSubjects => ({ id, of });

type Windows = Parameters<SheetMaker>[2];

/** What a maker was last asked for, and made. */
interface Asked {
  windows: Windows;
  without: ReadonlySet<string>;
  contents: readonly SheetContent[];
}

/** A maker's sheets, made anew only where what its own plans show, or what is left out of them, has changed. */
function drawnOnce(
  make: SheetMaker,
  job: SheetJob,
  room: (legend: readonly LegendRow[]) => Room,
): (windows: Windows, without: ReadonlySet<string>) => readonly SheetContent[] {
  let last: Asked | null = null;
  return (windows, without) => {
    const before = last;
    const isSame = ({ id, of = [], window }: SheetContent): boolean =>
      (window === undefined ||
        JSON.stringify(before?.windows[id]) === JSON.stringify(windows[id])) &&
      of.every((one) => before?.without.has(one) === without.has(one));
    if (before?.contents.every(isSame) !== true) {
      last = { windows, without, contents: make(job, room, windows, without) };
    }
    return last?.contents ?? [];
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
