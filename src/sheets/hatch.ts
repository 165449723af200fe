/** Hatches as strokes and dots that lie inside an area: the same for every writer. */
import type { Hatch, Spot } from "./paper.js";

export type Stroke = readonly [Spot, Spot];

/** What a hatch comes to inside an area. */
export interface Hatching {
  strokes: readonly Stroke[];
  dots: readonly Spot[];
}

/** More strokes than this on one area is a mistake of scale, and would fill the paper with ink. */
const MOST_ROWS = 20_000;

/**
 * Strokes or dots of `hatch` inside `rings`, holes by the even-odd rule. They lie on a grid that is
 * fixed to the paper, so hatches of neighbouring areas run on into each other.
 */
export function hatchArea(rings: readonly (readonly Spot[])[], hatch: Hatch): Hatching {
  if (!(hatch.gap > 0)) throw new Error(`a hatch's gap is ${hatch.gap} mm: expected more than 0`);
  return hatch.kind === "lines"
    ? { strokes: strokesIn(rings, hatch.turn, hatch.gap), dots: [] }
    : { strokes: [], dots: dotsIn(rings, hatch.gap) };
}

function strokesIn(rings: readonly (readonly Spot[])[], turn: number, gap: number): Stroke[] {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const level = rings.map((ring) =>
    ring.map(([x, y]): Spot => [x * cos + y * sin, y * cos - x * sin]),
  );
  const back = (u: number, v: number): Spot => [u * cos - v * sin, u * sin + v * cos];
  return rowsOf(level, gap).flatMap((v) =>
    spansAt(level, v).map(([from, to]): Stroke => [back(from, v), back(to, v)]),
  );
}

/** Rows are staggered, so that dots do not line up square. */
function dotsIn(rings: readonly (readonly Spot[])[], gap: number): Spot[] {
  const rise = (gap * Math.sqrt(3)) / 2;
  return rowsOf(rings, rise).flatMap((v) => {
    const shift = Math.round(v / rise) % 2 === 0 ? 0 : gap / 2;
    return spansAt(rings, v).flatMap(([from, to]) => {
      const dots: Spot[] = [];
      const first = Math.ceil((from - shift) / gap);
      for (let i = first; i * gap + shift <= to; i++) dots.push([i * gap + shift, v]);
      return dots;
    });
  });
}

/** Whole multiples of `gap` between the lowest and the highest corner. */
function rowsOf(rings: readonly (readonly Spot[])[], gap: number): number[] {
  let lowest = Infinity;
  let highest = -Infinity;
  for (const [, y] of rings.flat()) {
    lowest = Math.min(lowest, y);
    highest = Math.max(highest, y);
  }
  const first = Math.ceil(lowest / gap);
  const count = Math.floor(highest / gap) - first + 1;
  if (!Number.isFinite(count) || count <= 0) return [];
  if (count > MOST_ROWS) throw new Error(`a hatch of ${count} rows: expected a wider gap`);
  return Array.from({ length: count }, (_, i) => (first + i) * gap);
}

/** Where the level line at `y` lies inside, even-odd; each end of an edge counts for one side only. */
function spansAt(rings: readonly (readonly Spot[])[], y: number): [number, number][] {
  const crossings: number[] = [];
  for (const ring of rings) {
    for (const [i, [ax, ay]] of ring.entries()) {
      const [bx, by] = ring[(i + 1) % ring.length]!;
      if (ay > y !== by > y) crossings.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
    }
  }
  crossings.sort((a, b) => a - b);
  const spans: [number, number][] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    if (crossings[i + 1]! > crossings[i]!) spans.push([crossings[i]!, crossings[i + 1]!]);
  }
  return spans;
}

/** A circle as a ring, close enough for a hatch. */
export function ringOfCircle([x, y]: Spot, radius: number): Spot[] {
  const corners = 72;
  return Array.from({ length: corners }, (_, i): Spot => {
    const angle = (2 * Math.PI * i) / corners;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}
