// Water on a real terrain against two ways of finding it that share no code with the engine's: small
// steps to the lowest place of a circle, and hollows filled by relaxation.
import { beforeAll, describe, expect, it } from "vitest";
import { buildTin, elevationAt, type Tin } from "../../src/ground/index.js";
import { drainageWith, floodFrom, inflowOf, Tracer } from "../../src/runoff/index.js";
import type { Flood, Way, WayPoint } from "../../src/runoff/index.js";
import { present } from "../fixtures/present.js";
import { seeded } from "../fixtures/seeded.js";
import { volcano, VOLCANO_STEP } from "../fixtures/volcano.js";

type Place = readonly [number, number];

function tinOf(heights: readonly (readonly number[])[]): Tin {
  const points = heights.flatMap((row, i) =>
    row.map((z, j) => ({ id: `${i}-${j}`, x: VOLCANO_STEP * j, y: VOLCANO_STEP * i, z })),
  );
  const built = buildTin({ points });
  if ("problem" in built) throw new Error(built.problem.text);
  return built.tin;
}

/** Heights are in whole metres: a mean of nine takes the steps out of which terraces would be made. */
function smoothed(heights: readonly (readonly number[])[]): number[][] {
  const at = (i: number, j: number): number =>
    heights[Math.min(heights.length - 1, Math.max(0, i))]!.at(
      Math.min(heights[0]!.length - 1, Math.max(0, j)),
    ) ?? NaN;
  const weights = [1, 2, 1];
  return heights.map((row, i) =>
    row.map((_, j) => {
      let sum = 0;
      weights.forEach((wi, a) =>
        weights.forEach((wj, b) => (sum += (wi * wj * at(i + a - 1, j + b - 1)) / 16)),
      );
      return sum;
    }),
  );
}

const STEP = 1.5;
/** Directions tried around a place, and again between the neighbours of the best of them. */
const TRIED = 48;

/** Small steps, each to the lowest place around, until none is lower or the survey ends. */
function walked(tin: Tin, from: Place): { path: Place[]; left: boolean } {
  const path: Place[] = [from];
  let [at, z] = [from, elevationAt(tin, ...from) ?? NaN];
  for (;;) {
    const coarse = lowestAround(tin, at, { about: 0, spread: 2 * Math.PI });
    const fine = coarse && lowestAround(tin, at, { about: coarse.turn, spread: 0.4 });
    if (fine === null) return { path, left: true };
    if (fine.z >= z) return { path, left: false };
    ({ at, z } = fine);
    path.push(at);
  }
}

/** The lowest place a step away, in directions about one; null when any is off the survey. */
function lowestAround(
  tin: Tin,
  at: Place,
  { about, spread }: { about: number; spread: number },
): { at: Place; z: number; turn: number } | null {
  let best: { at: Place; z: number; turn: number } | null = null;
  for (let k = 0; k < TRIED; k++) {
    const turn = about + spread * (k / TRIED - 0.5);
    const next: Place = [at[0] + STEP * Math.cos(turn), at[1] + STEP * Math.sin(turn)];
    const z = elevationAt(tin, ...next);
    if (z === null) return null;
    if (best === null || z < best.z) best = { at: next, z, turn };
  }
  return best;
}

const distance = (a: Place, b: Place): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** A way up to its first hollow: small steps cannot know where that spills. */
function upToHollow({ path, hollows }: Way): readonly WayPoint[] {
  const at = hollows[0]?.at;
  if (at === undefined) return path;
  const last = path.findIndex(([x, y]) => x === at[0] && y === at[1]);
  return path.slice(0, last + 1);
}

const BOX = [-Infinity, -Infinity, Infinity, Infinity] as const;
let tin: Tin;
let flood: Flood;
let tracer: Tracer;
let starts: Place[];
const start = (i: number): Place => present(starts[i]);
let walks: { path: Place[]; left: boolean }[];

