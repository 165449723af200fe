/**
 * Outlines of a part of the ground: the rings around the cells that answer to a question. Only
 * triangles at its edge are looked at closely; the cost follows the outline, not the area.
 */
import { BLOCK_SIZE } from "./blocks.js";
import type { Place } from "./outline.js";
import { joinRings, type Segment } from "./rings.js";
import type { CellStore } from "./store.js";
import type { Tin } from "./tin.js";

/** Where the region's cells are looked for. */
export interface RegionSource {
  tin: Tin;
  store: CellStore;
  /** Blocks with triangles that may hold cells of the region, and which those are, a bit each. */
  blocks: readonly { number: number; chains: number; marked: number }[];
}

/** For each block: triangles wholly, and partly, in the region, a bit each. */
interface Covered {
  whole: number;
  partly: number;
}

/** A stretch of a side or edge, as shares of its length from its start. */
type Share = [number, number];

/**
 * Rings around the cells for which `within` holds, local m: outer ones counter-clockwise, holes
 * clockwise, corners that lie straight between others left out.
 */
export function regionRings(source: RegionSource, within: (cell: number) => boolean): Place[][] {
  const { tin } = source;
  const covered = coveredBlocks(source, within);
  const sides = new Map<number, Share[]>();
  const segments: Segment[] = [];
  for (const { number, chains } of source.blocks) {
    const { partly } = covered.get(number)!;
    for (let k = 0; partly !== 0 && k < BLOCK_SIZE; k++) {
      if ((partly & (1 << k)) === 0) continue;
      const first = source.store.chains[chains + k]!;
      addInside(source, number * BLOCK_SIZE + k, first, within, sides, segments);
    }
  }
  for (const { number } of source.blocks) {
    const { whole, partly } = covered.get(number)!;
    for (let k = 0; k < BLOCK_SIZE; k++) {
      if (((whole | partly) & (1 << k)) === 0) continue;
      addSides(tin, number * BLOCK_SIZE + k, covered, sides, segments);
    }
  }
  return joinRings(segments, 1e4 * tin.rounding);
}

function coveredBlocks(
  { store, blocks }: RegionSource,
  within: (cell: number) => boolean,
): Map<number, Covered> {
  const covered = new Map<number, Covered>();
  for (const { number, chains, marked } of blocks) {
    let [whole, partly] = [0, 0];
    for (let k = 0; k < BLOCK_SIZE; k++) {
      if ((marked & (1 << k)) === 0) continue;
      let some = false;
      let all = true;
      for (let cell = store.chains[chains + k]!; cell >= 0; cell = store.nextOf(cell)) {
        if (within(cell)) some = true;
        else all = false;
      }
      if (some && all) whole |= 1 << k;
      else if (some) partly |= 1 << k;
    }
    covered.set(number, { whole, partly });
  }
  return covered;
}

/**
 * Adds the region's edges inside a triangle, and notes which stretches of its sides it touches.
 * An edge between two cells of the region is no edge of it, though one of them may be cut finer.
 */
function addInside(
  { tin, store }: RegionSource,
  triangle: number,
  first: number,
  within: (cell: number) => boolean,
  sides: Map<number, Share[]>,
  segments: Segment[],
): void {
  const near = 10 * tin.rounding;
  const inner: Segment[] = [];
  for (let cell = first; cell >= 0; cell = store.nextOf(cell)) {
    if (!within(cell)) continue;
    const corners = store.cornersOf(cell);
    const [x, y] = [store.row(cell, 0), store.row(cell, 1)];
    const { values } = store;
    for (let i = 0; i < corners; i++) {
      const j = i + 1 === corners ? 0 : i + 1;
      const edge: Segment = [values[x + i]!, values[y + i]!, values[x + j]!, values[y + j]!];
      if (!noteSide(tin, triangle, edge, near, sides)) inner.push(edge);
    }
  }
  addUnshared(inner.length > MANY ? withoutTwins(inner, near) : inner, near, segments);
}

/** From so many edges on, those with an exact twin are sorted out before all are compared. */
const MANY = 64;

/** Leaves out edges that another runs back along from end to end. */
function withoutTwins(edges: readonly Segment[], near: number): Segment[] {
  const places = new Map<string, number>();
  const placeOf = (x: number, y: number): number => {
    const key = `${Math.round(x / near)} ${Math.round(y / near)}`;
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, places.size);
    return places.size - 1;
  };
  const alone = new Map<number, number[]>();
  const room = 2 ** 26;
  edges.forEach(([ax, ay, bx, by], i) => {
    const [a, b] = [placeOf(ax, ay), placeOf(bx, by)];
    const back = alone.get(b * room + a);
    if (back && back.length > 0) back.pop();
    else alone.set(a * room + b, [...(alone.get(a * room + b) ?? []), i]);
  });
  return [...alone.values()].flat().map((i) => edges[i]!);
}

