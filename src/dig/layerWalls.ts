/**
 * Walls that stand in every layer at that layer's own slope. In each section square to the floor's
 * edge the wall starts at the edge and rises at the run of the layer that it passes through, but
 * never steeper than a layer that it has passed already; where a flatter layer begins, an optional
 * level ledge comes first. Since every interface is a plane on every cell, so is the wall on
 * strips across the edge, and the strips' ends are found exactly. All local metres.
 */
import {
  ABOVE,
  higherOf,
  lowerOf,
  plane,
  trianglesIn,
  type Box,
  type Cell,
  type CellLayer,
  type LayeredGround,
  type Place,
  type Surface,
} from "../ground/index.js";
import { clipped, firstAcross, type Across, type Polygon } from "./firstAcross.js";
import { sideWall, type PlaneOf } from "./sideWall.js";

/** How walls by layer stand. */
export interface LayerTerms {
  ground: LayeredGround;
  /** Steepest run of a layer's material; null for a built thing, which asks for none. */
  runOf: (layer: CellLayer) => number | null;
  /** m, level ledge where a flatter layer starts. */
  ledge: number;
  /** m, how far out and to either side the walls may matter. */
  reach: number;
}

/** A floor edge with its own axes: s along it from p, t outwards (to the right of p–q). */
interface Edge {
  p: Place;
  u: Place;
  n: Place;
  length: number;
  /** Floor along the edge: start + rate × s. */
  start: number;
  rate: number;
}

/** One slope of the wall on a strip: it begins on a line across the strip. */
interface Slope {
  run: number;
  /** Where it begins: t = t0 + ts·s, at the height z = z0 + zs·s. */
  t0: number;
  ts: number;
  z0: number;
  zs: number;
}

/** A strip across the edge, from and to in m along it, with its slopes from the floor up. */
interface Strip {
  from: number;
  to: number;
  slopes: readonly Slope[];
}

/** The wall of the floor edge p–q, outwards to the right of the way from p to q. */
export function layerWall(p: Place, q: Place, floor: PlaneOf, terms: LayerTerms): Surface {
  const edge = edgeOf(p, q, floor);
  const cells = cellsBeyond(edge, terms);
  const from = -terms.reach;
  const to = edge.length + terms.reach;
  const strips = firstSlopes(edge, cells, terms, from, to).flatMap((strip) =>
    grown(strip, cells, terms, 0),
  );
  const joined = merged(strips);
  if (joined.length === 0) return sideWall(p, q, floor, 0);
  const along = edge.u[0] * p[0] + edge.u[1] * p[1];
  return {
    is: "strips",
    ux: edge.u[0],
    uy: edge.u[1],
    marks: joined.slice(1).map((strip) => along + strip.from),
    of: joined.map((strip) => surfaceOfStrip(edge, strip, terms.ledge)),
  };
}

function edgeOf(p: Place, q: Place, floor: PlaneOf): Edge {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const u: Place = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
  return {
    p,
    u,
    n: [u[1], -u[0]],
    length,
    start: floor.a * p[0] + floor.b * p[1] + floor.c,
    rate: floor.a * u[0] + floor.b * u[1],
  };
}

/** A cell in the edge's own axes. */
interface Seen {
  s: number[];
  t: number[];
  cell: Cell;
}

/** The cells that the wall may pass through. */
function cellsBeyond(edge: Edge, { ground, reach }: LayerTerms): Seen[] {
  const seen: Seen[] = [];
  for (const triangle of trianglesIn(ground.base.tin, boxBeyond(edge, reach))) {
    for (const cell of ground.cellsOf(triangle)) {
      const s = cell.x.map(
        (x, i) => (x - edge.p[0]) * edge.u[0] + (cell.y[i]! - edge.p[1]) * edge.u[1],
      );
      const t = cell.x.map(
        (x, i) => (x - edge.p[0]) * edge.n[0] + (cell.y[i]! - edge.p[1]) * edge.n[1],
      );
      if (Math.max(...t) >= 0 && Math.min(...t) <= reach) seen.push({ s, t, cell });
    }
  }
  return seen;
}

function boxBeyond({ p, u, n, length }: Edge, reach: number): Box {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const s of [-reach, length + reach]) {
    for (const t of [0, reach]) {
      xs.push(p[0] + s * u[0] + t * n[0]);
      ys.push(p[1] + s * u[1] + t * n[1]);
    }
  }
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/**
 * The lowest slope of every strip: in the layer that the floor's edge stands in, or, where that
 * stands vertical, in the first layer above it that does not. Strips without ground get none.
 */
