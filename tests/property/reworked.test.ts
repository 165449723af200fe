/** The same job put otherwise: works split in two, before and after swapped, in another order. */
import { describe, expect, it } from "vitest";
import { estimate } from "../../src/estimate/index.js";
import { digScheme, digToStage } from "../../src/dig/index.js";
import type { Pad, Site, Trench, Walls, Work } from "../../src/site/index.js";
import { seeded } from "../fixtures/seeded.js";
import {
  apart,
  dug,
  groundOf,
  pad,
  pipe,
  planePoints,
  run,
  SCHEME,
  siteOf,
  tank,
  total,
  trench,
  type Dug,
  type Spot,
} from "../fixtures/site.js";
import { LAYERS, threeWorks } from "../fixtures/threeWorks.js";

const PRECISION = 1e-9;

/** Rough ground: 80 scattered points over 60 × 60 m, three layers. */
function roughGround(seed: number): { points: Spot[]; probes: [number, number, number, number][] } {
  const { between } = seeded(seed);
  const height = (x: number, y: number): number => 0.1 * x - 0.07 * y + between(-0.5, 0.5);
  const scattered = Array.from({ length: 80 }, (): Spot => {
    const [x, y] = [between(-30, 30), between(-30, 30)];
    return [x, y, height(x, y)];
  });
  const probes = Array.from({ length: 3 }, (): [number, number, number, number] => [
    between(-25, 25),
    between(-25, 25),
    between(0, 0.5),
    between(0.2, 1.5),
  ]);
  return { points: [...planePoints(0.1, -0.07, 0, 31), ...scattered], probes };
}

function expectSameWhole(one: Dug, other: Dug, what: (done: Dug) => Record<string, number>): void {
  const [a, b] = [what(one), what(other)];
  const size = Math.max(total(a), 1);
  expect(total(a)).toBeGreaterThan(0.5);
  for (const id of new Set([...Object.keys(a), ...Object.keys(b)])) {
    expect(Math.abs((a[id] ?? 0) - (b[id] ?? 0)) / size, id).toBeLessThan(PRECISION);
  }
  expect(other.gap).toBeLessThan(PRECISION);
}

/** Natural ground taken out; what an earlier half has put back and the later digs again is left out. */
function cutOf({ result }: Dug): Record<string, number> {
  return Object.fromEntries(Object.entries(result.cut).filter(([id]) => id !== "native"));
}

/** What lies there in the end: put in by all works, less what a later one took out again. */
function fillOf({ result }: Dug): Record<string, number> {
  const out: Record<string, number> = { native: -(result.cut["native"] ?? 0) };
  for (const { fill, displaced } of result.works) {
    for (const [id, volume] of Object.entries({ ...fill, pipes: displaced })) {
      out[id] = (out[id] ?? 0) + volume;
    }
  }
  return out;
}

const SLOPES: Walls[] = [run(0), run(0.5), run(1.5), { by: "benches", rise: 0.7, tread: 0.4 }];

