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
    const partly = covered.get(number)?.partly ?? 0;
    for (let k = 0; partly !== 0 && k < BLOCK_SIZE; k++) {
      if ((partly & (1 << k)) === 0) continue;
      const first = source.store.chains[chains + k]!;
      addInside(source, number * BLOCK_SIZE + k, first, within, sides, segments);
    }
  }
  for (const [number, cover] of covered) {
    const any = cover.whole | cover.partly;
    for (let k = 0; k < BLOCK_SIZE; k++) {
      if ((any & (1 << k)) !== 0) addSides(tin, number, k, cover.whole, covered, sides, segments);
    }
  }
  return joinRings(segments, 1e4 * tin.rounding);
}

function coverOfChain(
  store: CellStore,
  first: number,
  within: (cell: number) => boolean,
): "whole" | "partly" | "none" {
  let some = false;
  let all = true;
  for (let cell = first; cell >= 0; cell = store.nextOf(cell)) {
    if (within(cell)) some = true;
    else all = false;
  }
  if (!some) return "none";
  return all ? "whole" : "partly";
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
      const cover = coverOfChain(store, store.chains[chains + k]!, within);
      if (cover === "whole") whole |= 1 << k;
      else if (cover === "partly") partly |= 1 << k;
    }
    if ((whole | partly) !== 0) covered.set(number, { whole, partly });
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
const MANY = 24;

/** Leaves out edges that another runs back along from end to end. */
function withoutTwins(edges: readonly Segment[], near: number): Segment[] {
  const [x0, y0] = edges[0]!;
  const spread = edges.reduce((most, [x, y]) => Math.max(most, x - x0, x0 - x, y - y0, y0 - y), 0);
  const grid = Math.max(near, spread / 2 ** 24);
  const places = new Map<number, number>();
  const placeOf = (x: number, y: number): number => {
    const key = Math.round((x - x0) / grid) * 2 ** 26 + Math.round((y - y0) / grid);
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
    const px = edge[0];
    const py = edge[1];
    const dx = edge[2] - px;
    const dy = edge[3] - py;
    const off = near * Math.sqrt(dx * dx + dy * dy);
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
  const px = side[0];
  const py = side[1];
  const dx = side[2] - px;
  const dy = side[3] - py;
  const squared = dx * dx + dy * dy;
  const ax = edge[0] - px;
  const ay = edge[1] - py;
  const most = near * near * squared;
  if ((dx * ay - dy * ax) ** 2 > most) return null;
  const bx = edge[2] - px;
  const by = edge[3] - py;
  if ((dx * by - dy * bx) ** 2 > most) return null;
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

/**
 * Adds the stretches of the sides of a block's triangle k that have the region on this side only.
 * `wholeHere` says which triangles of the block are whole: most sides lead to one of those and are
 * done.
 */
function addSides(
  tin: Tin,
  block: number,
  k: number,
  wholeHere: number,
  covered: ReadonlyMap<number, Covered>,
  sides: ReadonlyMap<number, Share[]>,
  segments: Segment[],
): void {
  const start = block * BLOCK_SIZE;
  for (let side = 3 * (start + k); side < 3 * (start + k) + 3; side++) {
    const twin = tin.twins[side]!;
    // Whole numbers below 2^31, so that the bits of a quotient are the quotient.
    const there = ((twin / 3) | 0) - start;
    if (twin >= 0 && there >= 0 && there < BLOCK_SIZE) {
      if ((wholeHere & (1 << there)) === 0) addSide(tin, side, covered, sides, segments);
    } else if (!isWhole(covered, twin)) addSide(tin, side, covered, sides, segments);
  }
}

/** True when the triangle that a side belongs to lies wholly in the region; no side, no triangle. */
function isWhole(covered: ReadonlyMap<number, Covered>, side: number): boolean {
  if (side < 0) return false;
  const triangle = (side / 3) | 0;
  const cover = covered.get((triangle / BLOCK_SIZE) | 0);
  return cover !== undefined && (cover.whole & (1 << (triangle % BLOCK_SIZE))) !== 0;
}

/** Adds the stretches of one side, towards a triangle that is not whole, of a triangle that is. */
function addSide(
  tin: Tin,
  side: number,
  covered: ReadonlyMap<number, Covered>,
  sides: ReadonlyMap<number, Share[]>,
  segments: Segment[],
): void {
  let left = isWhole(covered, side) ? WHOLE_SIDE : (sides.get(side) ?? []);
  if (left.length === 0) return;
  for (const [from, to] of sides.get(tin.twins[side]!) ?? []) {
    left = left.flatMap((share) => without(share, [1 - to, 1 - from]));
  }
  const segment = sideSegment(tin, (side / 3) | 0, side % 3);
  addStretches(segment, left, 10 * tin.rounding, segments);
}

const WHOLE_SIDE: readonly Share[] = [[0, 1]];

function addStretches(
  [px, py, qx, qy]: Segment,
  shares: readonly Share[],
  near: number,
  segments: Segment[],
): void {
  const dx = qx - px;
  const dy = qy - py;
  const length = Math.sqrt(dx * dx + dy * dy);
  for (const [from, to] of shares) {
    if ((to - from) * length <= near) continue;
    const start: Place = from === 0 ? [px, py] : [px + from * dx, py + from * dy];
    const end: Place = to === 1 ? [qx, qy] : [px + to * dx, py + to * dy];
    segments.push([start[0], start[1], end[0], end[1]]);
  }
}
