/** Many runs summed up: spreads, what drives them, where the next probe should go. */
import { SUMS, type ChanceRuns, type ChanceShape } from "./model.js";
import type { Chance, Driver, Histogram, NextProbe, ProbePlace, Spread } from "./types.js";

const STEPS = 24;

/**
 * Sums up runs made in any pieces and any order, as long as they are those from 0 to their count.
 * Throws when some are missing or made twice.
 */
export function summarise(shape: ChanceShape, pieces: readonly ChanceRuns[]): Chance {
  const runs = joined(shape, pieces);
  const total = spreadOf(runs.total);
  const rock = spreadOf(runs.rock);
  const probeMap = probeMapOf(shape, runs);
  return {
    runs: runs.count,
    seed: shape.seed,
    total,
    days: spreadOf(runs.days),
    jobDays: spreadOf(runs.jobDays),
    hours: spreadOf(runs.hours),
    rock,
    hardRock: spreadOf(runs.hardRock),
    loads: spreadOf(runs.loads),
    totalCounts: histogram(runs.total),
    drivers: driversOf(shape, runs),
    probeMap,
    nextProbe: bestProbe(shape, probeMap, total, rock),
    drawn: shape.drawn,
  };
}

function joined(shape: ChanceShape, pieces: readonly ChanceRuns[]): ChanceRuns {
  const inOrder = [...pieces].sort((one, other) => one.first - other.first);
  let count = 0;
  for (const piece of inOrder) {
    if (piece.first !== count) throw new Error(`runs: got ${piece.first} next, expected ${count}`);
    count += piece.count;
  }
  if (count < 2) throw new Error(`runs: got ${count}, expected 2 or more`);
  const sums = new Float64Array(inOrder[0]!.sums.length);
  for (const piece of inOrder) piece.sums.forEach((sum, i) => (sums[i]! += sum));
  const all = (
    name: "total" | "days" | "jobDays" | "hours" | "rock" | "hardRock" | "loads" | "shares",
  ) => {
    const width = name === "shares" ? shape.drawn.length : 1;
    const values = new Float64Array(count * width);
    for (const piece of inOrder) values.set(piece[name], piece.first * width);
    return values;
  };
  return {
    first: 0,
    count,
    total: all("total"),
    days: all("days"),
    jobDays: all("jobDays"),
    hours: all("hours"),
    rock: all("rock"),
    hardRock: all("hardRock"),
    loads: all("loads"),
    shares: all("shares"),
    sums,
  };
}

/** Mean, deviation (n − 1) and the tenth, fiftieth and ninetieth percentile, linear between runs. */
export function spreadOf(values: Float64Array): Spread {
  const sorted = Float64Array.from(values).sort();
  const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
  const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    low: quantile(sorted, 0.1),
    likely: quantile(sorted, 0.5),
    high: quantile(sorted, 0.9),
    mean,
    sd: Math.sqrt(squares / (sorted.length - 1)),
  };
}

function quantile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const [low, high] = [sorted[below]!, sorted[Math.min(below + 1, sorted.length - 1)]!];
  return low + (place - below) * (high - low);
}

function histogram(values: Float64Array): Histogram {
  const from = values.reduce((least, value) => Math.min(least, value), Infinity);
  const to = values.reduce((most, value) => Math.max(most, value), -Infinity);
  const counts = new Array<number>(STEPS).fill(0);
  for (const value of values) {
    const step = to > from ? Math.floor((STEPS * (value - from)) / (to - from)) : 0;
    counts[Math.min(step, STEPS - 1)]! += 1;
  }
  return { from, to, counts };
}

function driversOf({ drawn }: ChanceShape, runs: ChanceRuns): Driver[] {
  const width = drawn.length;
  const column = (k: number): Float64Array =>
    Float64Array.from(runs.total, (_, run) => runs.shares[run * width + k]!);
  const single = drawn.map(({ id, kind, name }, k): Driver => {
    return { id, kind, name, share: correlation(column(k), runs.total) ** 2 };
  });
  const soft = runs.rock.map((rock, run) => rock - runs.hardRock[run]!);
  const rock: Driver = {
    id: "rock",
    kind: "rock",
    name: "How deep the rock lies",
    share: explainedByTwo(soft, runs.hardRock, runs.total),
  };
  return [rock, ...single].sort((one, other) => other.share - one.share);
}

/** Correlation of two lists; 0 when one of them never changes. */
export function correlation(x: Float64Array, y: Float64Array): number {
  const [mx, my] = [meanOf(x), meanOf(y)];
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    const [dx, dy] = [x[i]! - mx, y[i]! - my];
    xx += dx * dx;
    yy += dy * dy;
    xy += dx * dy;
  }
  return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0;
}

function meanOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Share of the variance of y that a straight-line fit to two lists explains. */
export function explainedByTwo(a: Float64Array, b: Float64Array, y: Float64Array): number {
  const [ay, by, ab] = [correlation(a, y), correlation(b, y), correlation(a, b)];
  // Two lists that tell the same (or one that never changes) leave one to explain with.
  if (1 - ab * ab < 1e-9) return Math.max(ay * ay, by * by);
  return (ay * ay + by * by - 2 * ay * by * ab) / (1 - ab * ab);
}

/**
 * The variance that knowing every layer's thickness at a place would take away, as a share, by the
 * straight-line fit to the doubt there. Layers are drawn apart from each other, so their shares
 * add. What chance alone would show, one part in the count of runs for each layer, is taken off.
 */
function probeMapOf({ candidates, layers }: ChanceShape, runs: ChanceRuns): ProbePlace[] {
  const n = runs.count;
  const shares = new Float64Array(candidates.length);
  const rockShares = new Float64Array(candidates.length);
  const [total, stone] = [momentsOf(runs.total), momentsOf(runs.rock)];
  for (let layer = 0; layer < layers; layer++) {
    candidates.forEach((_, k) => {
      const at = SUMS * (layer * candidates.length + k);
      const mean = runs.sums[at]! / n;
      const spread = runs.sums[at + 1]! / n - mean * mean;
      const explained = (along: number, of: Moments): number => {
        const both = along / n - mean * of.mean;
        if (!(spread > 0) || !(of.variance > 0)) return 0;
        return Math.max(0, (both * both) / (spread * of.variance) - 1 / n);
      };
      shares[k]! += explained(runs.sums[at + 2]!, total);
      rockShares[k]! += explained(runs.sums[at + 3]!, stone);
    });
  }
  return candidates.map((at, k) => ({
    at,
    share: Math.min(1, shares[k]!),
    rockShare: Math.min(1, rockShares[k]!),
  }));
}

interface Moments {
  mean: number;
  variance: number;
}

function momentsOf(values: Float64Array): Moments {
  const mean = meanOf(values);
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, variance: squares / values.length };
}

/** Less than this share of the variance is not worth a hole. */
const WORTH = 0.005;

function bestProbe(
  { thickness }: ChanceShape,
  map: readonly ProbePlace[],
  total: Spread,
  rock: Spread,
): NextProbe | null {
  let best = 0;
  map.forEach(({ share }, k) => {
    if (share > map[best]!.share) best = k;
  });
  const place = map[best];
  if (place === undefined || place.share < WORTH) return null;
  return {
    ...place,
    thickness: thickness[best]!,
    sdBefore: total.sd,
    sdAfter: total.sd * Math.sqrt(1 - place.share),
    rockBefore: rock.sd,
    rockAfter: rock.sd * Math.sqrt(1 - place.rockShare),
  };
}
