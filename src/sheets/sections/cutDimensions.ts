/** Dimensions of a section: sizes beside it and under it, from the site's own figures. */
import { heightOn } from "../../estimate/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { GroupMark, Mark, Spot } from "../paper.js";
import { textWidth } from "../textWidth.js";
import { axisWidth } from "./axis.js";
import type { CutAsk } from "./cutDrawing.js";
import { dimensionLine } from "./dimension.js";
import { FAINT, INK, PENS, TEXT } from "./pens.js";
import { spreadInRow } from "./spread.js";
import { boxOf, xOf, yOf, type View } from "./view.js";

/** A size between two heights or two stations, m. */
export interface Span {
  from: number;
  to: number;
  name: string;
}

const LEVEL = 2.9;
const ROW = 6;

type Asked = Pick<CutAsk, "data" | "site" | "estimate">;

/** Sizes upright, from below to above. */
export function uprightSpans({ data, site }: Asked): Span[] {
  const { work, floor } = data.cut;
  const { size } = words.sheetsSections.cut;
  const named = (from: number, to: number, name: string): Span => ({ from, to, name });
  if (work.kind === "tank") {
    const { base, body, bedding } = work;
    const top = base + body.height;
    const ground = heightOn(data.finished.surface, (floor[0] + floor[1]) / 2);
    return [
      ...(bedding.depth > 0 ? [named(base - bedding.depth, base, size.bedding)] : []),
      named(base, top, size.tank),
      ...(ground !== null && ground > top ? [named(top, ground, size.overTank)] : []),
    ];
  }
  const beds = site.schemes
    .find(({ id }) => id === data.finished.scheme)
    ?.works.filter((each) => data.finished.standing.some(({ work: id }) => id === each.id));
  const bed = work.kind === "bed" ? work : beds?.find((each) => each.kind === "bed");
  const course =
    work.kind === "pad" && work.course && work.course.depth > 0
      ? [named(work.top - work.course.depth, work.top, size.course)]
      : [];
  return bed?.kind === "bed"
    ? [...course, named(bed.base, bed.base + bed.height, size.bed)]
    : course;
}

/** Sizes across, in rows from the ground down. */
export function acrossSpans({ data }: Asked): Span[][] {
  const { work, floor, changed, way } = data.cut;
  const { size } = words.sheetsSections.cut;
  const [left, right] = floor;
  const opening: Span[] =
    work.kind === "bed" || changed[1] - changed[0] <= right - left + 0.01
      ? []
      : [
          {
            from: changed[0],
            to: changed[1],
            name: work.kind === "tank" ? size.opening : size.changed,
          },
        ];
  if (work.kind !== "tank") {
    const name = work.kind === "bed" ? size.bed : size.pad;
    return [[{ from: left, to: right, name }], ...(opening.length > 0 ? [opening] : [])];
  }
  const [near, far] = [left + work.overdig, right - work.overdig];
  const long = way === "along" ? size.tankLong : size.tankWide;
  const floors: Span[] =
    work.overdig > 0
      ? [
          { from: left, to: near, name: "" },
          { from: near, to: far, name: long },
          { from: far, to: right, name: "" },
        ]
      : [{ from: near, to: far, name: long }];
  return [
    floors,
    [{ from: left, to: right, name: size.floor }],
    ...(opening.length > 0 ? [opening] : []),
  ];
}

function sayOf({ from, to, name }: Span, { site }: Asked): string {
  const long = length.print(to - from, site.units, site.units === "us" ? { inchParts: 4 } : {});
  return name === "" ? long : words.sheetsSections.cut.sized(long, name);
}

/** mm that the upright sizes take to the left of the heights' figures. */
export function besideWidth(ask: Asked): number {
  const said = uprightSpans(ask).map((span) => textWidth(sayOf(span, ask), "text", TEXT.small));
  return said.length === 0 ? 0 : Math.max(...said) + 6;
}

/** The upright sizes on one dimension line, their figures to its left. */
export function besideDimensions(ask: Asked, view: View): Mark[] {
  const spans = uprightSpans(ask);
  if (spans.length === 0) return [];
  const x = view.left - axisWidth(view, ask.site.units) - 2.5;
  const [, top, , tall] = boxOf(view);
  // From above to below on paper.
  const down = [...spans].reverse();
  const rows = spreadInRow(
    down.map(({ from, to }) => ({ at: yOf(view, (from + to) / 2), size: LEVEL })),
    0,
    top,
    top + tall,
  );
  const marks = down.flatMap((span, i): Mark[] => {
    const [foot, head] = [yOf(view, span.from), yOf(view, span.to)];
    const extensions: Spot[][] = [foot, head].map((y): Spot[] => [
      [x - 1, y],
      [view.left, y],
    ]);
    return [
      { kind: "path", lines: extensions, closed: false, pen: { ...PENS.thin, color: FAINT } },
      ...dimensionLine([x, foot], [x, head]),
      textAt([x - 2.2, rows[i]! + 0.75], sayOf(span, ask), "end"),
    ];
  });
  return [group(marks)];
}

/** The sizes across, under the section; each row on a dimension line of its own. */
export function acrossDimensions(
  ask: Asked,
  view: View,
  top: number,
): { height: number; marks: GroupMark } {
  const rows = acrossSpans(ask);
  const right = xOf(view, view.to);
  const marks = rows.flatMap((spans, row) => {
    const y = top + row * ROW + 3.4;
    const said = spans.map((span) => sayOf(span, ask));
    const middles = spreadInRow(
      spans.map(({ from, to }, i) => ({
        at: xOf(view, (from + to) / 2),
        size: textWidth(said[i]!, "text", TEXT.small),
      })),
      1.6,
      view.left - 12,
      right + 12,
    );
    return spans.flatMap((span, i): Mark[] => [
      ...dimensionLine([xOf(view, span.from), y], [xOf(view, span.to), y]),
      textAt([middles[i]!, y - 1], said[i]!, "middle"),
    ]);
  });
  return { height: rows.length * ROW, marks: group(marks) };
}

const group = (marks: readonly Mark[]): GroupMark => ({
  kind: "group",
  layer: words.sheetsSections.layers.dimensions,
  marks,
});

function textAt(at: Spot, text: string, anchor: "middle" | "end"): Mark {
  return { kind: "text", at, text, face: "text", size: TEXT.small, anchor, color: INK };
}
