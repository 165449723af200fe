/** Sheets of details: trenches, beds and pump chambers cut open, each to a scale of its own. */
import { schemeOf } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { Fill, LegendRow, Mark, Room, SheetContent, SheetJob, SheetMaker } from "../paper.js";
import { bedDetail } from "./bedDetail.js";
import { detailDrawing, detailSize, notesDrawing, notesSize } from "./detailDrawing.js";
import { detailNotes } from "./detailNotes.js";
import type { DetailSpec } from "./detailSpec.js";
import { fillsOf } from "./earth.js";
import { floatDetail } from "./floatDetail.js";
import { sectionLegend } from "./legendRows.js";
import { DETAIL_SCALES } from "./scales.js";
import { inColumns, shelved, type Size } from "./shelf.js";
import { tankDetail } from "./tankDetail.js";
import { trenchDetail } from "./trenchDetail.js";

/** mm between two details. */
const GAP = 7;

/** How large details may get. */
interface Manner {
  /** mm that all of a detail may take. */
  whole: (room: Room) => Size;
  /** Shares of the room that what is drawn to scale may take. */
  share: Size;
}

/** As large as looks well. */
const LARGE: Manner = {
  whole: ({ width, height }) => ({ width: width - 2, height: height - 2 }),
  share: { width: 0.44, height: 0.4 },
};
/** So that two stand side by side. */
const SMALL: Manner = {
  whole: ({ width, height }) => ({ width: (width - 2 - GAP) / 2, height: height - 2 }),
  share: { width: 0.3, height: 0.27 },
};
/** mm that callouts and notes are broken at. */
const BROAD = 38;
const NOTES = 94;

/** On as few sheets as small drawings take, each as large as those sheets hold. */
export const details: SheetMaker = (job, roomOf, _windows, without) => {
  const specs = specsOf(job);
  if (specs.length === 0) return [];
  const fills = fillsOf(job.site, schemeOf(job.site, job.schemeId));
  const room = roomOf(legendOf(job, fills, specs));
  const sized = specs.map((spec, i) => sizesOf(job, fills, spec, i + 1, room));
  const pagesOf = (asked: readonly Asked[]): Asked[][] => paged(asked, room, without);
  const pages = pagesOf(grown(sized, notesOf(job), pagesOf));
  return pages.map((page, i) => sheetOf(job, fills, page, room, i, pages.length));
};

/** Of the sizes that each may have, smallest first, the largest with which no sheet more is needed. */
function grown(
  sized: readonly (readonly Asked[])[],
  notes: Asked,
  pagesOf: (asked: readonly Asked[]) => Asked[][],
): Asked[] {
  const steps = sized.map(() => 0);
  const at = (which: readonly number[]): Asked[] => [
    ...sized.map((sizes, i) => sizes[which[i]!]!),
    notes,
  ];
  const least = pagesOf(at(steps)).length;
  // All grow by a step before any grows by two, so that none is large at the cost of the others.
  for (let step = 1; step < Math.max(...sized.map(({ length }) => length)); step++) {
    sized.forEach(({ length }, i) => {
      const tried = steps.with(i, step);
      const isNext = step < length && steps[i] === step - 1;
      if (isNext && pagesOf(at(tried)).length <= least) steps[i] = step;
    });
  }
  return at(steps);
}

/** A detail at the usual scales from small to large. */
function sizesOf(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  spec: DetailSpec,
  number: number,
  room: Room,
): Asked[] {
  const { site } = job;
  const small = scaleOf(job, fills, spec, room, SMALL);
  const large = scaleOf(job, fills, spec, room, LARGE);
  const scales = DETAIL_SCALES[site.units].filter((scale) => scale >= large && scale <= small);
  return scales.reverse().map((scale): Asked => {
    const ask = { site, fills, spec, number, scale, broad: BROAD };
    return {
      spec,
      size: detailSize({ ...ask, left: 0, top: 0 }),
      draw: (left, top) => detailDrawing({ ...ask, left, top }),
    };
  });
}

