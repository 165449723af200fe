/**
 * Digs in the terrain of Davis (1973) against columns of earth added up one by one. The error
 * bound of the columns is measured: see columns.ts.
 */
import { describe, expect, it } from "vitest";
import type { Site } from "../../src/site/index.js";
import { davisPoints } from "../fixtures/davis.js";
import { apart, dug, pad, pipe, run, siteOf, tank, total, trench } from "../fixtures/site.js";
import {
  COLUMN_TOLERANCE,
  earthOf,
  integrateColumns,
  type ColumnSums,
  type Earth,
  type Probe,
  type Window,
} from "./columns.js";
import {
  boxCorners,
  embankmentChange,
  holeChange,
  hollowOver,
  trenchChange,
  trenchParts,
} from "./shapes.js";

const LAYERS = ["topsoil", "clay", "weathered-rock", "limestone"];
/** Four probes; the terrain's edge lies outside their hull. */
const PROBES: Probe[] = [
  [20, 18, 0.3, 1.1, 0.8],
  [78, 15, 0.15, 0.4, 1.6],
  [70, 71, 0.4, 2.1, 0.1],
  [28, 80, 0.25, 0, 1.2],
];
const LEDGER = 1e-11;

interface Terrain {
  earth: Earth;
  site: (works: Site["schemes"][number]["works"]) => Site;
}

function terrain(heights: number): Terrain {
  const points = davisPoints(heights);
  const earth = earthOf(
    points.map(({ x, y, z }) => [x, y, z]),
    LAYERS.length,
    PROBES,
  );
  return { earth, site: (works) => siteOf({ points, layers: LAYERS, probes: PROBES, works }) };
}

const steep = terrain(1);
const half = terrain(0.5);
const gentle = terrain(0.25);

function expectNear(got: number, wanted: number, size: number, bound: number): void {
  const off = Math.abs(got - wanted);
  expect(off).toBeLessThan(bound + COLUMN_TOLERANCE);
  expect(off / size).toBeLessThan(1e-6);
}

function expectCut(cut: Readonly<Record<string, number>>, { sums, bound }: ColumnSums): void {
  const size = total(cut);
  expect(size).toBeGreaterThan(1);
  LAYERS.forEach((material, i) => expectNear(cut[material] ?? 0, sums[i]!, size, bound));
}

function around(places: readonly (readonly [number, number])[], reach: number): Window {
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  return [
    Math.min(...xs) - reach,
    Math.min(...ys) - reach,
    Math.max(...xs) + reach,
    Math.max(...ys) + reach,
  ];
}

describe("a tank hole in Davis's terrain", () => {
  it.each([
    [0, [41, 47], 34, 236, steep, 4],
    [0.25, [41, 47], 34, 236, steep, 12],
    [0.75, [41, 47], 34, 223, half, 30],
    [0, [33, 56], -20, 216.6, gentle, 4],
    [1, [33, 56], -20, 216.6, gentle, 12],
  ] as const)("walls run %f at %j", (slope, at, bearing, base, { earth, site }, reach) => {
    const { work, gap } = dug(site([tank({ at: [...at], bearing, base, walls: run(slope) })]));
    const hollow = hollowOver(boxCorners(at, bearing, 3.6, 2.4), base - 0.15);
    const found = integrateColumns(earth, holeChange([hollow], slope), around([at], reach));
    expectCut(work().cut, found);
    // An area counts thin tips that hold no volume, which columns may step over.
    expect(apart(work().daylight, found.sums[LAYERS.length]!)).toBeLessThan(1e-5);
    expect(gap).toBeLessThan(LEDGER);
  });
});

/** A concave outline made of rectangles, turned about the origin and moved. */
function turned(
  rectangles: readonly (readonly [number, number, number, number])[],
  outline: readonly (readonly [number, number])[],
  degrees: number,
  [dx, dy]: readonly [number, number],
): { outline: [number, number][]; parts: [number, number][][] } {
  const angle = (degrees * Math.PI) / 180;
  const move = ([x, y]: readonly [number, number]): [number, number] => [
    dx + x * Math.cos(angle) - y * Math.sin(angle),
    dy + x * Math.sin(angle) + y * Math.cos(angle),
  ];
  const parts = rectangles.map(([w, s, e, n]) =>
    (
      [
        [w, s],
        [e, s],
        [e, n],
        [w, n],
      ] as const
    ).map(move),
  );
  return { outline: outline.map(move), parts };
}

const ELL = [
  [
    [0, 0, 12, 4],
    [0, 0, 5, 9],
  ],
  [
    [0, 0],
    [12, 0],
    [12, 4],
    [5, 4],
    [5, 9],
    [0, 9],
  ],
] as const;
const TEE = [
  [
    [-7, 5, 7, 9],
    [-2, -3, 2, 9],
  ],
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
] as const;

