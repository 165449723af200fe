/** The triangulated ground and the probes against plain look-ups over every triangle. */
import { describe, expect, it } from "vitest";
import {
  baseGround,
  buildTin,
  elevationAt,
  LayeredGround,
  cellAt,
  valueAt,
  type Tin,
} from "../../src/ground/index.js";
import { davisPoints } from "../fixtures/davis.js";
import { groundOf, siteOf, type Spot } from "../fixtures/site.js";
import { seeded } from "../fixtures/seeded.js";
import { facets, heightOn, thicknessRule, type Probe } from "./columns.js";

type Survey = Parameters<typeof buildTin>[0];

function tinOf(survey: Survey): Tin {
  const built = buildTin(survey);
  if ("problem" in built) throw new Error(built.problem.text);
  return built.tin;
}

function numbered(spots: readonly Spot[]): Survey["points"] {
  return spots.map(([x, y, z], i) => ({ id: `p${i}`, x, y, z }));
}

/** True when an edge between two survey ids is an edge of some triangle. */
function hasEdge(tin: Tin, from: string, to: string): boolean {
  const [a, b] = [tin.ids.indexOf(from), tin.ids.indexOf(to)];
  for (let t = 0; t < tin.triangles.length; t += 3) {
    const corners = [0, 1, 2].map((k) => tin.triangles[t + k]!);
    if (corners.includes(a) && corners.includes(b)) return true;
  }
  return false;
}

/** Twice the area of all triangles; each must be positive. */
function tiledArea(tin: Tin): number {
  let sum = 0;
  for (let t = 0; t < tin.triangles.length; t += 3) {
    const [a, b, c] = [tin.triangles[t]!, tin.triangles[t + 1]!, tin.triangles[t + 2]!];
    const twice =
      (tin.x[b]! - tin.x[a]!) * (tin.y[c]! - tin.y[a]!) -
      (tin.x[c]! - tin.x[a]!) * (tin.y[b]! - tin.y[a]!);
    expect(twice).toBeGreaterThan(0);
    sum += twice;
  }
  return sum / 2;
}

function hullArea(tin: Tin): number {
  let twice = 0;
  tin.hull.forEach((v, i) => {
    const w = tin.hull[(i + 1) % tin.hull.length]!;
    twice += tin.x[v]! * tin.y[w]! - tin.x[w]! * tin.y[v]!;
  });
  return twice / 2;
}

function randomSpots(seed: number, count: number): Spot[] {
  const { between } = seeded(seed);
  return Array.from({ length: count }, (): Spot => [
    between(-50, 50),
    between(-50, 50),
    between(-5, 5),
  ]);
}

describe("elevations", () => {
  it.each([
    ["Davis (1973)", davisPoints().map(({ x, y, z }): Spot => [x, y, z])],
    ["seed 11", randomSpots(11, 200)],
    ["seed 12", randomSpots(12, 7)],
  ])("%s: as a look-up over every triangle", (_, spots) => {
    const tin = tinOf({ points: numbered(spots) });
    const all = facets(spots);
    const { between } = seeded(spots.length);
    const xs = spots.map(([x]) => x);
    const ys = spots.map(([, y]) => y);
    let inside = 0;
    for (let i = 0; i < 2000; i++) {
      const x = between(Math.min(...xs) - 5, Math.max(...xs) + 5);
      const y = between(Math.min(...ys) - 5, Math.max(...ys) + 5);
      const got = elevationAt(tin, x - tin.origin[0], y - tin.origin[1]);
      const wanted = heightOn(all, x, y);
      expect(got === null).toBe(wanted === null);
      if (got === null || wanted === null) continue;
      inside++;
      expect(got + tin.origin[2]).toBeCloseTo(wanted, 8);
    }
    expect(inside).toBeGreaterThan(500);
    expect(tiledArea(tin)).toBeCloseTo(hullArea(tin), 6);
  });

  it("no survey point lies within the circle of a triangle (Delaunay), seed 13", () => {
    const tin = tinOf({ points: numbered(randomSpots(13, 60)) });
    for (let t = 0; t < tin.triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => tin.triangles[t + k]!) as [number, number, number];
      for (let d = 0; d < tin.x.length; d++) {
        if (d === a || d === b || d === c) continue;
        expect(inCircle(tin, a, b, c, d)).toBeLessThan(1e-6);
      }
    }
  });
});

