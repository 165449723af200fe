/**
 * Brute force with a bound that is proved, not measured: the midpoint rule on squares of side h.
 *
 * What is added up, f(x, y), is the depth of one layer that is cut. It is continuous (the walls here
 * slope) and straight on the pieces between triangle edges, mitres, daylight and the layers'
 * crossings with the floor and walls. On a square whose four corners lie on one piece f is straight,
 * for every piece is convex, and the midpoint rule is exact. On any other |f − f(middle)| ≤ G·r at
 * distance r from the middle, where G is the steepest that f can be, and the mean of r over a square
 * is h·(√2 + ln(1 + √2))/6 ≈ 0.3826·h. So, with N squares that more than one piece meets,
 *
 *     |error| ≤ 0.3826 · G · N · h³          (plus rounding)
 */
import { describe, expect, it } from "vitest";
import { davisPoints } from "../fixtures/davis.js";
import { dug, pad, run, siteOf, total, type Spot } from "../fixtures/site.js";
import { facets } from "./columns.js";
import { boxCorners, hollowOver, type Hollow } from "./shapes.js";

const MEAN_DISTANCE = (Math.SQRT2 + Math.log(1 + Math.SQRT2)) / 6;

type Probe = [x: number, y: number, topsoil: number, clay: number];

const LAYERS = ["topsoil", "clay", "limestone"];
/** Three probes far out, so that over the survey each thickness is one plane. */
const PROBES: [Probe, Probe, Probe] = [
  [-200, -150, 0.9, 2.2],
  [300, -180, 0.2, 0.6],
  [40, 400, 0.3, 1.9],
];
const spots = davisPoints(0.25).map(({ x, y, z }): Spot => [x, y, z]);

interface Flat {
  a: number;
  b: number;
  c: number;
}

function through(p: Spot, q: Spot, r: Spot): Flat {
  const [ux, uy, uz] = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
  const [vx, vy, vz] = [r[0] - p[0], r[1] - p[1], r[2] - p[2]];
  const area = ux * vy - uy * vx;
  const [a, b] = [(uz * vy - vz * uy) / area, (vz * ux - uz * vx) / area];
  return { a, b, c: p[2] - a * p[0] - b * p[1] };
}

const at = ({ a, b, c }: Flat, x: number, y: number): number => a * x + b * y + c;
const THICKNESS = [2, 3].map((k) => {
  const found = (probe: Probe): Spot => [probe[0], probe[1], probe[k]!];
  const [p, q, r] = PROBES;
  return through(found(p), found(q), found(r));
});
/** Planes of the tops of the layers in each triangle; a hair along the hull has none. */
const GROUND = facets(spots)
  .filter(({ corners: [p, q, r] }) => {
    return Math.abs((q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1])) > 1e-6;
  })
  .map(({ corners }) => {
    const tops = [through(...corners)];
    for (const { a, b, c } of THICKNESS) {
      const above = tops[tops.length - 1]!;
      tops.push({ a: above.a - a, b: above.b - b, c: above.c - c });
    }
    const sides = corners.map((p, i) => {
      const q = corners[(i + 1) % 3]!;
      const r = corners[(i + 2) % 3]!;
      const [a, b] = [-(q[1] - p[1]), q[0] - p[0]];
      const c = -a * p[0] - b * p[1];
      const sign = Math.sign(a * r[0] + b * r[1] + c);
      return { a: sign * a, b: sign * b, c: sign * c };
    });
    return { tops, sides };
  });

function triangleAt(x: number, y: number): number {
  return GROUND.findIndex(({ sides }) => sides.every((side) => at(side, x, y) >= 0));
}

/** The floor and wall planes of a level hole; the dug surface is the highest of them. */
function planesOf({ floor, sides }: Hollow, slope: number): Flat[] {
  return [
    floor,
    ...sides.map(({ nx, ny, d }) => ({ a: nx / slope, b: ny / slope, c: floor.c - d / slope })),
  ];
}

interface Look {
  /** Names the piece: triangle, plane of the hole, and where each layer stands against it. */
  piece: string;
  depths: number[];
}

