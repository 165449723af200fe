/** Sheets of sections through tanks, pads and beds. */
import { schemeOf } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { Fill, Room, SheetContent, SheetJob, SheetMaker } from "../paper.js";
import { cutDataOf, type CutData } from "./cutData.js";
import { cutDrawing, cutSize } from "./cutDrawing.js";
import { fillsOf } from "./earth.js";
import { sectionLegend } from "./legendRows.js";
import { SECTION_SCALES } from "./scales.js";
import { shelved } from "./shelf.js";

/** mm between two sections. */
const GAP = 8;
/** n of the largest scale that a section of a whole work is drawn to. */
const LEAST = 20;

/** Two sections through each tank, pad and bed, those of one work together and to one scale. */
export const workSections: SheetMaker = (job, roomOf, _windows, without) => {
  const scheme = schemeOf(job.site, job.schemeId);
  const all = cutDataOf(job.site, scheme, job.estimate);
  if (all.length === 0) return [];
  const fills = fillsOf(job.site, scheme);
  const room = roomOf(sectionLegend(job.site, fills, all));
  const pages = paged(job, fills, all, room, without);
  return pages.map((page, i) => sheetOf(job, fills, page, room, i, pages.length));
};

interface ScaledCut {
  data: CutData;
  /** n of 1 : n. */
  scale: number;
}

/** Sections in their order, as many on each sheet as fit it; a sheet may hold more than one scale. */
function paged(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  all: readonly CutData[],
  room: Room,
  without: ReadonlySet<string>,
): ScaledCut[][] {
  const pages: ScaledCut[][] = [];
  const isMixed = (cuts: readonly ScaledCut[]): boolean =>
    new Set(cuts.map(({ data }) => without.has(subjectOf(data)))).size > 1;
  const put = (cuts: ScaledCut[]): void => {
    const onto = [...(pages.at(-1) ?? []), ...cuts];
    if (pages.length > 0 && !isMixed(onto) && placesOf(job, fills, onto, room) !== null) {
      pages[pages.length - 1] = onto;
    } else if (cuts.length === 1 || (!isMixed(cuts) && placesOf(job, fills, cuts, room) !== null)) {
      pages.push(cuts);
    } else for (const cut of cuts) put([cut]);
  };
  for (const cuts of byWork(all)) {
    const scales = scalesOf(job, fills, cuts, room);
    put(cuts.map((data, i) => ({ data, scale: scales[i]! })));
  }
  return pages;
}

const subjectOf = ({ cut }: CutData): string => `section:${cut.work.id}:${cut.way}`;

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
    list.find((scale) => {
      const scaled = some.map((data) => ({ data, scale }));
      return placesOf(job, fills, scaled, room) !== null;
    }) ?? list.at(-1)!;
  const alone = cuts.map((cut) => fitting([cut]));
  const smallest = Math.max(...alone);
  const together = fitting(cuts);
  if (together <= Math.max(LARGE, NEARLY * Math.min(...alone))) return cuts.map(() => together);
  return smallest < 2 * Math.min(...alone) ? cuts.map(() => smallest) : alone;
}

function placesOf(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  cuts: readonly ScaledCut[],
  room: Room,
): (readonly [number, number])[] | null {
  const { site, estimate } = job;
  const sizes = cuts.map(({ data, scale }) =>
    cutSize({ site, estimate, data, fills, scale, left: 0, top: 0 }),
  );
  return shelved(sizes, { width: room.width - 2, height: room.height - 2 }, GAP);
}

function sheetOf(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  cuts: readonly ScaledCut[],
  room: Room,
  i: number,
  of: number,
): SheetContent {
  const places = placesOf(job, fills, cuts, room) ?? cuts.map(() => [0, 0] as const);
  const { sheet } = words.sheetsSections.cut;
  const { site, estimate } = job;
  const scales = new Set(cuts.map(({ scale }) => scale));
  return {
    id: i === 0 ? "sections" : `sections-${i + 1}`,
    of: cuts.map(({ data }) => subjectOf(data)),
    title: of > 1 ? words.sheetsSections.part(sheet, i + 1, of) : sheet,
    ...(scales.size === 1
      ? { scale: cuts[0]!.scale }
      : { scale: null, scaleNote: words.sheetsSections.detail.scaleNote }),
    north: null,
    marks: cuts.flatMap(({ data, scale }, k) => {
      const [x, y] = places[k]!;
      const [left, top] = [room.left + 1 + x, room.top + 1 + y];
      return cutDrawing({ site, estimate, data, fills, scale, left, top }).marks;
    }),
    legend: sectionLegend(
      site,
      fills,
      cuts.map(({ data }) => data),
    ),
  };
}
