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
import { shelved, type Size } from "./shelf.js";
import { trenchDetail } from "./trenchDetail.js";

/** mm between two details. */
const GAP = 7;
/** Shares of the room that what is drawn to scale may take. */
const SHARE: Size = { width: 0.42, height: 0.33 };
/** mm that notes are wrapped to. */
const NOTES = 100;

export const details: SheetMaker = (job, roomOf) => {
  const specs = specsOf(job);
  if (specs.length === 0) return [];
  const { site } = job;
  const scheme = schemeOf(site, job.schemeId);
  const fills = fillsOf(site, scheme);
  const room = roomOf(legendOf(job, fills, specs));
  const asked = specs.map((spec, i): Asked => {
    const ask = { site, fills, spec, number: i + 1, scale: scaleOf(job, fills, spec, room) };
    return {
      spec,
      size: detailSize({ ...ask, left: 0, top: 0 }),
      draw: (left, top) => detailDrawing({ ...ask, left, top }),
    };
  });
  const notes = detailNotes(site, scheme, job.estimate);
  const told: Asked = {
    spec: null,
    size: notesSize(notes, NOTES),
    draw: (left, top) => notesDrawing(notes, NOTES, left, top),
  };
  const pages = paged([...asked, told], room);
  return pages.map((page, i) => sheetOf(job, fills, page, room, i, pages.length));
};

interface Asked {
  /** Null for the notes. */
  spec: DetailSpec | null;
  size: Size;
  draw: (left: number, top: number) => Mark[];
}

/** Pump chambers, beds and trenches, in that order. */
function specsOf({ site, schemeId, estimate }: SheetJob): DetailSpec[] {
  const scheme = schemeOf(site, schemeId);
  const floats = estimate.flow.pressure.map((result) => floatDetail(site, scheme, result));
  const works = scheme.works.map((work) => {
    if (work.kind === "bed") return bedDetail(site, scheme, work);
    return work.kind === "trench" ? trenchDetail(site, scheme, estimate, work) : null;
  });
  return [...floats, ...works].filter((spec) => spec !== null);
}

/** n of the largest usual scale at which a detail takes no more than its share of the room. */
function scaleOf(
  { site }: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  spec: DetailSpec,
  room: Room,
): number {
  const list = DETAIL_SCALES[site.units];
  const fits = (scale: number): boolean => {
    const whole = detailSize({ site, fills, spec, number: 10, scale, left: 0, top: 0 });
    return (
      whole.drawn.width <= SHARE.width * room.width &&
      whole.drawn.height <= SHARE.height * room.height &&
      whole.width <= room.width - 2 &&
      whole.height <= room.height - 2
    );
  };
  return list.find(fits) ?? list.at(-1)!;
}

function paged(asked: readonly Asked[], room: Room): Asked[][] {
  const pages: Asked[][] = [];
  for (const one of asked) {
    const page = pages.at(-1);
    if (page !== undefined && placesOf([...page, one], room) !== null) page.push(one);
    else pages.push([one]);
  }
  return pages;
}

function placesOf(page: readonly Asked[], room: Room): (readonly [number, number])[] | null {
  const sizes = page.map(({ size }) => size);
  return shelved(sizes, { width: room.width - 2, height: room.height - 2 }, GAP);
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
  return sectionLegend(site, fills, shown);
}
