/**
 * The ground cut open along a line in plan: what stands there as closed polygons, one for each
 * connected piece of one layer.
 *
 * The line crosses cells one after the other; in each, every layer is a four-sided piece between
 * straight lines. Pieces of one layer in neighbouring cells are joined by dropping the parts of
 * their upright sides that both have, which leaves exact outlines and exact areas.
 */
import type { Cell } from "./cell.js";
import type { LayeredGround } from "./layered.js";
import type { Place } from "./outline.js";
import { cellsAlong, valueAt, type CellStretch } from "./profile.js";
import { isStraight, SAME, SlabEdges, type SectionPlace, type Slab } from "./slabEdges.js";

/** One connected piece of one layer. */
export interface SectionPiece {
  /** Material id; "native" for the site's own earth put back. */
  material: string;
  /** Index of the work that placed it; -1 for natural ground. */
  by: number;
  /** A tank or other built thing. */
  structure: boolean;
  /** Counter-clockwise (station to the right, elevation up), each corner once. */
  outline: SectionPlace[];
  /** Clockwise outlines of what lies inside it and is something else. */
  holes: SectionPlace[][];
  /** Area of the outline less its holes, m². */
  area: number;
}

/** The ground along a line. */
export interface GroundSection {
  /** Length of the line in plan, m, and the stations of its bends. */
  length: number;
  bends: number[];
  pieces: SectionPiece[];
  /** The surface from station to station; one line for each stretch within the survey. */
  surface: SectionPlace[][];
}

/** A stretch of the line on which every layer is straight. Stations in m. */
interface Column {
  from: number;
  to: number;
  cell: Cell;
  /** Tops of the layers, from the bottom up, at the two ends, local m. */
  tops: (readonly [number, number])[];
}

/** Stretches farther apart than this have ground beyond the survey between them, m. */
const GAP = 1e-6;

/**
 * Cuts the ground open along a line of two or more places, local m, down to `datum` (local m: the
 * last layer has no bottom, so it ends there). Where the line leaves the survey there is nothing.
 * Where it runs along a side between cells, such as a vertical wall, the ground on its left shows.
 */
export function groundSection(
  ground: LayeredGround,
  line: readonly Place[],
  datum: number,
): GroundSection {
  const { columns, length, bends } = columnsAlong(ground, line);
  const whole = columns.flatMap((column) => partedAt(column, datum));
  return { length, bends, pieces: piecesOf(whole, datum), surface: surfaceLines(columns) };
}

/** The surface alone: highest and lowest places help to choose a datum. */
export function groundSurface(ground: LayeredGround, line: readonly Place[]): SectionPlace[][] {
  return surfaceLines(columnsAlong(ground, line).columns);
}