function firstSlopes(
  edge: Edge,
  cells: readonly Seen[],
  terms: LayerTerms,
  from: number,
  to: number,
): Strip[] {
  const strips: Strip[] = [];
  for (const { low, high, seen } of alongEdge(cells, from, to)) {
    for (const [a, b] of parts(edge, seen, low, high)) {
      strips.push({ from: a, to: b, slopes: [firstSlope(edge, seen, terms, (a + b) / 2)] });
    }
  }
  return overWhole(edge, strips, terms, from, to);
}

/** A stretch of the floor's edge line within one cell. */
interface OnEdge {
  low: number;
  high: number;
  seen: Seen;
}

/** The cells that the line of the edge crosses, in order, each stretch once. */
function alongEdge(cells: readonly Seen[], from: number, to: number): OnEdge[] {
  const found: OnEdge[] = [];
  for (const seen of cells) {
    const { s, t } = seen;
    let [low, high] = [Infinity, -Infinity];
    for (let i = 0; i < s.length; i++) {
      const j = (i + 1) % s.length;
      for (const at of crossings(s[i]!, t[i]!, s[j]!, t[j]!)) {
        low = Math.min(low, at);
        high = Math.max(high, at);
      }
    }
    if (high > low) found.push({ low: Math.max(low, from), high: Math.min(high, to), seen });
  }
  found.sort((a, b) => a.low - b.low || b.high - a.high);
  const kept: OnEdge[] = [];
  let reached = from;
  for (const each of found) {
    const low = Math.max(each.low, reached);
    if (each.high - low <= 1e-12 * (to - from)) continue;
    kept.push({ ...each, low });
    reached = each.high;
  }
  return kept;
}

function crossings(s0: number, t0: number, s1: number, t1: number): number[] {
  if (t0 === 0) return [s0];
  return t0 * t1 < 0 ? [s0 + (t0 / (t0 - t1)) * (s1 - s0)] : [];
}

/** Cuts a stretch where the floor's edge passes from one layer of its cell into another. */
function parts(edge: Edge, seen: Seen, low: number, high: number): [number, number][] {
  const marks = [low, high];
  for (const tops of seen.cell.tops) {
    const over = (s: number): number => linearOnEdge(seen, tops, s) - edge.start - edge.rate * s;
    const [a, b] = [over(low), over(high)];
    if (a * b < 0) marks.push(low + (a / (a - b)) * (high - low));
  }
  marks.sort((a, b) => a - b);
  return marks
    .slice(1)
    .flatMap((to, i): [number, number][] => (to > marks[i]! ? [[marks[i]!, to]] : []));
}

/** A value that is linear on a cell, at a place s on the floor's edge. */
function linearOnEdge({ s, t }: Seen, values: readonly number[], at: number): number {
  return linearAt(s, t, values, at, 0);
}

/** A value given at the corners of a polygon and linear on it, at a place of its plane. */
function linearAt(
  s: readonly number[],
  t: readonly number[],
  values: readonly number[],
  atS: number,
  atT: number,
): number {
  let best = 0;
  let corner = 1;
  for (let i = 1; i + 1 < s.length; i++) {
    const twice = (s[i]! - s[0]!) * (t[i + 1]! - t[0]!) - (s[i + 1]! - s[0]!) * (t[i]! - t[0]!);
    if (Math.abs(twice) > Math.abs(best)) [best, corner] = [twice, i];
  }
  if (best === 0) return values[0]!;
  const j = corner + 1;
  const wi = ((atS - s[0]!) * (t[j]! - t[0]!) - (s[j]! - s[0]!) * (atT - t[0]!)) / best;
  const wj = ((s[corner]! - s[0]!) * (atT - t[0]!) - (atS - s[0]!) * (t[corner]! - t[0]!)) / best;
  return values[0]! + wi * (values[corner]! - values[0]!) + wj * (values[j]! - values[0]!);
}