/** Adds the stretches of edges along which no other of them runs the opposite way. */
function addUnshared(edges: readonly Segment[], near: number, segments: Segment[]): void {
  for (const edge of edges) {
    const [px, py, qx, qy] = edge;
    const dx = qx - px;
    const dy = qy - py;
    const off = near * Math.hypot(dx, dy);
    let left: Share[] = [[0, 1]];
    for (const other of edges) {
      // Most edges lie elsewhere: found out with as little as can be.
      if (Math.abs(dx * (other[1] - py) - dy * (other[0] - px)) > off) continue;
      if (Math.abs(dx * (other[3] - py) - dy * (other[2] - px)) > off) continue;
      const shared = other === edge ? null : sharedStretch(edge, other, near);
      if (shared) left = left.flatMap((share) => without(share, shared));
    }
    addStretches(edge, left, near, segments);
  }
}

/** Notes an edge that lies on a side of its triangle; false when it lies inside. */
function noteSide(
  tin: Tin,
  triangle: number,
  edge: Segment,
  near: number,
  sides: Map<number, Share[]>,
): boolean {
  for (let k = 0; k < 3; k++) {
    const side = sideSegment(tin, triangle, k);
    const share = stretchOn(side, edge, near);
    if (!share) continue;
    const key = 3 * triangle + k;
    const noted = sides.get(key);
    if (noted) noted.push(share);
    else sides.set(key, [share]);
    return true;
  }
  return false;
}

function sideSegment({ x, y, triangles }: Tin, triangle: number, k: number): Segment {
  const p = triangles[3 * triangle + k]!;
  const q = triangles[3 * triangle + ((k + 1) % 3)]!;
  return [x[p]!, y[p]!, x[q]!, y[q]!];
}

/** The stretch of `edge` that runs along `side` the same way, or null when it leaves its line. */
function stretchOn(side: Segment, edge: Segment, near: number): Share | null {
  const [px, py, qx, qy] = side;
  const [dx, dy] = [qx - px, qy - py];
  const length = Math.hypot(dx, dy);
  const [ax, ay, bx, by] = [edge[0] - px, edge[1] - py, edge[2] - px, edge[3] - py];
  if (Math.abs(dx * ay - dy * ax) > near * length) return null;
  if (Math.abs(dx * by - dy * bx) > near * length) return null;
  const squared = length * length;
  return [(dx * ax + dy * ay) / squared, (dx * bx + dy * by) / squared];
}

/** The stretch of `edge` along which `other` runs the opposite way, or null. */
function sharedStretch(edge: Segment, other: Segment, near: number): Share | null {
  const on = stretchOn(edge, other, near);
  return on && on[0] > on[1] ? [on[1], on[0]] : null;
}

function without([from, to]: Share, [low, high]: Share): Share[] {
  if (high <= from || low >= to) return [[from, to]];
  const left: Share[] = [];
  if (low > from) left.push([from, low]);
  if (high < to) left.push([high, to]);
  return left;
}

/** Adds the stretches of a triangle's sides that have the region on this side only. */
function addSides(
  tin: Tin,
  triangle: number,
  covered: ReadonlyMap<number, Covered>,
  sides: ReadonlyMap<number, Share[]>,
  segments: Segment[],
): void {
  const whole = coverOf(covered, triangle) === "whole";
  for (let k = 0; k < 3; k++) {
    const twin = tin.twins[3 * triangle + k]!;
    const beyond = twin < 0 ? "none" : coverOf(covered, Math.floor(twin / 3));
    if (beyond === "whole") continue;
    let left: Share[] = whole ? [[0, 1]] : (sides.get(3 * triangle + k) ?? []);
    if (beyond === "partly") {
      for (const [from, to] of sides.get(twin) ?? []) {
        left = left.flatMap((share) => without(share, [1 - to, 1 - from]));
      }
    }
    addStretches(sideSegment(tin, triangle, k), left, 10 * tin.rounding, segments);
  }
}

function coverOf(covered: ReadonlyMap<number, Covered>, triangle: number) {
  const block = covered.get(Math.floor(triangle / BLOCK_SIZE));
  if (!block) return "none";
  const bit = 1 << (triangle % BLOCK_SIZE);
  if ((block.whole & bit) !== 0) return "whole";
  return (block.partly & bit) !== 0 ? "partly" : "none";
}

function addStretches(
  [px, py, qx, qy]: Segment,
  shares: readonly Share[],
  near: number,
  segments: Segment[],
): void {
  const [dx, dy] = [qx - px, qy - py];
  const length = Math.hypot(dx, dy);
  for (const [from, to] of shares) {
    if ((to - from) * length <= near) continue;
    const start: Place = from === 0 ? [px, py] : [px + from * dx, py + from * dy];
    const end: Place = to === 1 ? [qx, qy] : [px + to * dx, py + to * dy];
    segments.push([start[0], start[1], end[0], end[1]]);
  }
}
