/** Limits of a site on a plan: edges, fills and symbols with their legend rows, and their lettering. */
import { limitKind, type Limit, type PlanPoint, type Site } from "../../site/index.js";
import { bearing, distance, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Spot } from "../paper.js";
import { besideLine } from "../../estimate/index.js";
import type { Lettering, Seat } from "./lettering.js";
import { greyStyle, limitSample, limitStyle, type LimitStyle } from "./limitStyles.js";
import { INK, pen, TYPE } from "./pens.js";
import { RANK, WEIGHT, type PlanDrawing } from "./planDrawing.js";
import { seatsAlong, seatsBeside, seatsWithin } from "./seats.js";

const texts = words.sheetsPlan;

export interface LimitLook {
  /** Limits are what the plan is about, or stand grey behind the works. */
  grey: boolean;
  /** Lot lines carry their bearings and lengths. */
  courses: boolean;
}

/** Draws every limit that shows in the plan's room. */
export function drawLimits(drawing: PlanDrawing, site: Site, look: LimitLook): void {
  const limits = site.limits ?? [];
  // Areas lie under lines and places.
  const order = [isArea, isLine, isPlace];
  for (const isOf of order) {
    for (const limit of limits.filter(isOf)) drawLimit(drawing, site, limit, look);
  }
}

/** A closed edge, or a strip about a line with a width that is laid out like an area. */
const isArea = (limit: Limit): boolean =>
  limit.path !== undefined &&
  (limit.closed === true || ((limit.width ?? 0) > 0 && limitStyle(limit).fill !== undefined));
const isLine = (limit: Limit): boolean => limit.path !== undefined && !isArea(limit);
const isPlace = ({ at, path }: Limit): boolean => at !== undefined && path === undefined;

/** The name of a limit's kind, as it stands in the legend and as its layer. */
export function kindName({ kind }: Pick<Limit, "kind">): string {
  const name = limitKind(kind)?.name ?? kind;
  return name.charAt(0).toUpperCase() + name.slice(1);
}

function drawLimit(drawing: PlanDrawing, site: Site, limit: Limit, look: LimitLook): void {
  const style = look.grey ? greyStyle(limit) : limitStyle(limit);
  if (limit.path !== undefined) drawPath(drawing, site, limit, limit.path, style, look);
  if (limit.at !== undefined) drawPlace(drawing, site, limit, limit.at, style, look);
}

function drawPath(
  drawing: PlanDrawing,
  site: Site,
  limit: Limit,
  path: readonly PlanPoint[],
  style: LimitStyle,
  look: LimitLook,
): void {
  const layer = kindName(limit);
  const closed = limit.closed === true && path.length > 2;
  const lot = limit.kind === "lot-line";
  const ring = closed ? [...path, path[0]!] : path;
  const fill = style.fill;
  const strip = closed ? [[path]] : stripOf(path, limit.width ?? 0);
  if (fill !== undefined && !lot) {
    for (const rings of strip) drawing.area(layer, rings, { fill }, WEIGHT.light);
  }
  const edged = !closed && strip.length > 0 && fill !== undefined;
  const pieces = edged
    ? strip.flatMap((rings) => drawing.area(layer, rings, { pen: style.line.pen }))
    : drawing.line(layer, ring, style.line, lot ? WEIGHT.strong : WEIGHT.usual);
  if (pieces.length === 0) return;
  const drawnAs = (closed && !lot) || edged ? "area" : "line";
  drawing.row(kindName(limit), limitSample(style, drawnAs));
  if (lot && look.courses) courseLabels(drawing, site, ring);
  else if (!lot) pathLabel(drawing, site, limit, closed ? path : null, pieces);
}

/** The areas of a line with a width; none without. */
function stripOf(path: readonly PlanPoint[], width: number): PlanPoint[][][] {
  if (width <= 0) return [];
  return besideLine(path, width / 2).map((rings) =>
    rings.map((ring) => ring.map(([x, y]): PlanPoint => [x, y])),
  );
}

/** Bearing and length along each side of a lot. */
function courseLabels(drawing: PlanDrawing, { units }: Site, line: readonly PlanPoint[]): void {
  const middle = drawing.spot(meanOf(line));
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const turn = (Math.atan2(dx, dy) * 180) / Math.PI;
    const way =
      units === "us"
        ? bearing.print(turn, units, { bearing: "quadrant" })
        : bearing.print(turn, units, { digits: 2 });
    const long = distance.print(Math.hypot(dx, dy), units, { digits: 2 });
    const lettering = { lines: [texts.course(way, long)], size: TYPE.usual };
    const leg: Spot[] = [drawing.spot(a), drawing.spot(b)];
    const seats = seatsBeside(leg, lettering, 0.9, middle);
    const anchor: Spot = [(leg[0]![0] + leg[1]![0]) / 2, (leg[0]![1] + leg[1]![1]) / 2];
    drawing.label(RANK.figures, {
      ...lettering,
      seats,
      ...(drawing.shows(siteMiddle(a, b)) && { anchor, must: true }),
    });
  }
}

