/**
 * Digs in the terrain of Davis (1973) against the general-purpose solid kernel manifold-3d:
 * ground and hole as solids, intersected. Layers are told apart by cutting the same hole out of
 * the ground below each layer's top. The kernel works in double precision once its meshes are
 * read; its vertices are merged within a tolerance, so agreement is asked for to 1 part in 10⁹.
 */
import { describe, expect, it } from "vitest";
import { davisPoints } from "../fixtures/davis.js";
import {
  apart,
  dug,
  pad,
  pipe,
  run,
  siteOf,
  tank,
  total,
  trench,
  type Spot,
} from "../fixtures/site.js";
import { boxCorners } from "./shapes.js";
import { groundSolid, holeSolid, hullSolid, trenchSolids, unionOf } from "./kernel.js";

const LAYERS = ["topsoil", "clay", "limestone"];
/** Three probes far out: each layer's top is then one plane less than the ground over the survey. */
const PROBES: [number, number, number, number][] = [
  [-200, -150, 0.9, 2.2],
  [300, -180, 0.2, 0.6],
  [40, 400, 0.3, 1.9],
];
const SHIFT: [number, number, number] = [48, 47, 218];
const PRECISION = 1e-9;

const points = davisPoints(0.25).map(({ id, x, y, z }) => ({
  id,
  x: x - SHIFT[0],
  y: y - SHIFT[1],
  z: z - SHIFT[2],
}));
const site = (works: Parameters<typeof siteOf>[0]["works"]): ReturnType<typeof siteOf> =>
  siteOf({ points, layers: LAYERS, probes: PROBES, works: works ?? [] });