/** The lowest slope at a place s of the floor's edge, as linear functions of s in its cell. */
function firstSlope(edge: Edge, seen: Seen, terms: LayerTerms, s: number): Slope {
  const { layers, tops } = seen.cell;
  const floor = edge.start + edge.rate * s;
  const { rounding } = terms.ground.base.tin;
  let standing: number | null = null;
  let topmost = 0;
  let passed = -1;
  for (let i = 0; i < layers.length; i++) {
    const top = linearOnEdge(seen, tops[i]!, s);
    const bottom = i === 0 ? -Infinity : linearOnEdge(seen, tops[i - 1]!, s);
    if (top <= bottom + rounding) continue;
    const run = terms.runOf(layers[i]!);
    if (run === null) continue;
    topmost = run;
    if (top <= floor + rounding) continue;
    if (standing === null || run > 0) {
      standing = run;
      if (run > 0) return slopeFrom(edge, seen, { run, passed, ledge: terms.ledge });
    }
    passed = i;
  }
  // Vertical all the way up; or in the air, where the layer on top gives the slope.
  const run = standing ?? topmost;
  return { run, t0: 0, ts: 0, z0: edge.start, zs: edge.rate };
}

/** A slope that begins at the floor's edge, or at the top of the layer passed vertically. */
function slopeFrom(
  edge: Edge,
  seen: Seen,
  { run, passed, ledge }: { run: number; passed: number; ledge: number },
): Slope {
  if (passed < 0) return { run, t0: 0, ts: 0, z0: edge.start, zs: edge.rate };
  const tops = seen.cell.tops[passed]!;
  const z0 = linearOnEdge(seen, tops, 0);
  const zs = linearOnEdge(seen, tops, 1) - z0;
  return { run, t0: ledge, ts: 0, z0, zs };
}

/** Fills the gaps where there is no ground, so that the strips cover the whole line. */
function overWhole(
  edge: Edge,
  strips: readonly Strip[],
  terms: LayerTerms,
  from: number,
  to: number,
): Strip[] {
  const whole: Strip[] = [];
  let reached = from;
  const gap = (until: number): void => {
    if (until - reached <= 1e-12 * (to - from)) return;
    const natural = terms.ground.base.layers.map((layer) => terms.runOf(layer) ?? 0);
    const run = Math.max(0, ...natural);
    const slopes = [{ run, t0: 0, ts: 0, z0: edge.start, zs: edge.rate }];
    whole.push({ from: reached, to: until, slopes });
  };
  for (const strip of strips) {
    gap(strip.from);
    whole.push(strip);
    reached = strip.to;
  }
  gap(to);
  return whole;
}

/** Adds to a strip the slopes that follow in flatter layers, parting it where they begin anew. */
function grown(strip: Strip, cells: readonly Seen[], terms: LayerTerms, depth: number): Strip[] {
  const last = strip.slopes[strip.slopes.length - 1]!;
  // Each slope is flatter than the one before: there are no more of them than materials.
  if (depth > 64) throw new Error(`wall has ${depth} slopes, expected fewer than its materials`);
  const entered = last.run === 0 ? [] : entries(strip, last, cells, terms);
  return firstAcross(entered, strip.from, strip.to).flatMap((part): Strip[] => {
    const here = { from: part.from, to: part.to, slopes: strip.slopes };
    if (part.line === null) return [here];
    const next = nextSlope(last, part.line, terms.ledge);
    return grown({ ...here, slopes: [...strip.slopes, next] }, cells, terms, depth + 1);
  });
}

/** The slope that begins where the last one crosses a line t = a + b·s into a flatter layer. */
function nextSlope(last: Slope, { a, b, run }: Across, ledge: number): Slope {
  // Height of the last slope on the line: its start's height plus the way out over its run.
  const z0 = last.z0 + (a - last.t0) / last.run;
  const zs = last.zs + (b - last.ts) / last.run;
  return { run, t0: a + ledge, ts: b, z0, zs };
}

