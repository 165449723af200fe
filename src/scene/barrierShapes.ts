/** The erosion barrier as a low fence on the ground. Drawn so, no more: no maker's sizes. */
import type { ScenePoint } from "./frame.js";

/** A line of places on the ground. */
type Line = readonly ScenePoint[];

/** m: the cloth over the ground, the stakes over it, and from stake to stake. */
const CLOTH = 0.6;
const STAKE = 0.85;
const APART = 2;

/** The cloth of all lines: x y z of three corners for each triangle. */
export function barrierCloth(lines: readonly Line[]): Float32Array {
  const corners = lines.flatMap((line) =>
    line.slice(1).flatMap((b, i) => {
      const a = line[i]!;
      const [over, beyond] = [raised(a, CLOTH), raised(b, CLOTH)];
      return [...a, ...b, ...beyond, ...a, ...beyond, ...over];
    }),
  );
  return Float32Array.from(corners);
}

/** Stakes and the cloth's upper edge as segment ends. */
export function barrierInk(lines: readonly Line[]): Float32Array {
  return Float32Array.from(
    lines.flatMap((line) => [
      ...line.slice(1).flatMap((b, i) => [...raised(line[i]!, CLOTH), ...raised(b, CLOTH)]),
      ...stakesOn(line).flatMap((foot) => [...foot, ...raised(foot, STAKE)]),
    ]),
  );
}

function raised([x, y, z]: ScenePoint, by: number): ScenePoint {
  return [x, y, z + by];
}

/** The places nearest after every `APART` m of a line, and its two ends. */
function stakesOn(line: Line): ScenePoint[] {
  const stakes: ScenePoint[] = [];
  let since = APART;
  line.forEach((at, i) => {
    const before = line[i - 1];
    if (before !== undefined) since += Math.hypot(at[0] - before[0], at[1] - before[1]);
    if (since < APART && i < line.length - 1) return;
    stakes.push(at);
    since = 0;
  });
  return stakes;
}
