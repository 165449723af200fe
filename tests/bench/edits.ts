/** How long an edit of one hole takes. */
import { edit, editOnce, growingHill, randomHill, type Edited, type Hill } from "./hill.js";
import { solidDig, solidTimes } from "./solid.js";
import { beside, median, medians, middle, type Row } from "./timing.js";

/** Runs of an edit that touches some ten thousand triangles or fewer, and of one that touches more. */
const MANY = 101;
const FEW = 21;
const WARM_UP = 20;

function nameOf(count: number): string {
  return count < 1e6 ? `edit-${count / 1000}k` : `edit-${count / 1e6}m`;
}

/** An edit beside the kernel's intersection and volume; throws when the two dig different holes. */
export function editBesideSolid(count: number): { row: Row; hill: Hill; edited: Edited } {
  const hill = randomHill(count);
  const edited = editOnce(hill);
  const ours = median(MANY, WARM_UP, () => void edit(hill));
  const solid = solidDig(hill.base);
  const apart = Math.abs(solid.dig() - edited.cut) / edited.cut;
  // The kernel reads the ground in single precision.
  if (!(apart < 1e-4)) {
    throw new Error(`got ${edited.cut} m³, expected the kernel's ${solid.dig()} m³`);
  }
  const theirs = middle(solidTimes(solid, 7));
  solid.release();
  const row = beside(nameOf(count), ours, "manifold-3d", theirs);
  return { row: { ...row, triangles: edited.triangles.length, apart }, hill, edited };
}

/** The edit on a million points beside ten times the edit on a hundred thousand. */
export function editOfMillion(edit100k: Row): Row {
  const hill = randomHill(1_000_000);
  const { triangles } = editOnce(hill);
  const ours = median(FEW, 5, () => void edit(hill));
  return {
    ...beside(nameOf(1_000_000), ours, "10 × edit-100k", 10 * edit100k.median_ms),
    triangles: triangles.length,
    note: "manifold-3d is left out here, to keep the bench short: its solid has 4 million triangles",
  };
}

/**
 * The same touched ground inside ever larger surveys. The row's time is that in the largest, and
 * its ratio here is the largest time ÷ the smallest. Throws when it is not the same hole.
 */
export function flatCost(): Row {
  const counts = [10_000, 100_000, 1_000_000];
  const hills = counts.map(growingHill);
  const holes = hills.map(editOnce);
  for (const { cut, triangles } of holes) {
    const apart = Math.abs(cut - holes[0]!.cut) / holes[0]!.cut;
    if (apart > 1e-9 || triangles.length !== holes[0]!.triangles.length) {
      throw new Error(
        `got ${cut} m³ in ${triangles.length} triangles, ` +
          `expected ${holes[0]!.cut} m³ in ${holes[0]!.triangles.length}`,
      );
    }
  }
  const times = medians(
    MANY,
    WARM_UP,
    hills.map((hill) => () => void edit(hill)),
  );
  return {
    name: "edit-flat-cost",
    median_ms: times.at(-1)!,
    ratio: Math.max(...times) / Math.min(...times),
    times_ms: times,
    points: counts,
    triangles: holes[0]!.triangles.length,
    note: "ratio is the largest of the times ÷ the smallest",
  };
}

/**
 * The physical limit: one pass that reads the corners of the triangles that `edit` touches and sums
 * the ground's volume above a level from them. No edit can be quicker than reading its ground.
 */
export function readingLimit({ base: { tin } }: Hill, { triangles }: Edited, edit100k: Row): Row {
  const touched = Uint32Array.from(triangles);
  let sum = 0;
  const read = (): void => {
    const { x, y, z, triangles: corners } = tin;
    for (const triangle of touched) {
      const [a, b, c] = [
        corners[3 * triangle]!,
        corners[3 * triangle + 1]!,
        corners[3 * triangle + 2]!,
      ];
      const twice = (x[b]! - x[a]!) * (y[c]! - y[a]!) - (x[c]! - x[a]!) * (y[b]! - y[a]!);
      sum += twice * (z[a]! + z[b]! + z[c]!);
    }
  };
  const ours = median(1001, 200, read);
  if (!Number.isFinite(sum)) throw new Error(`got the sum ${sum}, expected a finite one`);
  return {
    ...beside("limit", ours, "edit-100k", edit100k.median_ms),
    note: "reads the corners of the triangles that edit-100k touches, and no more",
  };
}
