/** The cover: whose project it is, the lot, the figures, the list of sheets and every caution. */
import { fiveFigures, unpricedOf } from "../../estimate/index.js";
import { earthVolume, elevation, money, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { columnWidth, type FlowItem } from "../flow.js";
import { flowContents } from "../lists/listSheets.js";
import type { Room, SheetContent, SheetJob } from "../paper.js";
import { bodySize, headingItem, LEADING, proseItem } from "../prose.js";
import { words as letters } from "../strokes.js";
import { tableItems, type TableRow } from "../table.js";
import { drawnText, unwritable, wrapText } from "../textWidth.js";
import { sketchItem } from "./sketch.js";

const says = words.sheetsFront;
const COLUMNS = 3;
/** That of the demo prices: `priceSource` of the cost. */
const DEMO_CURRENCY = "USD";

/** A sheet as the cover lists it. */
export interface Listed {
  id: string;
  number: number;
  title: string;
  /** A plan that shows a part of what it is of. */
  partial: boolean;
}

/** The cover, over more than one sheet only where the cautions and the list are long. */
export function coverSheets(job: SheetJob, room: Room, listed: readonly Listed[]): SheetContent[] {
  const size = bodySize(job.paper);
  const width = columnWidth(room, COLUMNS);
  const pairs = (title: string, rows: readonly TableRow[]): FlowItem[] =>
    tableItems(
      {
        title,
        columns: [
          { head: "", share: 2 },
          { head: "", share: 3 },
        ],
        rows,
      },
      size,
      width,
    );
  const items: FlowItem[] = [
    titleItem(job, size, width),
    proseItem(says.decide, size, width, { face: "strong" }),
    ...pairs(says.project, projectRows(job)),
    headingItem(says.sketch, size, width),
    sketchItem(job, width, 0.7 * width),
    ...pairs(says.figures, figureRows(job)),
    ...priceNotes(job, size, width),
    ...listItems(listed, size, width),
    headingItem(says.cautions, size, width),
    ...job.estimate.cautions.map((text) => proseItem(text, size, width, { mark: "•" })),
    ...lackItems(job, size, width),
  ];
  return flowContents("cover", says.cover, items, room, COLUMNS);
}

function schemeName({ site, schemeId }: SheetJob): string {
  return site.schemes.find(({ id }) => id === schemeId)?.name ?? schemeId;
}

function titleItem(job: SheetJob, size: number, width: number): FlowItem {
  const big = 4 * size;
  const name = wrapText(job.site.name, "heading", big, width);
  const scheme = wrapText(schemeName(job), "heading", 1.8 * size, width);
  const below = big * (0.1 + name.length);
  return {
    height: below + 1.8 * size * (LEADING * scheme.length + 0.5),
    draw: (left, top) => [
      ...name.map((line, i) => letters(line, [left, top + big * (0.8 + i)], "heading", big)),
      ...scheme.map((line, i) =>
        letters(
          line,
          [left, top + below + 1.8 * size * (0.9 + LEADING * i)],
          "heading",
          1.8 * size,
        ),
      ),
    ],
  };
}

function projectRows(job: SheetJob): TableRow[] {
  const { site, date } = job;
  const { owner, parcel, place, preparer, date: measured } = site.project ?? {};
  const { points } = site.survey;
  const { probes } = site.ground;
  const known = says.groundFrom(
    says.points(points.length, plainNumber(points.length, 0)),
    words.counts.probes(probes.length, plainNumber(probes.length, 0)),
  );
  const rows: [string, string | undefined][] = [
    [says.owner, owner],
    [says.parcel, parcel],
    [says.place, place],
    [says.preparer, preparer],
    [says.measured, measured],
    [says.printed, date],
    [says.benchmark, benchmarkWords(job)],
    [says.ground, known],
  ];
  if (site.place !== undefined) rows.push([says.position, positionWords(site.place)]);
  return rows.map(([name, value]) => ({
    cells: [name, value === undefined || value === "" ? says.notEntered : value],
  }));
}

function benchmarkWords({ site }: SheetJob): string | undefined {
  const { point, note } = site.project?.benchmark ?? {};
  const found = site.survey.points.find(({ id }) => id === point);
  const parts = [
    found === undefined ? point : says.atPoint(found.id, elevation.print(found.z, site.units)),
    note,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? undefined : parts.join(", ");
}

/** Degrees north and east; five decimals are about a metre. */
function positionWords({ longitude, latitude }: { longitude: number; latitude: number }): string {
  return `${plainNumber(latitude, 5)}°, ${plainNumber(longitude, 5)}°`;
}

function figureRows({ site, estimate }: SheetJob): TableRow[] {
  const { cut, rock, spoil, days, digger, cost } = fiveFigures(estimate, site);
  const volume = (value: number): string => earthVolume.print(value, site.units);
  const print = (value: number): string => money(estimate.cost.currency).print(value, site.units);
  return [
    { cells: [says.cut, volume(cut)] },
    { cells: [says.rock, volume(rock)] },
    { cells: [says.dugLoose, volume(estimate.earth.loose)] },
    { cells: [says.spoil, volume(spoil)] },
    { cells: [says.days, words.handoverLeaf.withMachine(plainNumber(days, 0), digger.name)] },
    { cells: [says.cost, print(cost.likely)] },
    { cells: [says.costRange, words.handoverLeaf.fromTo(print(cost.low), print(cost.high))] },
  ];
}

/** What the cost's figure rests on: demo prices, another currency's, and what has no price at all. */
function priceNotes({ site, estimate }: SheetJob, size: number, width: number): FlowItem[] {
  const { lines, currency } = estimate.cost;
  const demo = lines.filter((line) => !line.own).length;
  const unpriced = unpricedOf(site, estimate).length;
  const notes = [
    ...(demo === 0 ? [] : [says.demo(plainNumber(demo, 0), plainNumber(lines.length, 0))]),
    ...(demo === 0 || currency === DEMO_CURRENCY ? [] : [says.notConverted(currency)]),
    ...(unpriced === 0 ? [] : [says.unpriced(unpriced, plainNumber(unpriced, 0))]),
  ];
  return notes.length === 0 ? [] : [proseItem(notes.join(" "), size, width)];
}

function listItems(listed: readonly Listed[], size: number, width: number): FlowItem[] {
  return tableItems(
    {
      title: says.sheets,
      columns: [{ head: says.sheet, figures: true }, { head: says.shows }],
      rows: seriesOf(listed).map(({ first, last }) => ({
        cells: [
          first.number === last.number
            ? plainNumber(first.number, 0)
            : `${first.number}–${last.number}`,
          // "Sections (1 of 3)" stands for the whole series.
          first.title.replace(/\s*\(\d+\D+\d+\)$/, ""),
        ],
      })),
    },
    size,
    width,
  );
}

/** Sheets that go on from one to the next, as one: "sections", "sections-2", "sections-3". */
function seriesOf(listed: readonly Listed[]): { first: Listed; last: Listed }[] {
  const series: { first: Listed; last: Listed }[] = [];
  for (const sheet of listed) {
    const current = series.at(-1);
    if (current !== undefined && sheet.id.replace(/-\d+$/, "") === current.first.id) {
      current.last = sheet;
    } else series.push({ first: sheet, last: sheet });
  }
  return series;
}

/** Letters of names that were entered and that the fonts lack, if any. */
function lackItems(job: SheetJob, size: number, width: number): FlowItem[] {
  const { site } = job;
  const entered = [
    site.name,
    ...Object.values(site.project ?? {}).filter((value) => typeof value === "string"),
    ...site.schemes.flatMap(({ name, works }) => [name, ...works.map((work) => work.name)]),
    ...(site.limits ?? []).map(({ name }) => name ?? ""),
  ];
  const lacked = [...new Set(entered.flatMap((text) => unwritable(text, "text")))];
  if (lacked.length === 0) return [];
  const codes = lacked.map(
    (letter) => `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase()}`,
  );
  return [proseItem(says.unwritable(drawnText(codes.join(", "), "text")), size, width)];
}
