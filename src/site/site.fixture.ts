/** Small sites for unit tests: a plain piece of ground on which a test places its works. */
import type { Site, Work } from "./schema.js";

/** What a test says about its ground; everything else is plain. Metres. */
export interface PlainSite {
  /** Height of the ground at x, y. */
  height?: (x: number, y: number) => number;
  /** Half the side of the square survey. */
  half?: number;
  works?: Work[];
  /** Thickness of topsoil over clay over shelf rock, the same everywhere; none: all clay. */
  layers?: readonly [topsoil: number, clay: number];
}

/** A square survey of 5 × 5 points around the origin, units metric, with one scheme "plan". */
export function plainSite({ height = () => 100, half = 20, works = [], layers }: PlainSite): Site {
  const steps = [-1, -0.5, 0, 0.5, 1].map((share) => share * half);
  const points = steps.flatMap((x, i) =>
    steps.map((y, j) => ({ id: `p${i}${j}`, x, y, z: height(x, y) })),
  );
  const clay = { id: "clay", name: "Clay", material: "clay" };
  const ground = layers
    ? {
        layers: [
          { id: "top", name: "Topsoil", material: "topsoil" },
          clay,
          { id: "rock", name: "Shelf rock", material: "shelf-rock" },
        ],
        probes: [{ id: "t1", x: 0, y: 0, thickness: [...layers] }],
      }
    : { layers: [clay], probes: [] };
  return {
    format: "bankyard-site",
    version: 1,
    name: "Plain",
    units: "metric",
    currency: "EUR",
    survey: { points },
    ground,
    schemes: [{ id: "plan", name: "Plan", works }],
  };
}

/** A tank of 3 × 2 × 1.5 m at the origin, long side north, vertical walls, no overdig. */
export function plainTank(change: Partial<Extract<Work, { kind: "tank" }>> = {}): Work {
  return {
    kind: "tank",
    id: "tank",
    name: "Tank",
    at: [0, 0],
    bearing: 0,
    body: { length: 3, width: 2, height: 1.5 },
    base: 98,
    overdig: 0,
    bedding: { depth: 0.2, material: "pea-gravel" },
    walls: { by: "run", run: 0 },
    backfill: "native",
    ...change,
  };
}

/** A trench 0.6 m wide from (−5, 0) to (5, 0) with one level 0.11 m pipe, vertical walls. */
export function plainTrench(change: Partial<Extract<Work, { kind: "trench" }>> = {}): Work {
  return {
    kind: "trench",
    id: "trench",
    name: "Trench",
    path: [
      [-5, 0],
      [5, 0],
    ],
    width: 0.6,
    walls: { by: "run", run: 0 },
    bedding: { depth: 0.1, material: "pea-gravel" },
    zone: { above: 0.15, material: "pea-gravel" },
    backfill: "native",
    pipes: [
      {
        id: "pipe",
        name: "Pipe",
        service: "gravity",
        inside: 0.1,
        outside: 0.11,
        material: "PVC",
        grade: { by: "inverts", start: 99, end: 99 },
      },
    ],
    ...change,
  };
}

/** A pad of 6 × 4 m around the origin at the height of the plain ground. */
export function plainPad(change: Partial<Extract<Work, { kind: "pad" }>> = {}): Work {
  return {
    kind: "pad",
    id: "pad",
    name: "Pad",
    outline: [
      [-3, -2],
      [3, -2],
      [3, 2],
      [-3, 2],
    ],
    top: 100,
    walls: { by: "run", run: 0 },
    fillRun: 0,
    fill: "native",
    ...change,
  };
}

/** A strip of the whole top layer over a square of 8 × 8 m around the origin; not put back. */
export function plainStrip(change: Partial<Extract<Work, { kind: "strip" }>> = {}): Work {
  const outline: [number, number][] = [
    [-4, -4],
    [4, -4],
    [4, 4],
    [-4, 4],
  ];
  return {
    kind: "strip",
    id: "strip",
    name: "Strip",
    area: { by: "outline", outline },
    ...change,
  };
}
