/** How each kind of limit is drawn: told apart by dash, letter, arrow or hatch, not by ink alone. */
import { isBuriedLine, type Limit, type LimitKindId } from "../../site/index.js";
import type { Fill, Mark, Pen, Spot } from "../paper.js";
import { lineSample, type LineStyle } from "./lineStyle.js";
import { INK, pen, PENS } from "./pens.js";
import * as symbols from "./symbols.js";

export interface LimitStyle {
  line: LineStyle;
  /** Of its area where it closes, or of the strip that its width gives it. */
  fill?: Fill;
  /** Of its place. */
  symbol: (at: Spot) => Mark[];
  /** mm from the place that the symbol takes up. */
  reach: number;
}

const hatch = (turn: number, gap: number, ink: Pen): Fill => ({
  hatches: [{ kind: "lines", turn, gap, pen: ink }],
});

const line = (style: LineStyle, fill?: Fill): LimitStyle => ({
  ...{ line: style, symbol: symbols.place, reach: 1.4 },
  ...(fill !== undefined && { fill }),
});

const spot = (symbol: LimitStyle["symbol"], reach: number): LimitStyle => ({
  ...{ line: { pen: pen(0.25, INK.black, [1.2, 1]) }, symbol, reach },
});

const thinWater = pen(0.13, INK.water);

const STYLES: Readonly<Record<LimitKindId, LimitStyle>> = {
  "lot-line": line({ pen: pen(0.6, INK.black, [7, 1.2, 1, 1.2, 1, 1.2]) }),
  easement: line(
    { pen: pen(0.25, INK.black, [5, 1.4, 1, 1.4]) },
    hatch(60, 5, pen(0.13, INK.pale)),
  ),
  well: spot(symbols.well, 1.9),
  "neighbour-well": spot(symbols.neighbourWell, 2.4),
  spring: spot(symbols.spring, 2.6),
  watercourse: line({ pen: pen(0.5, INK.water), arrows: true }),
  "seasonal-watercourse": line({ pen: pen(0.4, INK.water, [6, 1.2, 0.8, 1.2]), arrows: true }),
  ditch: line({ pen: pen(0.3, INK.water, [3.5, 1]), arrows: true, ticks: true }),
  "flood-path": line({ pen: pen(0.25, INK.water, [1.5, 1.2]) }, hatch(0, 2.2, thinWater)),
  wetland: line(
    { pen: pen(0.25, INK.water, [2.5, 1]) },
    { hatches: [{ kind: "dots", gap: 2.2, size: 0.35, color: INK.water }] },
  ),
  "water-line": line({ pen: pen(0.3, INK.black, [4, 1.2]), letter: "W" }),
  "buried-cable": line({ pen: pen(0.3, INK.black, [4, 1.2]), letter: "E" }),
  "buried-gas": line({ pen: pen(0.3, INK.black, [4, 1.2]), letter: "G" }),
  "buried-line": line({ pen: pen(0.3, INK.black, [4, 1.2]), letter: "U" }),
  "overhead-line": line({ pen: pen(0.35, INK.black), letter: "OH" }),
  building: line({ pen: PENS.strong }, hatch(45, 1.8, PENS.hatch)),
  drive: line(
    { pen: pen(0.25, INK.black, [7, 1.6]) },
    { hatches: [{ kind: "dots", gap: 2.8, size: 0.3, color: INK.pale }] },
  ),
  tree: spot(symbols.tree, 1.5),
  "reserve-field": line(
    { pen: pen(0.35, INK.black, [5, 1.2, 1, 1.2, 1, 1.2]) },
    hatch(-45, 4, PENS.hatch),
  ),
};

const UNKNOWN: LimitStyle = line({ pen: pen(0.25, INK.black, [1.2, 1]) });

/** The style of a limit's kind; one that has no name here is a dotted line or a plain ring. */
export function limitStyle({ kind }: Pick<Limit, "kind">): LimitStyle {
  if (Object.hasOwn(STYLES, kind)) return STYLES[kind as LimitKindId];
  return isBuriedLine(kind) ? STYLES["buried-line"] : UNKNOWN;
}

/** The same in grey, for a plan of what is to be built: the lot line and hatches stay as they are. */
export function greyStyle(limit: Pick<Limit, "kind">): LimitStyle {
  const style = limitStyle(limit);
  if (limit.kind === "lot-line") return style;
  const ink = style.line.pen;
  return { ...style, line: { ...style.line, pen: { ...ink, color: greyOf(ink.color) } } };
}

const greyOf = (color: string): string => (color === INK.water ? "#6d8c99" : INK.grey);

/** A sample for the legend: of an area its edge and fill, of a line the line, of a place the symbol. */
export function limitSample(style: LimitStyle, drawnAs: "place" | "line" | "area"): Mark[] {
  if (drawnAs === "place") return style.symbol([5, 2]);
  if (drawnAs === "line") return lineSample(style.line);
  const box: Spot[] = [
    [0.5, 0.4],
    [9.5, 0.4],
    [9.5, 3.6],
    [0.5, 3.6],
  ];
  const edge: Mark = { kind: "path", lines: [box], closed: true, pen: style.line.pen };
  if (style.fill === undefined) return [edge];
  return [{ kind: "path", lines: [box], closed: true, fill: style.fill }, edge];
}
