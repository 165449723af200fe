/** Whole triangulations on good and bad input, and edges followed through them. */
import { describe, expect, it } from "vitest";
import { hilbertKey, orderOf } from "./hilbert.js";
import { BLOCK_SIZE, blocksIn, trianglesIn } from "./blocks.js";
import { packTin, unpackTin } from "./packed.js";
import { turnOf } from "./sides.js";
import { BuildCancelled, buildTin, elevationAt, triangleAt, type Tin } from "./tin.js";

type Place = readonly [number, number];

/** A small seeded generator (mulberry32), 0 up to 1. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function surveyOf(places: readonly Place[]): Parameters<typeof buildTin>[0] {
  return { points: places.map(([x, y], i) => ({ id: `p${i}`, x, y, z: (x + 2 * y) / 10 })) };
}

function tinOf(survey: Parameters<typeof buildTin>[0]): Tin {
  const built = buildTin(survey);
  if ("problem" in built) throw new Error(built.problem.text);
  return built.tin;
}

function randomPlaces(seed: number, count: number, size = 100): Place[] {
  const random = seeded(seed);
  return Array.from({ length: count }, (): Place => [size * random(), size * random()]);
}

function grid(side: number, place: (i: number, j: number) => Place): Place[] {
  return Array.from({ length: side * side }, (_, n) => place(n % side, Math.floor(n / side)));
}

/** What is wrong with a Tin as a tiling, in words; "" when nothing is. */
function faultOf(tin: Tin): string {
  const { x, y, triangles, twins, hull } = tin;
  let [area, open] = [0, 0];
  const used = new Set<number>();
  for (let side = 0; side < triangles.length; side++) {
    used.add(triangles[side]!);
    const next = (s: number): number => triangles[s - (s % 3) + ((s + 1) % 3)]!;
    const twin = twins[side]!;
    if (twin < 0) open++;
    else if (twins[twin] !== side || next(twin) !== triangles[side]) return `twin of ${side}`;
    if (side % 3 !== 0) continue;
    const turn = turnOf(tin, triangles[side]!, triangles[side + 1]!, triangles[side + 2]!);
    if (turn <= 0) return `triangle ${side / 3} has area ${turn / 2}`;
    area += turn / 2;
  }
  if (used.size !== x.length) return `${x.length - used.size} vertices are in no triangle`;
  if (open !== hull.length) return `${open} sides have no twin, the hull has ${hull.length}`;
  let outline = 0;
  hull.forEach((v, i) => {
    const w = hull[(i + 1) % hull.length]!;
    outline += (x[v]! * y[w]! - x[w]! * y[v]!) / 2;
  });
  return Math.abs(outline - area) <= 1e-9 * area ? "" : `covers ${area}, hull ${outline}`;
}

describe("the triangulated ground is a whole tiling", () => {
  const turned = (i: number, j: number): Place => [
    i * Math.cos(0.3) - j * Math.sin(0.3),
    i * Math.sin(0.3) + j * Math.cos(0.3),
  ];
  const feet = (i: number, j: number): Place => [
    (1234567.1 + 10 * i) * 0.3048,
    (543210.3 + 10 * j) * 0.3048,
  ];
  it.each<[string, Place[]]>([
    ["random places", randomPlaces(1, 3000)],
    ["an exact grid, 300 × 300 (all cocircular)", grid(300, (i, j) => [i, j])],
    ["a grid turned by 0.3 rad", grid(60, turned)],
    ["a grid in feet, far from the origin", grid(60, feet)],
    [
      "whole metres, many twice",
      randomPlaces(2, 400).map(([x, y]) => [Math.round(x / 8), Math.round(y / 8)]),
    ],
    [
      "points on a circle",
      Array.from({ length: 500 }, (_, i) => [
        50 * Math.cos((Math.PI * i) / 250),
        50 * Math.sin((Math.PI * i) / 250),
      ]),
    ],
    [
      "nearly in one line, so that the hull is all slivers",
      Array.from({ length: 900 }, (_, i) => [i, 3 * i + (i % 7 === 3 ? (i % 100) / 1e4 : 0)]),
    ],
    ["a strip 4 m long and 20 mm wide", randomPlaces(3, 400).map(([x, y]) => [x / 25, y / 5000])],
    ["a metre across, from a far outlier", [...randomPlaces(4, 500, 1), [1e6, 1e6]]],
  ])("%s", (_, places) => {
    expect(faultOf(tinOf(surveyOf(places)))).toBe("");
  });

  it.each([1e-3, 1e3])("scaled by %d, with as many triangles", (scale) => {
    const places = randomPlaces(7, 600);
    const { points } = surveyOf(places.map(([x, y]) => [scale * x, scale * y]));
    const tin = tinOf({ points, tolerance: 0.001 * scale });
    expect(faultOf(tin)).toBe("");
    const breaklines = [["p0", "p100", "p200"]];
    const lined = tinOf({ points, tolerance: 0.001 * scale, breaklines });
    const usual = tinOf({ ...surveyOf(places), breaklines });
    expect(faultOf(lined)).toBe("");
    expect(lined.triangles.length).toBe(usual.triangles.length);
  });

  it.each([11, 12, 13, 14, 15, 16])("with long breaklines all over, seed %d", (seed) => {
    const random = seeded(seed);
    const places = seed % 2 ? randomPlaces(seed, 300) : grid(17, turned);
    const one = (): string => `p${Math.floor(random() * places.length)}`;
    const breaklines = Array.from({ length: 12 }, () => [one(), one(), one()]);
    const survey = { ...surveyOf(places), breaklines };
    const tin = tinOf(survey);
    expect(faultOf(tin)).toBe("");
    for (const chain of breaklines) {
      expect(isFollowed(tin, chain[0]!, chain[1]!)).toBe(true);
      expect(isFollowed(tin, chain[1]!, chain[2]!)).toBe(true);
    }
  });
});