describe("a work split in two halves", () => {
  it.each(Array.from({ length: 12 }, (_, i) => 81 + i))(
    "a pad parted across: together the same cut and fill, seed %d",
    (seed) => {
      const { between, pick } = seeded(seed);
      const angle = between(0, 6.28);
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const turned = (x: number, y: number): [number, number] => [c * x - s * y, s * x + c * y];
      const box = (west: number, east: number): [number, number][] => [
        turned(west, -3),
        turned(east, -3),
        turned(east, 3),
        turned(west, 3),
      ];
      const at = between(-4, 4);
      const walls = pick(SLOPES);
      const given: Partial<Pad> = { top: between(-0.5, 0.5), walls, fillRun: pick([0, 1, 2]) };
      const parts = { ...roughGround(seed), layers: LAYERS };
      const whole = dug(siteOf({ ...parts, works: [pad({ ...given, outline: box(-6, 6) })] }));
      const halves = [
        pad({ ...given, id: "west", outline: box(-6, at) }),
        pad({ ...given, id: "east", outline: box(at, 6) }),
      ];
      for (const works of [halves, halves.toReversed()]) {
        const split = dug(siteOf({ ...parts, works }));
        expectSameWhole(whole, split, cutOf);
        expectSameWhole(whole, split, fillOf);
      }
    },
  );

  it("an L-shaped pad parted at its inward corner", () => {
    const parts = { ...roughGround(99), layers: LAYERS };
    const given: Partial<Pad> = { top: 0.1, walls: run(1), fillRun: 1.5 };
    const whole = pad({
      ...given,
      outline: [
        [-6, -5],
        [6, -5],
        [6, -1],
        [-1, -1],
        [-1, 6],
        [-6, 6],
      ],
    });
    const box = (w: number, s: number, e: number, n: number): [number, number][] => [
      [w, s],
      [e, s],
      [e, n],
      [w, n],
    ];
    const halves = [
      pad({ ...given, id: "one", outline: box(-6, -5, 6, -1) }),
      pad({ ...given, id: "two", outline: box(-6, -5, -1, 6) }),
    ];
    const one = dug(siteOf({ ...parts, works: [whole] }));
    const other = dug(siteOf({ ...parts, works: halves }));
    expectSameWhole(one, other, cutOf);
    expectSameWhole(one, other, fillOf);
  });

  it.each(Array.from({ length: 12 }, (_, i) => 101 + i))(
    "a bent trench parted along a leg: together the same, seed %d",
    (seed) => {
      const { between, pick } = seeded(seed);
      const path: [number, number][] = [
        [-12, -3],
        [between(-2, 0), between(-8, 0)],
        [between(4, 6), between(2, 9)],
        [13, between(-5, 5)],
      ];
      const lengths = path
        .slice(1)
        .map(([x, y], i) => Math.hypot(x - path[i]![0], y - path[i]![1]));
      const leg = pick([0, 1, 2]);
      const share = between(0.3, 0.7);
      const [p, q] = [path[leg]!, path[leg + 1]!];
      const at: [number, number] = [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])];
      const before = lengths.slice(0, leg).reduce((sum, length) => sum + length, 0);
      const long = lengths.reduce((sum, length) => sum + length, 0);
      const [start, end] = [-1.4, between(-2.4, -1.5)];
      const middle = start + ((end - start) * (before + share * lengths[leg]!)) / long;
      const common: Partial<Trench> = { walls: pick(SLOPES.slice(0, 3)), width: 0.8 };
      const grade = (from: number, to: number) => ({
        by: "inverts" as const,
        start: from,
        end: to,
      });
      const whole = trench({ ...common, path, pipes: [pipe({ grade: grade(start, end) })] });
      const halves = [
        trench({
          ...common,
          id: "up",
          path: [...path.slice(0, leg + 1), at],
          pipes: [pipe({ id: "a", grade: grade(start, middle) })],
        }),
        trench({
          ...common,
          id: "down",
          path: [at, ...path.slice(leg + 1)],
          pipes: [pipe({ id: "b", grade: grade(middle, end) })],
        }),
      ];
      const parts = { ...roughGround(seed), layers: LAYERS };
      const one = dug(siteOf({ ...parts, works: [whole] }));
      for (const works of [halves, halves.toReversed()]) {
        const other = dug(siteOf({ ...parts, works }));
        expectSameWhole(one, other, cutOf);
        expectSameWhole(one, other, fillOf);
      }
    },
  );
});

describe("before and after swapped", () => {
  it.each(Array.from({ length: 16 }, (_, i) => 121 + i))(
    "the ground and a pad upside down: its cut is the fill of the other, seed %d",
    (seed) => {
      const { between, pick, whole } = seeded(seed);
      const slope = pick([0, 0.5, 1, 2]);
      const shapes: [number, number][][] = [
        [
          [-5, -4],
          [5, -4],
          [5, 4],
          [-5, 4],
        ],
        [
          [-5, -4],
          [5, -4],
          [5, 0],
          [0, 0],
          [0, 4],
          [-5, 4],
        ],
        Array.from({ length: 7 }, (_, i) => {
          const angle = (2 * Math.PI * (i + between(0, 0.7))) / 7;
          return [between(2, 6) * Math.cos(angle), between(2, 6) * Math.sin(angle)];
        }),
      ];
      const outline = shapes[whole(0, 2)]!;
      const top = between(-0.6, 0.6);
      const { points } = roughGround(seed);
      const upright = pad({ outline, top, walls: run(slope), fillRun: slope });
      const one = dug(siteOf({ points, works: [upright] }));
      const other = dug(
        siteOf({
          points: points.map(([x, y, z]): Spot => [x, y, -z]),
          works: [{ ...upright, top: -top }],
        }),
      );
      const [cut, fill] = [total(one.work().cut), total(one.work().fill)];
      expect(cut + fill).toBeGreaterThan(1);
      expect(Math.abs(cut - total(other.work().fill)) / (cut + fill)).toBeLessThan(PRECISION);
      expect(Math.abs(fill - total(other.work().cut)) / (cut + fill)).toBeLessThan(PRECISION);
    },
  );
});

