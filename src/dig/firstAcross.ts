/** The nearest of many polygons across a strip: where a wall first comes into another layer. */

/** A polygon in a strip's axes: s along, t across. */
export interface Polygon {
  s: readonly number[];
  t: readonly number[];
}

/** A line across the strip, t = a + b·s, at which something of that run begins. */
export interface Across {
  a: number;
  b: number;
  run: number;
}

/** A part of the strip and the nearest line on it; null where nothing comes. */
interface Part {
  from: number;
  to: number;
  line: Across | null;
}

/**
 * The part of a convex polygon where every one of some linear values (given at its corners) is
 * at least zero, or null when nothing but rounding is left.
 */
export function clipped(polygon: Polygon, keep: readonly (readonly number[])[]): Polygon | null {
  let rows: (readonly number[])[] = [polygon.s, polygon.t, ...keep];
  for (let k = 0; k < keep.length; k++) {
    const value = rows[2 + k]!;
    if (value.every((at) => at >= 0)) continue;
    if (value.every((at) => at <= 0)) return null;
    rows = clippedRows(rows, value);
  }
  const [s, t] = [rows[0]!, rows[1]!];
  return s.length < 3 ? null : { s, t };
}

function clippedRows(rows: readonly (readonly number[])[], value: readonly number[]): number[][] {
  const out: number[][] = rows.map(() => []);
  for (let i = 0; i < value.length; i++) {
    const j = (i + 1) % value.length;
    const [here, next] = [value[i]!, value[j]!];
    if (here >= 0) rows.forEach((row, r) => out[r]!.push(row[i]!));
    if (here * next < 0) {
      const share = here / (here - next);
      rows.forEach((row, r) => out[r]!.push(row[i]! + share * (row[j]! - row[i]!)));
    }
  }
  return out;
}

/** A side of a polygon that faces the strip's start, from low to high s. */
interface Side {
  low: number;
  high: number;
  a: number;
  b: number;
  run: number;
}

/**
 * Parts a strip so that on each part one line is the nearest near side of all the polygons, or
 * there is none. The polygons come from cells that tile the plane, so their sides never cross,
 * though several may touch.
 */
export function firstAcross(
  polygons: readonly { polygon: Polygon; run: number }[],
  from: number,
  to: number,
): Part[] {
  const least = 1e-11 * Math.max(to - from, Math.abs(from), Math.abs(to));
  const sides = polygons
    .flatMap(({ polygon, run }) => nearSides(polygon, run, least))
    .sort((a, b) => a.low - b.low);
  const marks = [from, ...sides.flatMap(({ low, high }) => [low, high]), to]
    .filter((mark) => mark >= from && mark <= to)
    .sort((a, b) => a - b);
  const parts: Part[] = [];
  let open: Side[] = [];
  let ahead = 0;
  let low = from;
  for (const high of marks) {
    if (high - low <= least && high !== to) continue;
    const middle = (low + high) / 2;
    while (ahead < sides.length && sides[ahead]!.low < middle) open.push(sides[ahead++]!);
    open = open.filter((side) => side.high > middle);
    if (high > low) addPart(parts, { from: low, to: high, line: nearest(open, middle) });
    low = high;
  }
  return parts;
}

function nearest(open: readonly Side[], s: number): Across | null {
  let best: Side | null = null;
  for (const side of open) {
    if (best === null || side.a + side.b * s < best.a + best.b * s) best = side;
  }
  return best && { a: best.a, b: best.b, run: best.run };
}

/** Adds a part, joined to the last where the same line goes on. */
function addPart(parts: Part[], part: Part): void {
  const last = parts[parts.length - 1];
  if (last && sameLine(last.line, part.line, last.from, part.to)) last.to = part.to;
  else parts.push(part);
}

function sameLine(one: Across | null, two: Across | null, from: number, to: number): boolean {
  if (one === null || two === null) return one === two;
  if (one.run !== two.run) return false;
  const size = Math.abs(from) + Math.abs(to) + Math.abs(one.a);
  return [from, to].every((s) => Math.abs(one.a + one.b * s - two.a - two.b * s) <= 1e-12 * size);
}

function nearSides({ s, t }: Polygon, run: number, least: number): Side[] {
  const count = s.length;
  const middleS = s.reduce((sum, at) => sum + at, 0) / count;
  const middleT = t.reduce((sum, at) => sum + at, 0) / count;
  const sides: Side[] = [];
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    const [low, high] = s[i]! < s[j]! ? [i, j] : [j, i];
    const span = s[high]! - s[low]!;
    if (span <= least) continue;
    const b = (t[high]! - t[low]!) / span;
    const a = t[low]! - b * s[low]!;
    if (middleT > a + b * middleS) sides.push({ low: s[low]!, high: s[high]!, a, b, run });
  }
  return sides;
}