/** Thickness of a layer at a place: the plane through the three probes (Cramer's rule). */
function thickness(layer: number, x: number, y: number): number {
  const [p, q, r] = [PROBES[0]!, PROBES[1]!, PROBES[2]!];
  const whole = (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
  const wq = ((x - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (y - p[1])) / whole;
  const wr = ((q[0] - p[0]) * (y - p[1]) - (x - p[0]) * (q[1] - p[1])) / whole;
  const at = layer + 2;
  return p[at]! + wq * (q[at]! - p[at]!) + wr * (r[at]! - p[at]!);
}

const BOTTOM = -40;
const TOP = 25;
/** Ground below the surface, below the topsoil and below the clay. */
const below = [0, 1, 2].map((layer) =>
  groundSolid(
    points.map(({ x, y, z }): Spot => {
      let height = z;
      for (let i = 0; i < layer; i++) height -= thickness(i, x, y);
      return [x, y, height];
    }),
    BOTTOM,
  ),
);

/** Volumes of a hole by material, from the kernel. */
function kernelCut(hole: ReturnType<typeof hullSolid>): number[] {
  const volumes = below.map((ground) => ground.intersect(hole).volume());
  return volumes.map((volume, i) => volume - (volumes[i + 1] ?? 0));
}

function expectCut(cut: Readonly<Record<string, number>>, volumes: readonly number[]): void {
  const size = total(cut);
  expect(size).toBeGreaterThan(1);
  LAYERS.forEach((material, i) => {
    expect(Math.abs((cut[material] ?? 0) - volumes[i]!) / size).toBeLessThan(PRECISION);
  });
}

describe("the kernel itself", () => {
  it("gives a box's volume", () => {
    const box = holeSolid(boxCorners([0, 0], 0, 2, 1), 0, 0, 3);
    expect(box.volume()).toBeCloseTo(6, 9);
  });
});

describe("a tank hole", () => {
  it.each([
    [0, 34],
    [0.75, 121],
    [1, -20],
  ])("walls run %f, bearing %d", (slope, bearing) => {
    const base = -1.9;
    const at: [number, number] = [-13.2, 8.4];
    const { work } = dug(site([tank({ at, bearing, base, walls: run(slope) })]));
    const outline = boxCorners(at, bearing, 3.6, 2.4);
    expectCut(work().cut, kernelCut(holeSolid(outline, base - 0.15, slope, TOP)));
  });

  it("bedding, tank and backfill share out the hole on a slope, the tank standing half out", () => {
    const base = -0.9;
    const at: [number, number] = [-13.2, 8.4];
    const body = { length: 3, width: 1.8, height: 2.4 };
    const { work, gap } = dug(site([tank({ at, bearing: 75, base, body, walls: run(0.5) })]));
    const hole = holeSolid(boxCorners(at, 75, 3.6, 2.4), base - 0.15, 0.5, TOP);
    const filled = below[0]!.intersect(hole);
    const beddingSpace = holeSolid(boxCorners(at, 75, 90, 90), BOTTOM, 0, base);
    const box = holeSolid(boxCorners(at, 75, 3, 1.8), base, 0, base + 2.4);
    const displaced = filled.intersect(box).volume();
    const bedding = filled.intersect(beddingSpace).volume();
    const { fill, cut } = work();
    expect(displaced).toBeLessThan(0.95 * box.volume());
    expect(apart(work().displaced, displaced)).toBeLessThan(PRECISION);
    expect(apart(fill["crushed-gravel"]!, bedding)).toBeLessThan(PRECISION);
    expect(apart(fill["native"]!, filled.volume() - displaced - bedding)).toBeLessThan(PRECISION);
    expect(apart(total(cut), total(fill) + work().displaced)).toBeLessThan(1e-12);
    expect(gap).toBeLessThan(1e-11);
  });
});

describe("a concave pad, half in cut and half in fill, walls run 1, sides run 2", () => {
  const angle = (25 * Math.PI) / 180;
  const move = ([x, y]: readonly [number, number]): [number, number] => [
    12 + x * Math.cos(angle) - y * Math.sin(angle),
    -5 + x * Math.sin(angle) + y * Math.cos(angle),
  ];
  const rectangle = (w: number, s: number, e: number, n: number): [number, number][] =>
    (
      [
        [w, s],
        [e, s],
        [e, n],
        [w, n],
      ] as const
    ).map(move);

  it.each([
    [
      "L",
      [rectangle(0, 0, 12, 4), rectangle(0, 0, 5, 9)],
      [
        [0, 0],
        [12, 0],
        [12, 4],
        [5, 4],
        [5, 9],
        [0, 9],
      ],
      3.9,
    ],
    [
      "T",
      [rectangle(-7, 5, 7, 9), rectangle(-2, -3, 2, 9)],
      [
        [-7, 5],
        [-2, 5],
        [-2, -3],
        [2, -3],
        [2, 5],
        [7, 5],
        [7, 9],
        [-7, 9],
      ],
      3.6,
    ],
  ] as const)("%s-shaped", (_, parts, corners, top) => {
    const outline = corners.map(move);
    const { work, gap } = dug(site([pad({ outline, top })]));
    expectCut(work().cut, kernelCut(unionOf(parts.map((part) => holeSolid(part, top, 1, TOP)))));
    // The embankment: a hole upside down, less the ground.
    const bank = unionOf(parts.map((part) => holeSolid(part, -top, 2, -BOTTOM).mirror([0, 0, 1])));
    const fill = bank.subtract(below[0]!).intersect(hullOfSurvey()).volume();
    expect(fill).toBeGreaterThan(5);
    expect(apart(work().fill["native"]!, fill)).toBeLessThan(PRECISION);
    expect(gap).toBeLessThan(1e-11);
  });

  /** Everything above the survey's bottom within its hull: a fill has no ground beyond it. */
  function hullOfSurvey(): ReturnType<typeof hullSolid> {
    return hullSolid(
      points.flatMap(({ x, y }): [number, number, number][] => [
        [x, y, BOTTOM],
        [x, y, TOP],
      ]),
    );
  }
});

describe("a bent trench of four legs, one bend past a right angle", () => {
  const path: [number, number][] = [
    [-24, -1],
    [-14, -7],
    [-2, -3],
    [-6, 7],
    [1, 14],
  ];
  const length = path.reduce((sum, [x, y], i) => {
    const [px, py] = path[Math.max(0, i - 1)]!;
    return sum + Math.hypot(x - px, y - py);
  }, 0);

  it.each([
    ["level", 0, 0.6, 0.6],
    ["level", 0.5, 0.6, 0.6],
    ["with fall", 0, 1.4, -1.9],
    ["with fall", 0.5, 1.4, -1.9],
  ] as const)("%s, walls run %f", (_, slope, start, end) => {
    const grade = { by: "inverts", start, end } as const;
    const { work, gap } = dug(
      site([trench({ path, width: 0.7, walls: run(slope), pipes: [pipe({ grade })] })]),
    );
    const floor = (s: number): number => start + ((end - start) * s) / length - 0.105;
    expectCut(work().cut, kernelCut(unionOf(trenchSolids(path, 0.7, slope, TOP, floor))));
    expect(gap).toBeLessThan(1e-11);
  });
});
