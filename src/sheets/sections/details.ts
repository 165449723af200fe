/** Sheets of details: trenches, beds and pump chambers cut open, each to a scale of its own. */
import { schemeOf } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { Fill, LegendRow, Mark, Room, SheetContent, SheetJob, SheetMaker } from "../paper.js";
import { bedDetail } from "./bedDetail.js";
import { detailDrawing, notesDrawing, type DrawnDetail } from "./detailDrawing.js";
import { detailNotes } from "./detailNotes.js";
import type { DetailSpec } from "./detailSpec.js";
import { fillsOf } from "./earth.js";
import { floatDetail } from "./floatDetail.js";
import { sectionLegend } from "./legendRows.js";
import { DETAIL_SCALES } from "./scales.js";
import { shelved, type Size } from "./shelf.js";
import { trenchDetail } from "./trenchDetail.js";

/** mm: what a detail is given room for at the least, and what stands between two. */
const CELL: Size = { width: 92, height: 74 };
const GAP = 6;

export const details: SheetMaker = (job, roomOf) => {
  const specs = specsOf(job);
  if (specs.length === 0) return [];
  const scheme = schemeOf(job.site, job.schemeId);
  const fills = fillsOf(job.site, scheme);
  const room = roomOf(legendOf(job, fills, specs));
  const cell = cellOf(room);
  const asked = specs.map((spec, i): Asked => {
    const scale = scaleOf(job, fills, spec, cell);
    return {
      spec,
      draw: (left, top) =>
        detailDrawing({ site: job.site, fills, spec, number: i + 1, scale, left, top }),
    };
  });
  const notes = detailNotes(job.site, scheme, job.estimate);
  const told: Asked = {
    spec: null,
    draw: (left, top) => notesDrawing(notes, cell.width, left, top),
  };
  const pages = paged([...asked, told], room);
  return pages.map((page, i) => sheetOf(job, fills, page, room, i, pages.length));
};

interface Asked {
  /** Null for the notes. */
  spec: DetailSpec | null;
  draw: (left: number, top: number) => DrawnDetail;
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

/** The largest cell of which a whole number fills the room either way. */
function cellOf({ width, height }: Room): Size {
  const part = (room: number, least: number): number => {
    const count = Math.max(1, Math.floor((room - 2 + GAP) / (least + GAP)));
    return (room - 2 - GAP * (count - 1)) / count;
  };
  return { width: part(width, CELL.width), height: part(height, CELL.height) };
}

/** n of the largest usual scale at which a detail stays in its cell. */
function scaleOf(
  { site }: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  spec: DetailSpec,
  cell: Size,
): number {
  const list = DETAIL_SCALES[site.units];
  const fits = (scale: number): boolean => {
    const drawn = detailDrawing({ site, fills, spec, number: 10, scale, left: 0, top: 0 });
    return drawn.width <= cell.width && drawn.height <= cell.height;
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
  const sizes = page.map(({ draw }) => draw(0, 0));
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
    return draw(room.left + 1 + x, room.top + 1 + y).marks;
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
  const shown = specs.flatMap(({ finished, low }) =>
    finished === null ? [] : [{ finished, low, rockTops: [] }],
  );
  return sectionLegend(site, fills, shown);
}