function columnsAlong(
  ground: LayeredGround,
  line: readonly Place[],
): { columns: Column[]; length: number; bends: number[] } {
  const columns: Column[] = [];
  const bends: number[] = [];
  let station = 0;
  for (let i = 1; i < line.length; i++) {
    const [p, q] = [line[i - 1]!, line[i]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (length <= SAME) continue;
    if (station > 0) bends.push(station);
    for (const stretch of cellsAlong(ground, p, q)) {
      for (const part of onTheLeft(ground, stretch, p, q, length)) {
        columns.push({ ...part, from: part.from + station, to: part.to + station });
      }
    }
    station += length;
  }
  return { columns, length: station, bends };
}

/** How far to the left of a line along a side its cells are looked for, m. */
const NUDGE = 1e-6;

/** A stretch as columns; where it runs along a side of its cell, those of the cells on the left. */
function onTheLeft(
  ground: LayeredGround,
  stretch: CellStretch,
  p: Place,
  q: Place,
  length: number,
): Column[] {
  const own = (): Column[] => [
    { from: stretch.from, to: stretch.to, cell: stretch.cell, tops: topsOf(stretch) },
  ];
  const [ux, uy] = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
  if (!liesRight(stretch.cell, p, ux, uy)) return own();
  const place = (along: number): Place => [p[0] + along * ux, p[1] + along * uy];
  const moved = (along: number): Place => [
    p[0] + along * ux - NUDGE * uy,
    p[1] + along * uy + NUDGE * ux,
  ];
  const left = cellsAlong(ground, moved(stretch.from), moved(stretch.to));
  const covered = left.reduce((sum, each) => sum + each.to - each.from, 0);
  if (covered < stretch.to - stretch.from - NUDGE) return own();
  return left.map(({ from, cell }, i): Column => {
    // Cells that only touch the line may leave a hair's breadth between them: close it.
    const start = i === 0 ? stretch.from : stretch.from + from;
    const end = i === left.length - 1 ? stretch.to : stretch.from + left[i + 1]!.from;
    const ends = [place(start), place(end)] as const;
    return {
      from: start,
      to: end,
      cell,
      tops: cell.tops.map((top) => [
        valueAt(cell, top, ...ends[0]),
        valueAt(cell, top, ...ends[1]),
      ]),
    };
  });
}

function topsOf({ cell, at }: CellStretch): (readonly [number, number])[] {
  return cell.tops.map((top) => {
    const { start, end } = at(top);
    return [start, end];
  });
}

/** True when a cell lies wholly to the right of a line that it touches. */
function liesRight(cell: Cell, p: Place, ux: number, uy: number): boolean {
  return cell.x.every((x, i) => (cell.y[i]! - p[1]) * ux - (x - p[0]) * uy < 1e-10);
}

/** A column parted where one of its layers goes down through the datum, held at it below. */
function partedAt(column: Column, datum: number): Column[] {
  const { from, to, cell, tops } = column;
  const shares = tops
    .filter(([a, b]) => a < datum !== b < datum)
    .map(([a, b]) => (datum - a) / (b - a))
    .filter((share) => share * (to - from) > SAME && (1 - share) * (to - from) > SAME)
    .sort((a, b) => a - b);
  const marks = [0, ...shares, 1];
  return marks.slice(1).map((end, i) => {
    const start = marks[i]!;
    const mixed = ([a, b]: readonly [number, number], share: number): number =>
      Math.max(datum, share === 1 ? b : a + share * (b - a));
    return {
      from: from + start * (to - from),
      to: end === 1 ? to : from + end * (to - from),
      cell,
      tops: tops.map((top) => [mixed(top, start), mixed(top, end)] as const),
    };
  });
}

interface LayerSlabs {
  material: string;
  by: number;
  structure: boolean;
  slabs: Slab[];
}

function piecesOf(columns: readonly Column[], datum: number): SectionPiece[] {
  const stations: number[] = [];
  const layers = new Map<string, LayerSlabs>();
  for (const column of columns) {
    // Neighbours meet at one station; beyond a gap in the survey there is a new one.
    const last = stations.length - 1;
    const joins = last >= 0 && column.from - stations[last]! <= GAP;
    if (!joins) stations.push(column.from);
    stations.push(column.to);
    const to = stations.length - 1;
    addSlabs(layers, column, to - 1, to, datum);
  }
  return [...layers.values()].flatMap((layer) => outlined(layer, stations));
}

function addSlabs(
  layers: Map<string, LayerSlabs>,
  { cell, tops }: Column,
  from: number,
  to: number,
  datum: number,
): void {
  let low: readonly [number, number] = [datum, datum];
  cell.layers.forEach(({ material, by, structure }, i) => {
    const [a, b] = tops[i]!;
    const high = [Math.max(a, low[0]), Math.max(b, low[1])] as const;
    const under = low;
    low = high;
    if (high[0] - under[0] <= SAME && high[1] - under[1] <= SAME) return;
    const key = `${by} ${structure} ${material}`;
    let layer = layers.get(key);
    if (!layer) layers.set(key, (layer = { material, by, structure, slabs: [] }));
    const below = layer.slabs[layer.slabs.length - 1];
    // The same stuff on top of itself is one.
    if (below?.from === from && isNear(below.high, under)) below.high = high;
    else layer.slabs.push({ from, to, low: under, high });
  });
}

function isNear(a: readonly [number, number], b: readonly [number, number]): boolean {
  return Math.abs(a[0] - b[0]) <= SAME && Math.abs(a[1] - b[1]) <= SAME;
}

/** Joins the slabs of a layer and gives each connected piece its outline. */
function outlined({ slabs, ...layer }: LayerSlabs, stations: readonly number[]): SectionPiece[] {
  const edges = new SlabEdges(stations);
  for (const slab of slabs) edges.note(slab);
  for (const slab of slabs) edges.addTopAndBottom(slab);
  edges.addUprights();
  const rings = edges.rings();
  const areas = rings.map(ringArea);
  const pieces: SectionPiece[] = [];
  rings.forEach((outline, i) => {
    if (areas[i]! > 0) pieces.push({ ...layer, outline, holes: [], area: areas[i]! });
  });
  rings.forEach((hole, i) => {
    if (areas[i]! >= 0) return;
    const around = pieces
      .filter(({ outline }) => holds(outline, hole[0]!))
      .sort((a, b) => ringArea(a.outline) - ringArea(b.outline))[0];
    if (!around)
      throw new Error(`got a hole at station ${hole[0]![0]}, expected a piece around it`);
    around.holes.push(hole);
    around.area += areas[i]!;
  });
  return pieces;
}

/** Area of a ring, m²; positive when counter-clockwise. */
function ringArea(ring: readonly SectionPlace[]): number {
  const [sx, sy] = ring[0]!;
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [ax, ay] = ring[i]!;
    const [bx, by] = ring[i + 1]!;
    twice += (ax - sx) * (by - sy) - (bx - sx) * (ay - sy);
  }
  return twice / 2;
}

function holds(ring: readonly SectionPlace[], [x, y]: SectionPlace): boolean {
  let inside = false;
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  });
  return inside;
}

function surfaceLines(columns: readonly Column[]): SectionPlace[][] {
  const lines: SectionPlace[][] = [];
  let reached = -Infinity;
  for (const { from, to, tops } of columns) {
    const [start, end] = tops[tops.length - 1]!;
    let line = lines[lines.length - 1];
    if (!line || from - reached > GAP) lines.push((line = []));
    addPlace(line, [from, start]);
    addPlace(line, [to, end]);
    reached = to;
  }
  return lines;
}

/** Adds a place to a line, dropping the last where it lies straight between its neighbours. */
function addPlace(line: SectionPlace[], place: SectionPlace): void {
  const [first, last] = line.slice(-2);
  if (line.length >= 1) {
    const [station, height] = line[line.length - 1]!;
    if (place[0] - station <= SAME && Math.abs(place[1] - height) <= SAME) return;
  }
  if (first && last && isStraight(first, last, place)) line.pop();
  line.push(place);
}