function notesOf({ site, schemeId, estimate }: SheetJob): Asked {
  const notes = detailNotes(site, schemeOf(site, schemeId), estimate);
  return {
    spec: null,
    size: notesSize(notes, NOTES),
    draw: (left, top) => notesDrawing(notes, NOTES, left, top),
  };
}

interface Asked {
  /** Null for the notes. */
  spec: DetailSpec | null;
  size: Size;
  draw: (left: number, top: number) => Mark[];
}

/** Pump chambers, then tanks' bedding, beds and trenches in building order. */
function specsOf({ site, schemeId, estimate }: SheetJob): DetailSpec[] {
  const scheme = schemeOf(site, schemeId);
  const floats = estimate.flow.pressure.map((result) => floatDetail(site, scheme, result));
  const works = scheme.works.map((work) => {
    if (work.kind === "tank") return tankDetail(site, scheme, work);
    if (work.kind === "bed") return bedDetail(site, scheme, work);
    return work.kind === "trench" ? trenchDetail(site, scheme, estimate, work) : null;
  });
  return [...floats, ...works].filter((spec) => spec !== null);
}

/** n of the largest usual scale at which a detail takes no more of the room than its manner allows. */
function scaleOf(
  { site }: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  spec: DetailSpec,
  room: Room,
  { whole: allowed, share }: Manner,
): number {
  const most = allowed(room);
  const list = DETAIL_SCALES[site.units];
  const fits = (scale: number): boolean => {
    const whole = detailSize({
      ...{ site, fills, spec, number: 10, scale },
      ...{ broad: BROAD, left: 0, top: 0 },
    });
    return (
      whole.drawn.width <= share.width * room.width &&
      whole.drawn.height <= share.height * room.height &&
      whole.width <= most.width &&
      whole.height <= most.height
    );
  };
  return list.find(fits) ?? list.at(-1)!;
}

const subjectOf = ({ spec }: Asked): string => spec?.subject ?? "detail:notes";

function paged(asked: readonly Asked[], room: Room, without: ReadonlySet<string>): Asked[][] {
  const pages: Asked[][] = [];
  const isOut = (one: Asked): boolean => without.has(subjectOf(one));
  for (const one of asked) {
    const page = pages.at(-1);
    const isAlike = page !== undefined && page.every((other) => isOut(other) === isOut(one));
    if (isAlike && placesOf([...page, one], room) !== null) page.push(one);
    else pages.push([one]);
  }
  return pages;
}

function placesOf(page: readonly Asked[], room: Room): (readonly [number, number])[] | null {
  const sizes = page.map(({ size }) => size);
  const free = { width: room.width - 2, height: room.height - 2 };
  return shelved(sizes, free, GAP) ?? inColumns(sizes, free, GAP);
}

function sheetOf(
  job: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  page: readonly Asked[],
  room: Room,
  i: number,
  of: number,
): SheetContent {
  const places = placesOf(page, room) ?? page.map(() => [0, 0] as const);
  const { detail } = words.sheetsSections;
  const marks = page.flatMap(({ draw }, k): Mark[] => {
    const [x, y] = places[k]!;
    return draw(room.left + 1 + x, room.top + 1 + y);
  });
  return {
    id: i === 0 ? "details" : `details-${i + 1}`,
    of: page.map(subjectOf),
    title: of > 1 ? words.sheetsSections.part(detail.sheet, i + 1, of) : detail.sheet,
    scale: null,
    scaleNote: detail.scaleNote,
    north: null,
    marks,
    legend: legendOf(
      job,
      fills,
      page.flatMap(({ spec }) => spec ?? []),
    ),
  };
}

function legendOf(
  { site }: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  specs: readonly DetailSpec[],
): LegendRow[] {
  const shown = specs.flatMap(({ finished, low, high }) =>
    finished === null ? [] : [{ finished, low, high, rockTops: [] }],
  );
  return shown.length === 0 ? [] : sectionLegend(site, fills, shown);
}
