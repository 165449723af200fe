/**
 * What can be seen of plane facets and of lines, exactly: from each facet is taken what nearer ones
 * cover. So no order of drawing is needed afterwards, and what is of one kind can be drawn together.
 * All in mm of the paper; how near a facet is is affine there (see lens.ts).
 */
import type { Shown } from "./lens.js";

/** x right and y down. */
export type Spot = readonly [x: number, y: number];

export interface Facet {
  /** Convex, counter-clockwise by the shoelace formula. */
  outline: readonly Spot[];
  /** near = a x + b y + c. */
  near: readonly [a: number, b: number, c: number];
  /** How much nearer another must be to cover this one: what is less is the error of the numbers. */
  slack: number;
  /** What it is of, and its step of light. */
  layer: string;
  light: number;
}

/** A line with how near its ends are, and how much nearer a facet must be to hide it. */
export interface Line {
  from: Shown;
  to: Shown;
  slack: number;
}

/** mm² that are not worth cutting out. */
const LEAST_AREA = 0.0005;
/** mm: a facet lower than this is an edge seen end on. */
const LEAST_HEIGHT = 0.004;

/** Twice the area that an outline encloses; negative when it goes the other way round. */
export function twiceArea(outline: readonly Spot[]): number {
  let sum = 0;
  outline.forEach(([x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length]!;
    sum += x * v - u * y;
  });
  return sum;
}

/** A facet of the corners of a plane convex outline; null for one that is seen edge on. */
export function facetOf(
  corners: readonly Shown[],
  look: Pick<Facet, "slack" | "layer" | "light">,
): Facet | null {
  const spots = corners.map(({ x, y }): Spot => [x, y]);
  const area = twiceArea(spots);
  const longest = Math.max(
    ...spots.map(([x, y], i) => {
      const [u, v] = spots[(i + 1) % spots.length]!;
      return Math.hypot(u - x, v - y);
    }),
  );
  if (!(Math.abs(area) > LEAST_HEIGHT * longest)) return null;
  const near = planeOf(corners);
  if (near === null) return null;
  return { outline: area < 0 ? spots.reverse() : spots, near, ...look };
}

/** The plane through the three corners that span most. */
function planeOf(corners: readonly Shown[]): Facet["near"] | null {
  const p = corners[0]!;
  let best: { size: number; q: Shown; r: Shown } | null = null;
  for (let i = 1; i + 1 < corners.length; i++) {
    const [q, r] = [corners[i]!, corners[i + 1]!];
    const size = Math.abs((q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y));
    if (best === null || size > best.size) best = { size, q, r };
  }
  if (best === null || best.size === 0) return null;
  const { q, r } = best;
  const [ux, uy, un] = [q.x - p.x, q.y - p.y, q.near - p.near];
  const [vx, vy, vn] = [r.x - p.x, r.y - p.y, r.near - p.near];
  const size = ux * vy - vx * uy;
  const a = (un * vy - vn * uy) / size;
  const b = (ux * vn - vx * un) / size;
  return [a, b, p.near - a * p.x - b * p.y];
}

/** The part of a convex outline where a x + b y + c is not below nought. */
export function halfOf(outline: readonly Spot[], [a, b, c]: Facet["near"]): Spot[] {
  const kept: Spot[] = [];
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const [hp, hq] = [a * p[0] + b * p[1] + c, a * q[0] + b * q[1] + c];
    if (hp >= 0) kept.push(p);
    if (hp < 0 !== hq < 0) {
      const s = hp / (hp - hq);
      kept.push([p[0] + (q[0] - p[0]) * s, p[1] + (q[1] - p[1]) * s]);
    }
  });
  return kept;
}

/** The half planes that hold an outline, edge by edge. */
function sidesOf(outline: readonly Spot[]): Facet["near"][] {
  return outline.map(([x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length]!;
    const [a, b] = [-(v - y), u - x];
    return [a, b, -(a * x + b * y)] as const;
  });
}

const turned = ([a, b, c]: Facet["near"]): Facet["near"] => [-a, -b, -c];

function less([a, b, c]: Facet["near"], [d, e, f]: Facet["near"], by: number): Facet["near"] {
  return [a - d, b - e, c - f - by];
}

/** A piece without what a facet hides of it: convex pieces again. */
function without(piece: readonly Spot[], of: Facet, cover: Facet): (readonly Spot[])[] {
  let shared = piece;
  const cuts = [...sidesOf(cover.outline), less(cover.near, of.near, of.slack)];
  for (const cut of cuts) {
    shared = halfOf(shared, cut);
    if (shared.length < 3 || twiceArea(shared) < 2 * LEAST_AREA) return [piece];
  }
  const left: (readonly Spot[])[] = [];
  let rest = piece;
  for (const cut of cuts) {
    const off = halfOf(rest, turned(cut));
    if (off.length >= 3 && twiceArea(off) > LEAST_AREA / 10) left.push(off);
    rest = halfOf(rest, cut);
  }
  return left;
}

interface Box {
  west: number;
  east: number;
  north: number;
  south: number;
}

