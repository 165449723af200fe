/** Sheets of sections through tanks, pads and beds. */
import { schemeOf } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { Fill, Room, SheetContent, SheetJob, SheetMaker } from "../paper.js";
import { cutDataOf, type CutData } from "./cutData.js";
import { cutDrawing, cutSize, type DrawnCut } from "./cutDrawing.js";
import { fillsOf } from "./earth.js";
import { sectionLegend } from "./legendRows.js";
import { SECTION_SCALES } from "./scales.js";
import { shelved } from "./shelf.js";

/** mm between two sections. */
const GAP = 8;
/** n of the largest scale that a section of a whole work is drawn to. */
const LEAST = 20;

/** Two sections through each tank, pad and bed, those of one work together and to one scale. */
export const workSections: SheetMaker = (job, roomOf) => {
  const scheme = schemeOf(job.site, job.schemeId);
  const all = cutDataOf(job.site, scheme, job.estimate);
  if (all.length === 0) return [];
  const fills = fillsOf(job.site, scheme);
  const room = roomOf(sectionLegend(job.site, fills, all));
  const pages = paged(job, fills, all, room);
  return pages.map((page, i) => sheetOf(job, fills, page, room, i, pages.length));
};

interface PageOf {
  scale: number;
  cuts: CutData[];
}

function paged(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  all: readonly CutData[],
  room: Room,
): PageOf[] {
  const pages: PageOf[] = [];
  const put = (cuts: CutData[], scale: number): void => {
    const page = pages.at(-1);
    const onto = page?.scale === scale ? [...page.cuts, ...cuts] : null;
    if (page && onto && placesOf(job, fills, onto, scale, room) !== null) page.cuts = onto;
    else if (cuts.length === 1 || placesOf(job, fills, cuts, scale, room) !== null) {
      pages.push({ scale, cuts });
    } else for (const cut of cuts) put([cut], scale);
  };
  for (const cuts of byWork(all)) {
    const scales = scalesOf(job, fills, cuts, room);
    if (new Set(scales).size === 1) put(cuts, scales[0]!);
    else cuts.forEach((cut, i) => put([cut], scales[i]!));
  }
  return pages;
}

function byWork(all: readonly CutData[]): CutData[][] {
  const ids = [...new Set(all.map(({ cut }) => cut.work.id))];
  return ids.map((id) => all.filter(({ cut }) => cut.work.id === id));
}

/** Sections as large as this are large enough, or those nearly as large as they could be alone. */
const LARGE = 72;
const NEARLY = 1.3;

/**
 * n of the scale of each of a work's sections: the largest usual one at which they fit one sheet
 * together, if that is large enough; else the largest at which each fits a sheet of its own, alike
 * unless one could be twice as large as the other.
 */
function scalesOf(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  cuts: readonly CutData[],
  room: Room,
): number[] {
  const list = SECTION_SCALES[job.site.units].filter((scale) => scale >= LEAST);
  const fitting = (some: readonly CutData[]): number =>
    list.find((scale) => placesOf(job, fills, some, scale, room) !== null) ?? list.at(-1)!;
  const alone = cuts.map((cut) => fitting([cut]));
  const smallest = Math.max(...alone);
  const together = fitting(cuts);
  if (together <= Math.max(LARGE, NEARLY * Math.min(...alone))) return cuts.map(() => together);
  return smallest < 2 * Math.min(...alone) ? cuts.map(() => smallest) : alone;
}

function placesOf(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  cuts: readonly CutData[],
  scale: number,
  room: Room,
): (readonly [number, number])[] | null {
  const { site, estimate } = job;
  const sizes = cuts.map((data) =>
    cutSize({ site, estimate, data, fills, scale, left: 0, top: 0 }),
  );
  return shelved(sizes, { width: room.width - 2, height: room.height - 2 }, GAP);
}

function drawn(
  { site, estimate }: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  data: CutData,
  scale: number,
  left: number,
  top: number,
): DrawnCut {
  return cutDrawing({ site, estimate, data, fills, scale, left, top });
}

function sheetOf(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  { scale, cuts }: PageOf,
  room: Room,
  i: number,
  of: number,
): SheetContent {
  const places = placesOf(job, fills, cuts, scale, room) ?? cuts.map(() => [0, 0] as const);
  const { sheet } = words.sheetsSections.cut;
  return {
    id: i === 0 ? "sections" : `sections-${i + 1}`,
    title: of > 1 ? words.sheetsSections.part(sheet, i + 1, of) : sheet,
    scale,
    north: null,
    marks: cuts.flatMap((data, k) => {
      const [x, y] = places[k]!;
      return drawn(job, fills, data, scale, room.left + 1 + x, room.top + 1 + y).marks;
    }),
    legend: sectionLegend(job.site, fills, cuts),
  };
}