describe("a concave pad, half in cut and half in fill, walls run 1, sides run 2", () => {
  it.each([
    ["L", ELL, 25, [60, 42], 221.9],
    ["T", TEE, -140, [37, 66], 216.4],
  ] as const)("%s-shaped", (_, [rectangles, corners], degrees, at, top) => {
    const { earth, site } = gentle;
    const { outline, parts } = turned(rectangles, corners, degrees, at);
    const course = { depth: 0.2, material: "crushed-gravel" };
    const { work, gap } = dug(site([pad({ outline, top: top + 0.2, course })]));
    const hollows = parts.map((part) => hollowOver(part, top));
    const window = around(outline, 16);
    const cut = integrateColumns(earth, holeChange(hollows, 1), window);
    expectCut(work().cut, cut);
    const fill = integrateColumns(earth, embankmentChange(hollows, 2), window);
    expect(work().fill["native"]!).toBeGreaterThan(5);
    expectNear(work().fill["native"]!, fill.sums[0]!, work().fill["native"]!, fill.bound);
    const area = rectangles === ELL[0] ? 73 : 88;
    expect(work().fill["crushed-gravel"]!).toBeCloseTo(0.2 * area, 9);
    expect(gap).toBeLessThan(LEDGER);
  });
});

describe("a bent trench", () => {
  const path: [number, number][] = [
    [24, 46],
    [34, 40],
    [46, 44],
    [42, 54],
    [49, 61],
  ];
  const length = path.reduce((sum, [x, y], i) => {
    const [px, py] = path[Math.max(0, i - 1)]!;
    return sum + Math.hypot(x - px, y - py);
  }, 0);

  it.each([
    ["level", 0, 219, 219],
    ["level", 0.5, 219, 219],
    ["with fall", 0, 219.4, 216.9],
    ["with fall", 0.5, 219.4, 216.9],
  ] as const)("%s, walls run %f", (_, slope, start, end) => {
    const { earth, site } = gentle;
    const given = trench({
      path,
      width: 0.7,
      walls: run(slope),
      bedding: { depth: 0.12, material: "crushed-gravel" },
      zone: { above: 0.3, material: "pea-gravel" },
      pipes: [pipe({ inside: 0.15, outside: 0.16, grade: { by: "inverts", start, end } })],
    });
    const { work, gap } = dug(site([given]));
    const invert = (s: number): number => start + ((end - start) * s) / length;
    const parts = trenchParts(path, 0.7, {
      floor: (s) => invert(s) - 0.005 - 0.12,
      bedding: 0.12,
      zone: (s) => invert(s) + 0.155 + 0.3,
    });
    const found = integrateColumns(earth, trenchChange(parts, slope, 4), around(path, 4));
    expectCut(work().cut, found);
    const put = found.sums.slice(LAYERS.length);
    const { fill, displaced, daylight } = work();
    const size = total(work().cut);
    expectNear(fill["crushed-gravel"]!, put[0]!, size, found.bound);
    expectNear(fill["pea-gravel"]! + displaced, put[1]!, size, found.bound);
    expectNear(fill["native"]!, put[2]!, size, found.bound);
    expect(apart(daylight, put[3]!)).toBeLessThan(1e-5);
    expect(gap).toBeLessThan(LEDGER);
  });

  it("two pipes whose grades cross: the floor follows the lower", () => {
    const { earth, site } = gentle;
    const straight: [number, number][] = [
      [27, 54],
      [43, 62],
    ];
    const long = Math.hypot(16, 8);
    const [a, b] = [
      { start: 217.6, end: 215.4 },
      { start: 216.8, end: 215.9 },
    ];
    const { work, gap } = dug(
      site([
        trench({
          path: straight,
          walls: run(0.5),
          pipes: [
            pipe({ id: "a", grade: { by: "inverts", ...a } }),
            pipe({ id: "b", grade: { by: "inverts", ...b } }),
          ],
        }),
      ]),
    );
    // The same as a trench for each pipe, both dug.
    const parts = [a, b].flatMap(({ start, end }) => {
      const floor = (s: number): number => start + ((end - start) * s) / long - 0.105;
      return trenchParts(straight, 0.6, { floor, bedding: 0.1, zone: floor });
    });
    const found = integrateColumns(earth, trenchChange(parts, 0.5, 3), around(straight, 3));
    expectCut(work().cut, found);
    const size = total(work().cut);
    expectNear(work().fill["crushed-gravel"]!, found.sums[LAYERS.length]!, size, found.bound);
    expect(gap).toBeLessThan(LEDGER);
  });
});