/** Where a slope runs within a flatter layer, as polygons in s and t. */
function entries(
  strip: Strip,
  slope: Slope,
  cells: readonly Seen[],
  { ground, runOf }: LayerTerms,
): { polygon: Polygon; run: number }[] {
  const { rounding } = ground.base.tin;
  const found: { polygon: Polygon; run: number }[] = [];
  for (const seen of cells) {
    const { s, t, cell } = seen;
    if (Math.max(...s) <= strip.from || Math.min(...s) >= strip.to) continue;
    const ahead = s.map((at, i) => t[i]! - slope.t0 - slope.ts * at);
    if (Math.max(...ahead) <= 0) continue;
    const height = s.map((at, i) => slope.z0 + slope.zs * at + ahead[i]! / slope.run);
    const bounds = [ahead, s.map((at) => at - strip.from), s.map((at) => strip.to - at)];
    cell.layers.forEach((layer, k) => {
      const run = runOf(layer);
      if (run === null || run <= slope.run) return;
      const thick = k === 0 || cell.tops[k]!.some((z, i) => z - cell.tops[k - 1]![i]! > rounding);
      if (!thick) return;
      const over = k === 0 ? null : height.map((z, i) => z - cell.tops[k - 1]![i]!);
      const under = height.map((z, i) => cell.tops[k]![i]! - z);
      // A wall along a layer's face is not in the layer, whatever rounding makes of it.
      if (Math.max(...under) <= rounding || (over && Math.max(...over) <= rounding)) return;
      const polygon = clipped({ s, t }, over ? [over, under, ...bounds] : [under, ...bounds]);
      if (polygon) found.push({ polygon, run });
    });
  }
  return found;
}

/** Joins neighbouring strips whose slopes are the same. */
function merged(strips: readonly Strip[]): Strip[] {
  const sorted = [...strips].sort((a, b) => a.from - b.from);
  const out: Strip[] = [];
  for (const strip of sorted) {
    const last = out[out.length - 1];
    if (last && sameSlopes(last, strip)) out[out.length - 1] = { ...last, to: strip.to };
    else out.push(strip);
  }
  return out;
}

/** True when two strips' slopes begin on the same lines, as seen where the strips meet. */
function sameSlopes(one: Strip, two: Strip): boolean {
  if (one.slopes.length !== two.slopes.length) return false;
  const size = Math.abs(one.from) + Math.abs(two.to);
  return one.slopes.every((a, i) => {
    const b = two.slopes[i]!;
    if (a.run !== b.run) return false;
    return [one.from, two.to].every((s) => {
      const offT = a.t0 + a.ts * s - b.t0 - b.ts * s;
      const offZ = a.z0 + a.zs * s - b.z0 - b.zs * s;
      return Math.abs(offT) <= 1e-12 * size && Math.abs(offZ) <= 1e-12 * size;
    });
  });
}

/**
 * The wall on a strip. Slopes grow flatter outwards, so the lowest of their planes holds; a ledge
 * keeps the next from going below its own start.
 */
function surfaceOfStrip(edge: Edge, { slopes }: Strip, ledge: number): Surface {
  let outer: Surface = ABOVE;
  for (let i = slopes.length - 1; i >= 0; i--) {
    const slope = slopes[i]!;
    const own = slopeSurface(edge, slope);
    const whole: Surface = outer === ABOVE ? own : lowerOf([own, outer]);
    const ledged = ledge > 0 && (i > 0 || slope.t0 !== 0 || slope.ts !== 0);
    outer = ledged ? higherOf([inAxes(edge, slope.zs, 0, slope.z0), whole]) : whole;
  }
  // The floor's edge is as far in as any wall goes, also where the first slope stands on rock.
  const foot = slopes[0]!;
  const onFloor = foot.run > 0 && foot.z0 === edge.start && foot.zs === edge.rate && foot.t0 === 0;
  return onFloor ? outer : lowerOf([verticalAt(edge), outer]);
}

function slopeSurface(edge: Edge, { run, t0, ts, z0, zs }: Slope): Surface {
  if (run === 0) return verticalAt(edge);
  return inAxes(edge, zs - ts / run, 1 / run, z0 - t0 / run);
}

function verticalAt({ p, n }: Edge): Surface {
  return { is: "wall", nx: n[0], ny: n[1], d: n[0] * p[0] + n[1] * p[1], reversed: false };
}

/** The plane z = perS·s + perT·t + c of the edge's axes. */
function inAxes({ p, u, n }: Edge, perS: number, perT: number, c: number): Surface {
  const a = perS * u[0] + perT * n[0];
  const b = perS * u[1] + perT * n[1];
  return plane(a, b, c - a * p[0] - b * p[1]);
}

/** Greatest run that any layer of the ground asks for. */
export function flattestOf(terms: Pick<LayerTerms, "ground" | "runOf">): number {
  return Math.max(0, ...terms.ground.base.layers.map((layer) => terms.runOf(layer) ?? 0));
}