function inCircle(tin: Tin, a: number, b: number, c: number, d: number): number {
  const row = (v: number): [number, number, number] => {
    const [x, y] = [tin.x[v]! - tin.x[d]!, tin.y[v]! - tin.y[d]!];
    return [x, y, x * x + y * y];
  };
  const [p, q, r] = [row(a), row(b), row(c)];
  return (
    p[0] * (q[1] * r[2] - q[2] * r[1]) -
    p[1] * (q[0] * r[2] - q[2] * r[0]) +
    p[2] * (q[0] * r[1] - q[1] * r[0])
  );
}

describe("breaklines", () => {
  const square: Spot[] = [
    [0, 0, 0],
    [10, 0, 1],
    [10, 10, 2],
    [0, 10, 3],
    [4, 4, 9],
  ];

  it.each([21, 22, 23, 24, 25])("random chains are followed, seed %d", (seed) => {
    const spots = randomSpots(seed, 80);
    const { whole } = seeded(seed);
    const chains = Array.from({ length: 6 }, (): [string, string] => [
      `p${whole(0, 79)}`,
      `p${whole(0, 79)}`,
    ]);
    const tin = tinOf({ points: numbered(spots), breaklines: chains });
    expect(tiledArea(tin)).toBeCloseTo(hullArea(tin), 6);
    for (const [from, to] of chains) {
      if (from === to) continue;
      // The line from end to end must never leave triangle edges: at its middle pieces the
      // elevation is that of an edge, so walking from vertex to vertex along it must arrive.
      expect(walkAlong(tin, tin.ids.indexOf(from), tin.ids.indexOf(to))).toBe(true);
    }
  });

  it("where two cross, a vertex lies at the mean of their heights, and a finding says so", () => {
    const built = buildTin({
      points: numbered(square.slice(0, 4)),
      breaklines: [
        ["p0", "p2"],
        ["p1", "p3"],
      ],
    });
    if ("problem" in built) throw new Error(built.problem.text);
    const { tin, findings } = built;
    expect(tin.x.length).toBe(5);
    const [ox, oy, oz] = tin.origin;
    expect((elevationAt(tin, 5 - ox, 5 - oy) ?? NaN) + oz).toBeCloseTo(1.5, 12);
    expect(findings.map((f) => [f.level, f.code])).toEqual([
      ["caution", "survey.breaklines-cross"],
    ]);
    for (const id of ["p0", "p1", "p2", "p3"]) expect(hasEdge(tin, id, "")).toBe(true);
  });

  it.each([3, 4, 5, 6])(
    "%d through one place that is no survey point share one vertex",
    (count) => {
      const ring = Array.from({ length: 2 * count }, (_, i): Spot => {
        const angle = (Math.PI * i) / count;
        return [10 * Math.cos(angle), 10 * Math.sin(angle), i % 2];
      });
      const breaklines = Array.from({ length: count }, (_, i) => [`p${i}`, `p${i + count}`]);
      const tin = tinOf({ points: numbered(ring), breaklines });
      expect(tin.x.length).toBe(2 * count + 1);
      expect(tiledArea(tin)).toBeCloseTo(hullArea(tin), 9);
      for (let i = 0; i < 2 * count; i++) expect(hasEdge(tin, `p${i}`, "")).toBe(true);
    },
  );

  it("one through another point is split there", () => {
    const tin = tinOf({ points: numbered(square), breaklines: [["p0", "p2"]] });
    expect(hasEdge(tin, "p0", "p4")).toBe(true);
    expect(hasEdge(tin, "p4", "p2")).toBe(true);
    expect(hasEdge(tin, "p0", "p2")).toBe(false);
  });
});

/** Walks triangle edges that lie on the line between two vertices, from one to the other. */
function walkAlong(tin: Tin, from: number, to: number): boolean {
  const onLine = (v: number): boolean => {
    const [dx, dy] = [tin.x[to]! - tin.x[from]!, tin.y[to]! - tin.y[from]!];
    const off = dx * (tin.y[v]! - tin.y[from]!) - dy * (tin.x[v]! - tin.x[from]!);
    return Math.abs(off) / Math.hypot(dx, dy) < 2e-3;
  };
  const reached = new Set([from]);
  for (let size = 0; size < reached.size;) {
    size = reached.size;
    for (let t = 0; t < tin.triangles.length; t += 3) {
      const corners = [0, 1, 2].map((k) => tin.triangles[t + k]!).filter(onLine);
      if (corners.some((v) => reached.has(v))) corners.forEach((v) => reached.add(v));
    }
  }
  return reached.has(to);
}

