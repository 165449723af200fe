/** How deep water lies between and beyond the probes that met it. */
import type { Site } from "../site/index.js";
import { probeRegions, thicknessAt } from "./probes.js";

/**
 * Depth of the water below the ground at a place, local m, over the probes that give one: the same
 * rule as for the layers' thickness. Null where no probe met water. It is the water of the day on
 * which the probes were dug, not the highest of the year.
 */
export function waterTable(
  ground: Site["ground"],
  origin: readonly [number, number, number],
): ((x: number, y: number) => number) | null {
  const wet = ground.probes.flatMap((probe) =>
    probe.water === undefined ? [] : [{ ...probe, thickness: [probe.water] }],
  );
  const one = ground.layers[0];
  if (wet.length === 0 || one === undefined) return null;
  // Two layers, of which the upper is what lies over the water.
  const regions = probeRegions({ layers: [one, one], probes: wet }, origin);
  return (x, y) => thicknessAt(regions, x, y)[0] ?? NaN;
}