const siteMiddle = (a: PlanPoint, b: PlanPoint): PlanPoint => [
  (a[0] + b[0]) / 2,
  (a[1] + b[1]) / 2,
];

function meanOf(places: readonly PlanPoint[]): PlanPoint {
  const count = Math.max(1, places.length);
  return places.reduce<PlanPoint>(([x, y], p) => [x + p[0] / count, y + p[1] / count], [0, 0]);
}

function drawPlace(
  drawing: PlanDrawing,
  site: Site,
  limit: Limit,
  at: PlanPoint,
  style: LimitStyle,
  look: LimitLook,
): void {
  const name = kindName(limit);
  if (limit.radius !== undefined && limit.radius > 0) {
    const ink = pen(0.18, look.grey ? INK.grey : INK.black, [1.5, 1]);
    const pieces = drawing.circle(name, at, limit.radius, { pen: ink });
    const row = limit.kind === "tree" ? texts.legend.roots : texts.legend.radius(name);
    if (pieces.length > 0) drawing.row(row, limitSample({ ...style, line: { pen: ink } }, "line"));
  }
  if (!drawing.symbol(name, at, style.symbol, style.reach)) return;
  drawing.row(name, limitSample(style, "place"));
  const spot = drawing.spot(at);
  const isTree = limit.kind === "tree";
  // Behind the works a tree is a symbol; its name stands on the sheet of the ground as found.
  if (isTree && look.grey) return;
  const lettering: Lettering = {
    ...{ lines: linesOf(site, limit), size: isTree ? TYPE.small : TYPE.usual },
    ...(!isTree && { face: "strong" as const }),
  };
  const label = { ...lettering, anchor: spot, clear: style.reach + 0.5 };
  drawing.label(isTree ? RANK.wish : RANK.must, { ...label, must: !isTree });
}

function pathLabel(
  drawing: PlanDrawing,
  site: Site,
  limit: Limit,
  ring: readonly PlanPoint[] | null,
  pieces: readonly Spot[][],
): void {
  const lines = linesOf(site, limit);
  const lettering: Lettering = { lines, size: TYPE.usual, face: "strong" };
  const single: Lettering = { ...lettering, lines: [lines.join(", ")] };
  const longest = pieces.reduce((a, b) => (b.length > 0 && spanOf(b) > spanOf(a) ? b : a));
  const half = longest[Math.floor(longest.length / 2)]!;
  if (ring !== null) {
    const seats = seatsWithin(
      ring.map((place) => drawing.spot(place)),
      lettering,
    );
    drawing.label(RANK.names, { ...lettering, seats, anchor: half, must: true });
    return;
  }
  const seats: Seat[] = [...seatsAlong(longest, single, 0.8), ...seatsAlong(longest, single, -0.8)];
  drawing.label(RANK.names, { ...single, seats, anchor: half, must: true });
}

function spanOf(line: readonly Spot[]): number {
  return line.slice(1).reduce((sum, [x, y], i) => {
    const [ax, ay] = line[i]!;
    return sum + Math.hypot(x - ax, y - ay);
  }, 0);
}

/** What stands beside a limit: its name, and what is known of its depth, height, width or roots. */
export function linesOf({ units }: Pick<Site, "units">, limit: Limit): string[] {
  const lines = [limit.name ?? kindName(limit)];
  const { kind, depth, voltage, height, width, radius } = limit;
  if (kind === "overhead-line") {
    lines.push(voltage === undefined ? texts.noVolts : texts.volts(plainNumber(voltage, 0)));
    if (height !== undefined) lines.push(texts.wire(distance.print(height, units)));
  } else if (depth !== undefined) lines.push(texts.deep(distance.print(depth, units)));
  else if (limitStyle(limit).line.letter !== undefined) lines.push(texts.noDepth);
  if (width !== undefined) lines.push(texts.wide(distance.print(width, units)));
  if (kind === "tree" && radius !== undefined)
    lines.push(texts.roots(distance.print(radius, units)));
  return lines;
}
