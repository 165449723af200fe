/** Small schemes for the unit tests of the flow: a drain, a tank, level ground. */
import type { PipeRun } from "../dig/index.js";
import type { Scheme, Site, Tank, Work } from "../site/index.js";
import { checkFlow } from "./checkFlow.js";

const IN = 0.0254;

/** Tank 1 along x from 28.5 to 31.5 m: inlet at 97.3, outlet at 97.25. */
export function plainInletTank(over: Partial<Tank> = {}): Tank {
  return {
    kind: "tank",
    id: "k",
    name: "Tank 1",
    at: [30, 0],
    bearing: 90,
    body: { length: 3, width: 2, height: 1.6, inlet: 1.3, outlet: 1.25 },
    base: 96,
    overdig: 0.3,
    bedding: { depth: 0.15, material: "gravel" },
    walls: { by: "run", run: 1 },
    backfill: "native",
    ...over,
  };
}

/** A straight pipe along x from `from` (0) in level ground, as the dig would report it; 3-in. */
export function plainHouseDrain(
  over: Partial<PipeRun> & { start: number; end: number; ground?: number; from?: number },
): PipeRun {
  const { start, end, ground = 100, from = 0, ...rest } = over;
  const length = rest.length ?? 28.5;
  const inside = rest.inside ?? 3.068 * IN;
  const outside = rest.outside ?? 3.5 * IN;
  const top = (outside + inside) / 2;
  return {
    id: "p1",
    name: "House drain",
    trench: "t1",
    service: "gravity",
    material: "pvc",
    length,
    drop: start - end,
    fall: (start - end) / length,
    cover: {
      least: ground - Math.max(start, end) - top,
      most: ground - Math.min(start, end) - top,
    },
    stations: [
      { station: 0, at: [from, 0], ground, invert: start },
      { station: length, at: [from + length, 0], ground, invert: end },
    ],
    ...rest,
    inside,
    outside,
  };
}

/** `checkFlow` of these pipes in a scheme of these works. */
export function checkPlain(
  runs: PipeRun[],
  works: Work[] = [],
  units: Site["units"] = "metric",
  flow?: Scheme["flow"],
): ReturnType<typeof checkFlow> {
  const scheme: Scheme = { id: "s", name: "S", works, ...(flow === undefined ? {} : { flow }) };
  const site: Site = {
    format: "bankyard-site",
    version: 1,
    name: "Test",
    units,
    currency: "USD",
    survey: { points: [] },
    ground: { layers: [], probes: [] },
    schemes: [scheme],
  };
  return checkFlow(site, scheme, runs);
}