function boxOf(spots: readonly Spot[]): Box {
  const box = { west: Infinity, east: -Infinity, north: Infinity, south: -Infinity };
  for (const [x, y] of spots) {
    box.west = Math.min(box.west, x);
    box.east = Math.max(box.east, x);
    box.north = Math.min(box.north, y);
    box.south = Math.max(box.south, y);
  }
  return box;
}

const meet = (a: Box, b: Box): boolean =>
  a.west < b.east && b.west < a.east && a.north < b.south && b.north < a.south;

/** mm of a bin of the list of facets by place. */
const BIN = 4;

/** Facets by where they lie on the picture. */
export class FacetMap {
  readonly #bins = new Map<number, number[]>();
  readonly #boxes: Box[];
  readonly #nearest: number[];
  readonly #seen: Uint32Array;
  #asked = 0;

  constructor(readonly facets: readonly Facet[]) {
    this.#boxes = facets.map(({ outline }) => boxOf(outline));
    this.#nearest = facets.map(({ outline, near: [a, b, c] }) =>
      Math.max(...outline.map(([x, y]) => a * x + b * y + c)),
    );
    this.#seen = new Uint32Array(facets.length);
    this.#boxes.forEach((box, i) => {
      for (const bin of binsOf(box)) {
        const list = this.#bins.get(bin);
        if (list === undefined) this.#bins.set(bin, [i]);
        else list.push(i);
      }
    });
  }

  /** Facets whose boxes meet this one and that reach nearer than `far`. */
  *over(box: Box, far: number): Generator<Facet> {
    this.#asked += 1;
    for (const bin of binsOf(box)) {
      for (const i of this.#bins.get(bin) ?? []) {
        if (this.#seen[i] === this.#asked) continue;
        this.#seen[i] = this.#asked;
        if (this.#nearest[i]! > far && meet(this.#boxes[i]!, box)) yield this.facets[i]!;
      }
    }
  }

  /** What is seen of a facet. */
  partsOf(facet: Facet): readonly (readonly Spot[])[] {
    const [a, b, c] = facet.near;
    const farthest = Math.min(...facet.outline.map(([x, y]) => a * x + b * y + c));
    let pieces: (readonly Spot[])[] = [facet.outline];
    for (const cover of this.over(boxOf(facet.outline), farthest + facet.slack)) {
      if (cover === facet) continue;
      pieces = pieces.flatMap((piece) => without(piece, facet, cover));
      if (pieces.length === 0) break;
    }
    return pieces;
  }

  /** Shares from 0 to 1 along a line between which it is hidden, in order and apart. */
  hiddenOf({ from, to, slack }: Line): (readonly [number, number])[] {
    const box = boxOf([
      [from.x, from.y],
      [to.x, to.y],
    ]);
    // A level or upright line has a box without an inside.
    const wide = {
      ...{ west: box.west - 0.001, east: box.east + 0.001 },
      ...{ north: box.north - 0.001, south: box.south + 0.001 },
    };
    const hidden: (readonly [number, number])[] = [];
    for (const cover of this.over(wide, Math.min(from.near, to.near) + slack)) {
      const stretch = coveredOf({ from, to, slack }, cover);
      if (stretch !== null) hidden.push(stretch);
    }
    return joined(hidden);
  }
}

function* binsOf({ west, east, north, south }: Box): Generator<number> {
  for (let x = Math.floor(west / BIN); x <= Math.floor(east / BIN); x++) {
    for (let y = Math.floor(north / BIN); y <= Math.floor(south / BIN); y++) {
      yield x * 65_536 + y;
    }
  }
}

/** The stretch of a line that a facet hides. */
function coveredOf({ from, to, slack }: Line, cover: Facet): readonly [number, number] | null {
  let [low, high] = [0, 1];
  const [a, b, c] = cover.near;
  const over = (at: Shown): number => a * at.x + b * at.y + c - at.near - slack;
  const ends = [
    ...sidesOf(cover.outline).map(
      ([d, e, f]) => [d * from.x + e * from.y + f, d * to.x + e * to.y + f] as const,
    ),
    [over(from), over(to)] as const,
  ];
  for (const [p, q] of ends) {
    if (p < 0 && q < 0) return null;
    if (p < 0) low = Math.max(low, p / (p - q));
    else if (q < 0) high = Math.min(high, p / (p - q));
    if (low >= high) return null;
  }
  return [low, high];
}

/** Stretches in order, those that meet made one. */
function joined(stretches: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const out: [number, number][] = [];
  for (const [low, high] of stretches.toSorted((a, b) => a[0] - b[0])) {
    const last = out[out.length - 1];
    if (last !== undefined && low <= last[1] + 1e-9) last[1] = Math.max(last[1], high);
    else out.push([low, high]);
  }
  return out;
}

/** What is left of 0 to 1. */
export function seenOf(hidden: readonly (readonly [number, number])[]): [number, number][] {
  const out: [number, number][] = [];
  let at = 0;
  for (const [low, high] of hidden) {
    if (low > at) out.push([at, low]);
    at = high;
  }
  if (at < 1) out.push([at, 1]);
  return out;
}