function lookAt(planes: readonly Flat[], x: number, y: number): Look {
  const triangle = triangleAt(x, y);
  if (triangle < 0) throw new Error(`got ${x}, ${y} off the survey, expected a window on it`);
  let [highest, which] = [-Infinity, -1];
  planes.forEach((plane, i) => {
    const height = at(plane, x, y);
    if (height > highest) [highest, which] = [height, i];
  });
  const tops = GROUND[triangle]!.tops.map((top) => at(top, x, y));
  const above = tops.map((top) => Math.max(0, top - highest));
  const piece = `${triangle},${which},${tops.filter((top) => top > highest).length}`;
  return { piece, depths: above.map((depth, i) => depth - (above[i + 1] ?? 0)) };
}

interface Summed {
  volumes: number[];
  bound: number;
}

function midpointSum(
  planes: readonly Flat[],
  [west, south, east, north]: readonly [number, number, number, number],
  h: number,
): Summed {
  const [nx, ny] = [Math.ceil((east - west) / h), Math.ceil((north - south) / h)];
  const volumes = LAYERS.map(() => 0);
  let mixed = 0;
  let below = Array.from({ length: nx + 1 }, (_, i) => lookAt(planes, west + i * h, south).piece);
  for (let j = 0; j < ny; j++) {
    const above = Array.from(
      { length: nx + 1 },
      (_, i) => lookAt(planes, west + i * h, south + (j + 1) * h).piece,
    );
    for (let i = 0; i < nx; i++) {
      const { depths } = lookAt(planes, west + (i + 0.5) * h, south + (j + 0.5) * h);
      depths.forEach((depth, k) => (volumes[k] = volumes[k]! + depth * h * h));
      const piece = below[i]!;
      if (below[i + 1] !== piece || above[i] !== piece || above[i + 1] !== piece) mixed++;
    }
    below = above;
  }
  const steepest = Math.max(...planes.map(({ a, b }) => Math.hypot(a, b)));
  const hills = Math.max(...GROUND.flatMap(({ tops }) => tops.map(({ a, b }) => Math.hypot(a, b))));
  return { volumes, bound: MEAN_DISTANCE * (steepest + hills) * mixed * h ** 3 };
}

describe("a hole with sloped walls in Davis's terrain, by layer, within the proved bound", () => {
  it.each([
    ["tank, walls run 1", 1, boxCorners([33, 56], -20, 3.6, 2.4), 216.45, [24, 47, 42, 65]],
    ["tank, walls run 0.5", 0.5, boxCorners([33, 56], 34, 3.6, 2.4), 216.45, [26, 49, 40, 63]],
    ["five-sided pit, walls run 0.75", 0.75, pentagon([62, 45], 4), 220.3, [50, 33, 74, 57]],
  ] as const)("%s", (_, slope, outline, floor, window) => {
    const corners = outline.map(([x, y]): [number, number] => [x, y]);
    const works = [pad({ outline: corners, top: floor, walls: run(slope), fillRun: 0 })];
    const points = davisPoints(0.25);
    const { work } = dug(siteOf({ points, layers: LAYERS, probes: PROBES, works }));
    const planes = planesOf(hollowOver(outline, floor), slope);
    const { volumes, bound } = midpointSum(planes, window, 0.03);
    const size = total(work().cut);
    expect(size).toBeGreaterThan(20);
    expect(bound / size).toBeLessThan(0.01);
    LAYERS.forEach((material, i) => {
      expect(Math.abs((work().cut[material] ?? 0) - volumes[i]!), material).toBeLessThan(bound);
    });
    // Errors of the squares mostly cancel; a true mistake would not hide in the bound either.
    expect(Math.abs(size - volumes.reduce((sum, v) => sum + v, 0)) / size).toBeLessThan(1e-4);
  });

  function pentagon([x, y]: readonly [number, number], radius: number): [number, number][] {
    return Array.from({ length: 5 }, (_, i): [number, number] => [
      x + radius * Math.cos((2 * Math.PI * i) / 5),
      y + radius * Math.sin((2 * Math.PI * i) / 5),
    ]);
  }
});
