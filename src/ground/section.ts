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

/** Metres along the line from its start, and elevation (local m here). */
export type SectionPlace = readonly [station: number, elevation: number];

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

/** Elevations nearer than this are one, and stretches shorter than this are none, m. */
const SAME = 1e-9;

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

/** A four-sided piece of a layer between two stations, given by their numbers. */
interface Slab {
  from: number;
  to: number;
  low: readonly [number, number];
  high: readonly [number, number];
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

/** Edges of slabs between nodes (a station and one of the elevations there), the slab at left. */
class SlabEdges {
  /** Per station the elevations of corners there, ascending once sorted. */
  private readonly heights: number[][];
  /** Per station the upright sides of slabs: to the station (+1) and from it (−1). */
  private readonly uprights: { low: number; high: number; way: 1 | -1 }[][];
  private readonly leaving = new Map<number, number[]>();
  private sorted = false;

  constructor(private readonly stations: readonly number[]) {
    this.heights = stations.map(() => []);
    this.uprights = stations.map(() => []);
  }

  note({ from, to, low, high }: Slab): void {
    this.heights[from]!.push(low[0], high[0]);
    this.heights[to]!.push(low[1], high[1]);
  }

  addTopAndBottom({ from, to, low, high }: Slab): void {
    if (!this.sorted) this.sortHeights();
    const corners = [
      this.node(from, low[0]),
      this.node(to, low[1]),
      this.node(to, high[1]),
      this.node(from, high[0]),
    ] as const;
    this.addEdge(corners[0], corners[1]);
    this.addEdge(corners[2], corners[3]);
    this.uprights[to]!.push({ low: corners[1], high: corners[2], way: 1 });
    this.uprights[from]!.push({ low: corners[0], high: corners[3], way: -1 });
  }

  /** Upright sides, less what the slabs to both sides of a station share. */
  addUprights(): void {
    for (const sides of this.uprights) {
      const nodes = [...new Set(sides.flatMap(({ low, high }) => [low, high]))].sort(
        (a, b) => a - b,
      );
      for (let i = 1; i < nodes.length; i++) {
        const [low, high] = [nodes[i - 1]!, nodes[i]!];
        const covering = sides.filter((side) => side.low <= low && side.high >= high);
        const way = covering.reduce((sum, side) => sum + side.way, 0);
        if (way > 0) this.addEdge(low, high);
        if (way < 0) this.addEdge(high, low);
      }
    }
  }

  /** The edges as closed rings; where rings touch at a node, they stay apart. */
  rings(): SectionPlace[][] {
    const out: SectionPlace[][] = [];
    for (const [start, ends] of this.leaving) {
      while (ends.length > 0) {
        const ring: number[] = [start];
        let before = start;
        let at = ends.pop()!;
        while (at !== start || !this.closes(before, at, ring)) {
          ring.push(at);
          const next = this.takeNext(before, at);
          before = at;
          at = next;
        }
        out.push(...simpleRings(ring.map((node) => this.place(node))));
      }
    }
    return out;
  }

  /** Back at its start a ring closes, unless a tighter way on is still there. */
  private closes(before: number, at: number, ring: readonly number[]): boolean {
    const ends = this.leaving.get(at)!;
    if (ends.length === 0) return true;
    const best = this.tightest(before, at, [...ends, ring[1] ?? before]);
    return best === ends.length;
  }

  private takeNext(before: number, at: number): number {
    const ends = this.leaving.get(at);
    if (!ends || ends.length === 0) {
      throw new Error(`got an open outline at station ${this.place(at)[0]}, expected a closed one`);
    }
    return ends.splice(this.tightest(before, at, ends), 1)[0]!;
  }

  /** Index of the way on that keeps the least of the layer on the left. */
  private tightest(before: number, at: number, ends: readonly number[]): number {
    if (ends.length === 1) return 0;
    const [x, y] = this.place(at);
    const [bx, by] = this.place(before);
    const back = Math.atan2(by - y, bx - x);
    let best = 0;
    let least = Infinity;
    ends.forEach((end, i) => {
      const [ex, ey] = this.place(end);
      // Clockwise from the way back.
      const turn = (back - Math.atan2(ey - y, ex - x) + 4 * Math.PI) % (2 * Math.PI);
      const angle = turn < 1e-12 ? 2 * Math.PI : turn;
      if (angle < least) [best, least] = [i, angle];
    });
    return best;
  }

  private addEdge(from: number, to: number): void {
    if (from === to) return;
    // There and back again is no edge.
    const back = this.leaving.get(to) ?? [];
    const known = back.indexOf(from);
    if (known >= 0) {
      back.splice(known, 1);
      return;
    }
    const ends = this.leaving.get(from);
    if (ends) ends.push(to);
    else this.leaving.set(from, [to]);
  }

  private sortHeights(): void {
    this.sorted = true;
    this.heights.forEach((all, station) => {
      all.sort((a, b) => a - b);
      this.heights[station] = all.filter((z, i) => i === 0 || z - all[i - 1]! > SAME);
    });
  }

  /** One number for a station and the elevation there that is nearest to a given one. */
  private node(station: number, height: number): number {
    const heights = this.heights[station]!;
    let [low, high] = [0, heights.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (heights[middle]! <= height) low = middle;
      else high = middle - 1;
    }
    return station * MOST_HEIGHTS + low;
  }

  private place(node: number): SectionPlace {
    const station = Math.floor(node / MOST_HEIGHTS);
    return [this.stations[station]!, this.heights[station]![node % MOST_HEIGHTS]!];
  }
}

/** No station has more elevations than this. */
const MOST_HEIGHTS = 2 ** 20;

/** A ring without corners that lie straight between their neighbours; none if nothing is left. */
function simpleRings(ring: readonly SectionPlace[]): SectionPlace[][] {
  const out: SectionPlace[] = [];
  const count = ring.length;
  ring.forEach((place, i) => {
    const before = out[out.length - 1] ?? ring[count - 1]!;
    if (!isStraight(before, place, ring[(i + 1) % count]!)) out.push(place);
  });
  return out.length >= 3 ? [out] : [];
}

function isStraight(a: SectionPlace, b: SectionPlace, c: SectionPlace): boolean {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [c[0] - b[0], c[1] - b[1]];
  const length = Math.hypot(c[0] - a[0], c[1] - a[1]);
  return Math.abs(ux * vy - uy * vx) <= 1e-10 * length && ux * vx + uy * vy > 0;
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
