import type { Spot } from "../paper.js";

/** Longest mitre at a bend, in offsets. */
const MITRE = 2;

/** A line moved sideways by so many mm, to the right as it goes (y runs down); bends are mitred. */
export function offsetLine(line: readonly Spot[], off: number): Spot[] {
  if (off === 0) return [...line];
  return line.map((at, i) => {
    const before = sideOf(line[i - 1], at) ?? sideOf(at, line[i + 1]) ?? [0, 0];
    const after = sideOf(at, line[i + 1]) ?? before;
    const [sx, sy] = [before[0] + after[0], before[1] + after[1]];
    const size = Math.hypot(sx, sy);
    const [nx, ny] = size < 1e-9 ? before : [sx / size, sy / size];
    const reach = off / Math.max(1 / MITRE, nx * before[0] + ny * before[1]);
    return [at[0] + nx * reach, at[1] + ny * reach];
  });
}

/** Unit vector to the right of a leg on paper; null where it has no length. */
function sideOf(a: Spot | undefined, b: Spot | undefined): Spot | null {
  if (a === undefined || b === undefined) return null;
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return size < 1e-9 ? null : [-(b[1] - a[1]) / size, (b[0] - a[0]) / size];
}