describe("works that do not touch", () => {
  const parts = threeWorks();
  const reference = dug(siteOf(parts));
  it.each([
    [0, 1, 2],
    [1, 0, 2],
    [2, 1, 0],
    [2, 0, 1],
    [0, 2, 1],
    [1, 2, 0],
  ])("built in the order %d, %d, %d give the same quantities", (...order) => {
    const again = dug(siteOf({ ...parts, works: order.map((i) => parts.works[i]!) }));
    for (const work of reference.result.works) {
      const other = again.work(work.id);
      for (const [id, volume] of Object.entries(work.cut)) {
        expect(apart(volume, other.cut[id] ?? 0)).toBeLessThan(1e-12);
      }
      for (const [id, volume] of Object.entries(work.fill)) {
        expect(apart(volume, other.fill[id] ?? 0)).toBeLessThan(1e-12);
      }
      expect(other.daylight).toBeCloseTo(work.daylight, 9);
      expect(other.deepest).toBeCloseTo(work.deepest, 12);
    }
  });

  it.each(Array.from({ length: 8 }, (_, i) => 141 + i))(
    "nine pits on rough ground in any order, seed %d",
    (seed) => {
      const { between, pick, shuffled } = seeded(seed);
      const pits = Array.from({ length: 9 }, (_, i): Work => {
        const at: [number, number] = [-20 + 20 * (i % 3), -20 + 20 * Math.floor(i / 3)];
        const depth = 0.1 * at[0] - 0.07 * at[1] - between(0.5, 2.2);
        const given = { id: `w${i}`, at, base: depth, bearing: between(0, 360) };
        return tank({ ...given, walls: pick(SLOPES), overdig: pick([0, 0.5]) });
      });
      const ground = { ...roughGround(seed), layers: LAYERS };
      const one = dug(siteOf({ ...ground, works: pits }));
      const other = dug(siteOf({ ...ground, works: shuffled(pits) }));
      for (const work of one.result.works) {
        expect(total(work.cut)).toBeGreaterThan(1);
        expect(apart(total(work.cut), total(other.work(work.id).cut))).toBeLessThan(1e-11);
        expect(apart(total(work.fill), total(other.work(work.id).fill))).toBeLessThan(1e-11);
      }
    },
  );
});

describe("an answer depends on nothing but its site", () => {
  const flat = planePoints(0, 0, 0);
  const site: Site = siteOf(threeWorks());

  it("the same twice, again after another, and again from a copy", () => {
    const first = JSON.stringify(estimate(site, SCHEME));
    estimate(siteOf({ points: flat, works: [tank()] }), SCHEME);
    expect(JSON.stringify(estimate(site, SCHEME))).toBe(first);
    expect(JSON.stringify(estimate(siteOf(threeWorks()), SCHEME))).toBe(first);
  });

  it("a dug ground still reads the same after others were dug on the same survey", () => {
    const base = groundOf(site);
    const scheme = site.schemes[0]!;
    const { ground } = digScheme(site, scheme, base);
    const read = (): string =>
      JSON.stringify(ground.touchedTriangles().map((t) => [t, ground.cellsOf(t)]));
    const before = read();
    expect(before.length).toBeGreaterThan(1000);
    const deeper = scheme.works.map((work) =>
      work.kind === "tank" ? { ...work, base: work.base - 1 } : work,
    );
    const other = digToStage(site, { ...scheme, works: deeper }, base, "dug").ground;
    estimate({ ...site, schemes: [{ ...scheme, works: deeper.slice(1) }] }, SCHEME);
    expect(read()).toBe(before);
    expect(other.touchedTriangles().length).toBeGreaterThan(0);
  });
});