/** True when sides of triangles lead from one vertex to another within 2 mm of the straight way. */
function isFollowed(tin: Tin, from: string, to: string): boolean {
  const { x, y, triangles, ids } = tin;
  const [a, b] = [ids.indexOf(from), ids.indexOf(to)];
  const [dx, dy] = [x[b]! - x[a]!, y[b]! - y[a]!];
  const isOn = (v: number): boolean =>
    Math.abs(dx * (y[v]! - y[a]!) - dy * (x[v]! - x[a]!)) <= 0.002 * Math.hypot(dx, dy);
  const reached = new Set([a]);
  for (let size = 0; size < reached.size;) {
    size = reached.size;
    for (let t = 0; t < triangles.length; t += 3) {
      const on = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!].filter(isOn);
      if (on.some((v) => reached.has(v))) on.forEach((v) => reached.add(v));
    }
  }
  return reached.has(b);
}

describe("searching by block", () => {
  const tin = tinOf(surveyOf(randomPlaces(21, 4000)));
  it("finds the triangles that a look at every one finds", () => {
    const random = seeded(22);
    for (let i = 0; i < 200; i++) {
      const [x, y] = [100 * random() - 50, 100 * random() - 50];
      const box = [x, y, x + 20 * random(), y + 5 * random()] as const;
      const wanted: number[] = [];
      for (let t = 0; t < tin.triangles.length / 3; t++) {
        const corner = [0, 1, 2].map((k) => tin.triangles[3 * t + k]!);
        const xs = corner.map((v) => tin.x[v]!);
        const ys = corner.map((v) => tin.y[v]!);
        const isMet =
          Math.min(...xs) <= box[2] &&
          Math.max(...xs) >= box[0] &&
          Math.min(...ys) <= box[3] &&
          Math.max(...ys) >= box[1];
        if (isMet) wanted.push(t);
      }
      expect(trianglesIn(tin, box).sort((p, q) => p - q)).toEqual(wanted);
    }
  });

  it("finds the triangle of each vertex, and none beyond the hull", () => {
    for (let v = 0; v < tin.x.length; v += 7) {
      const t = triangleAt(tin, tin.x[v]!, tin.y[v]!);
      expect([...tin.triangles.subarray(3 * t, 3 * t + 3)]).toContain(v);
    }
    expect(triangleAt(tin, 60, 60)).toBe(-1);
  });

  it("meets only a few blocks in a small box: triangles that are near have near numbers", () => {
    const blocks = Math.ceil(tin.triangles.length / 3 / BLOCK_SIZE);
    expect(blocks).toBeGreaterThan(200);
    const met = blocksIn(tin, [0, 0, 2, 2]).length;
    expect(met).toBeGreaterThan(0);
    expect(met).toBeLessThan(12);
  });
});

describe("hilbertKey", () => {
  it("visits every cell of the coarsest 64 × 64 once, each next to the one before", () => {
    const places: Place[] = [];
    for (let i = 0; i < 64; i++) for (let j = 0; j < 64; j++) places.push([i, j]);
    const keys = Uint32Array.from(places, ([i, j]) => hilbertKey(i << 10, j << 10));
    const order = orderOf(keys.slice());
    for (let i = 1; i < order.length; i++) {
      const [a, b] = [places[order[i - 1]!]!, places[order[i]!]!];
      expect(Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1])).toBe(1);
      expect(keys[order[i]!]! > keys[order[i - 1]!]!).toBe(true);
    }
  });
});

describe("building in a worker", () => {
  const survey = {
    ...surveyOf(randomPlaces(31, 500)),
    breaklines: [
      ["p1", "p2"],
      ["p3", "p4"],
    ],
  };

  it("hands a Tin over by transfer and takes it up again the same", () => {
    const tin = tinOf(survey);
    const places = randomPlaces(32, 100, 90).map(([x, y]): Place => [x - 45, y - 45]);
    const heights = places.map(([x, y]) => elevationAt(tin, x, y));
    const ids = [...tin.ids];
    const { packed, transfer } = packTin(tin);
    const arrived = unpackTin(structuredClone(packed, { transfer }), survey);
    expect(tin.x.length).toBe(0);
    expect(places.map(([x, y]) => elevationAt(arrived, x, y))).toEqual(heights);
    expect(heights.filter((z) => z !== null).length).toBeGreaterThan(50);
    expect(arrived.ids).toEqual(ids);
    expect(faultOf(arrived)).toBe("");
  });

  it("will not name a Tin after a survey that it was not built from", () => {
    const { packed } = packTin(tinOf(survey));
    const other = { points: survey.points.slice(0, 10) };
    expect(() => unpackTin(packed, other)).toThrow("expected the survey of the Tin");
  });

  it("tells how far it has come, and stops when it is told to", () => {
    const told: [number, string][] = [];
    buildTin(survey, (share, step) => told.push([share, step]));
    expect(told.map(([, step]) => step)).toEqual([
      "welding",
      "breaklines",
      "triangulating",
      "indexing",
      "indexing",
    ]);
    const shares = told.map(([share]) => share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect([shares[0], shares[shares.length - 1]]).toEqual([0, 1]);
    const stop = (): never => {
      throw new BuildCancelled();
    };
    expect(() => buildTin(survey, stop)).toThrow(BuildCancelled);
  });
});