beforeAll(() => {
  tin = tinOf(smoothed(volcano));
  flood = floodFrom(tin);
  tracer = new Tracer(tin, flood);
  const random = seeded(7).next;
  const [wide, tall] = [VOLCANO_STEP * 86, VOLCANO_STEP * 60];
  starts = Array.from({ length: 250 }, (): Place => [
    wide * (0.05 + 0.9 * random()) - tin.origin[0],
    tall * (0.05 + 0.9 * random()) - tin.origin[1],
  ]);
  walks = starts.map((start) => walked(tin, start));
});

describe("ways of water on Maunga Whau", () => {
  it("pass where small steps downhill come to an end: the edge, a hollow, or level ground", () => {
    let agree = 0;
    walks.forEach(({ path }, i) => {
      const end = path[path.length - 1]!;
      const ours = upToHollow(present(tracer.from(...start(i))));
      if (Math.min(...ours.map((at) => distance([at[0], at[1]], end))) < 12) agree += 1;
    });
    console.log(`pass within 12 m of the end: ${agree} of ${walks.length}`);
    expect(agree / walks.length).toBeGreaterThan(0.97);
  });

  it("come into a square as often as small steps do", () => {
    const squares: Place[][] = [[700, 120] as const, [810, 380] as const, [500, 30] as const].map(
      ([x, y]) =>
        [[0, 0] as const, [60, 0] as const, [60, 60] as const, [0, 60] as const].map(
          ([dx, dy]): Place => [x + dx - tin.origin[0], y + dy - tin.origin[1]],
        ),
    );
    const isIn = (at: Place, square: readonly Place[]): boolean =>
      at[0] >= square[0]![0] &&
      at[0] <= square[2]![0] &&
      at[1] >= square[0]![1] &&
      at[1] <= square[2]![1];
    let [same, both] = [0, 0];
    for (const square of squares) {
      walks.forEach(({ path, left }, i) => {
        const way = present(tracer.from(...start(i)));
        const ways = [{ ...way, path: left ? way.path : upToHollow(way), box: BOX }];
        const ours = inflowOf({ flood, tracer, ways, each: 1 }, square).area === 1;
        const theirs = !isIn(path[0]!, square) && path.some((at) => isIn(at, square));
        if (ours === theirs) same += 1;
        if (ours && theirs) both += 1;
      });
    }
    console.log(`in or not alike: ${same} of ${3 * walks.length}; in, both say: ${both}`);
    expect(both).toBeGreaterThan(20);
    expect(same / (3 * walks.length)).toBeGreaterThan(0.98);
  });

  it("give an area that more ways change little", () => {
    const square: Place[] = [
      [300, 200] as const,
      [360, 200] as const,
      [360, 260] as const,
      [300, 260] as const,
    ].map(([x, y]): Place => [x - tin.origin[0], y - tin.origin[1]]);
    const coarse = inflowOf(drainageWith(tin, 2500), square).area;
    const fine = inflowOf(drainageWith(tin, 22_500), square).area;
    console.log(`area that drains to a square: ${coarse} m² and ${fine} m²`);
    expect(Math.abs(coarse - fine) / fine).toBeLessThan(0.1);
  });
});

/** Lets water down to what its neighbours hold it at; false when nothing changed. */
function relaxed({ z, triangles }: Tin, water: Float64Array): boolean {
  let changed = false;
  for (let i = 0; i < triangles.length; i++) {
    const first = i - (i % 3);
    for (const other of [first + ((i + 1) % 3), first + ((i + 2) % 3)]) {
      const v = triangles[i]!;
      const held = Math.max(z[v]!, water[triangles[other]!]!);
      if (held < water[v]!) [water[v], changed] = [held, true];
    }
  }
  return changed;
}

describe("hollows of Maunga Whau", () => {
  it("stand as high as relaxation fills them (Planchon and Darboux, Catena 46, 2001)", () => {
    const raw = tinOf(volcano);
    const { level } = floodFrom(raw);
    const water = Float64Array.from(raw.z, () => Infinity);
    for (const v of raw.hull) water[v] = raw.z[v]!;
    while (relaxed(raw, water)) continue;
    let deepest = 0;
    level.forEach((z, v) => {
      expect(z).toBe(water[v]);
      deepest = Math.max(deepest, z - raw.z[v]!);
    });
    console.log(`deepest hollow ${deepest} m`);
    expect(deepest).toBeGreaterThan(10);
  });
});