describe("surveys with something wrong", () => {
  it("points within a millimetre are one, and findings tell equal heights from unequal", () => {
    const built = buildTin({
      points: numbered([
        [0, 0, 0],
        [10, 0, 0],
        [0, 10, 0],
        [10, 0.0005, 0.01],
        [0.0004, 10, 0.5],
        [10.002, 0, 0],
      ]),
    });
    if ("problem" in built) throw new Error(built.problem.text);
    expect(built.tin.x.length).toBe(4);
    expect(built.findings.map((f) => [f.where, f.level, f.code])).toEqual([
      ["p3", "note", "survey.welded"],
      ["p4", "caution", "survey.two-heights"],
    ]);
  });

  it.each([
    ["too-few-points", [0, 0], [5, 5], [0, 0]],
    ["in-line", [0, 0], [5, 5], [10, 10]],
    ["in-line", [0, 0], [5, 5.0004], [10, 10]],
    ["not-a-number", [0, 0], [5, NaN], [0, 10]],
    ["absurd-spread", [0, 0], [5e7, 5], [0, 10]],
  ] as const)("%s: %j, %j, %j", (code, a, b, c) => {
    const built = buildTin({ points: numbered([a, b, c].map(([x, y]): Spot => [x, y, 1])) });
    expect("problem" in built ? built.problem.code : "none").toBe(code);
  });

  it("a line of points far from the origin is still in line", () => {
    const points = numbered([0, 1, 2, 3].map((i): Spot => [5e5 + 3 * i, 6e6 + 7 * i, i]));
    const built = buildTin({ points });
    expect("problem" in built ? built.problem.code : "none").toBe("in-line");
    const whole = baseGround({ ...siteOf({ points: randomSpots(1, 5) }), survey: { points } });
    expect(whole.ok).toBe(false);
  });
});

describe("layer thickness from probes, against the contract's rule in its own words", () => {
  const corners: Spot[] = [
    [-60, -60, 0],
    [60, -60, 7],
    [60, 60, -3],
    [-60, 60, 2],
  ];
  const probes = (seed: number, count: number): Probe[] => {
    const { between } = seeded(seed);
    return Array.from({ length: count }, (): Probe => [
      between(-30, 30),
      between(-30, 30),
      between(0, 1),
      between(0, 3),
    ]);
  };
  const inLine: Probe[] = [
    [10, 5, 0.4, 1],
    [-20, -10, 0.1, 2],
    [30, 15, 0.9, 0],
    [-2, -1, 0.2, 0.3],
  ];
  it.each<[string, Probe[]]>([
    ["no probe", []],
    ["one probe", probes(1, 1)],
    ["two probes", probes(2, 2)],
    ["four in line", inLine],
    ["three probes", probes(3, 3)],
    ["five probes", probes(5, 5)],
    ["twelve probes", probes(12, 12)],
  ])("%s", (_, given) => {
    const site = siteOf({
      points: corners,
      layers: ["topsoil", "clay", "limestone"],
      probes: given,
    });
    const base = groundOf(site);
    const ground = new LayeredGround(base);
    const rule = thicknessRule(given, 3);
    const { between } = seeded(given.length);
    const [ox, oy] = base.tin.origin;
    let seen = 0;
    for (let i = 0; i < 3000; i++) {
      const [x, y] = [between(-59, 59), between(-59, 59)];
      const cell = cellAt(ground, x - ox, y - oy);
      if (!cell) continue;
      seen++;
      const heights = cell.tops.map((top) => valueAt(cell, top, x - ox, y - oy));
      const thick = rule(x, y);
      expect(heights[2]! - heights[1]!).toBeCloseTo(thick[0]!, 7);
      expect(heights[1]! - heights[0]!).toBeCloseTo(thick[1]!, 7);
    }
    expect(seen).toBeGreaterThan(2990);
  });
});
