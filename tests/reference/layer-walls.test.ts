/**
 * Walls by layers: closed forms where the layers are level, and elsewhere every wall walked up step
 * by step in its own section (fixtures/layerMarch.ts, which states its error).
 */
import { describe, expect, it } from "vitest";
import type { Walls } from "../../src/site/index.js";
import { lookAt } from "../fixtures/faults.js";
import { seeded } from "../fixtures/seeded.js";
import {
  apart,
  dug,
  earth,
  pad,
  planePoints,
  siteOf,
  tank,
  total,
  type Spot,
} from "../fixtures/site.js";

const EXACT = 1e-11;

/** Volume between two level rectangles and a straight-sided mantle: h/6 (A1 + 4 Am + A2). */
function prismoid(length: number, width: number, height: number, slope: number): number {
  const area = (at: number): number => (length + 2 * slope * at) * (width + 2 * slope * at);
  return (height / 6) * (area(0) + 4 * area(height / 2) + area(height));
}

/**
 * Volumes of a hole through level layers, from the floor up: each layer at its own run, but never
 * steeper than one below it, and a ledge wherever the run grows.
 */
function stacked(
  [length, width]: readonly [number, number],
  layers: readonly { thick: number; run: number }[],
  ledge: number,
): number[] {
  let [grown, steepest] = [0, layers[0]!.run];
  return layers.map(({ thick, run }) => {
    if (run > steepest) [steepest, grown] = [run, grown + ledge];
    const volume = prismoid(length + 2 * grown, width + 2 * grown, thick, steepest);
    grown += steepest * thick;
    return volume;
  });
}

describe("level layers under level ground: frusta one on the other", () => {
  it.each([
    ["upright rock, soil 1:1", 0, 1, 0],
    ["upright rock, soil 1:1, ledge", 0, 1, 0.6],
    ["rock ¼:1, soil 1½:1, ledge", 0.25, 1.5, 0.3],
    ["rock flatter than the soil on it: never steeper above", 1, 0.5, 0.6],
    ["both alike: no ledge", 0.75, 0.75, 0.6],
    ["both upright", 0, 0, 0.5],
  ] as const)("%s", (_, rock, soil, ledge) => {
    const walls: Walls = { by: "layers", ledge };
    const site = siteOf({
      points: planePoints(0, 0, 0),
      layers: ["soil", "rock"],
      materials: [earth("soil", soil), earth("rock", rock)],
      probes: [[3, 1, 0.9]],
      works: [tank({ at: [1.3, -2.2], bearing: 33, walls })],
    });
    const { work, gap } = dug(site);
    const fromFloor = stacked(
      [3.6, 2.4],
      [
        { thick: 1.25, run: rock },
        { thick: 0.9, run: soil },
      ],
      ledge,
    );
    expect(apart(work().cut["rock"]!, fromFloor[0]!)).toBeLessThan(EXACT);
    expect(apart(work().cut["soil"]!, fromFloor[1]!)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(EXACT);
    expect(lookAt(site, { places: 60, stages: true })).toMatchObject({ faults: [] });
  });

  it.each([0, 0.4])("five layers, some steeper than those below, ledge %f", (ledge) => {
    const runs = [0, 0.5, 0.25, 1, 0.75];
    const thick = [0.55, 0.4, 0.5, 0.3, 0.4];
    const ids = runs.map((_, i) => `e${i}`);
    const { work, gap } = dug(
      siteOf({
        points: planePoints(0, 0, 0),
        layers: ids.toReversed(),
        materials: runs.map((run, i) => earth(`e${i}`, run)),
        probes: [[0, 0, ...thick.slice(1).toReversed()]],
        works: [tank({ bearing: 71, walls: { by: "layers", ledge } })],
      }),
    );
    const volumes = stacked(
      [3.6, 2.4],
      runs.map((run, i) => ({ thick: thick[i]!, run })),
      ledge,
    );
    volumes.forEach((volume, i) => {
      expect(apart(work().cut[ids[i]!]!, volume), ids[i]).toBeLessThan(EXACT);
    });
    expect(gap).toBeLessThan(EXACT);
  });

  it("an L-shaped pit: mitres outside and inside, area + perimeter·t + (5 − 1)·t² at each height", () => {
    const outline: [number, number][] = [
      [0, 0],
      [9, 0],
      [9, 3],
      [4, 3],
      [4, 7],
      [0, 7],
    ];
    const [inRock, inSoil, ledge] = [0.6, 0.8, 0.3];
    const { work, gap } = dug(
      siteOf({
        points: planePoints(0, 0, 2),
        layers: ["soil", "rock"],
        materials: [earth("soil", 1), earth("rock", 0.5)],
        probes: [[3, 1, inSoil]],
        works: [pad({ outline, top: 2 - inRock - inSoil, walls: { by: "layers", ledge } })],
      }),
    );
    const between = (t0: number, t1: number, height: number): number => {
      const area = (t: number): number => 43 + 32 * t + 4 * t * t;
      return (height / 6) * (area(t0) + 4 * area((t0 + t1) / 2) + area(t1));
    };
    const head = 0.5 * inRock;
    expect(apart(work().cut["rock"]!, between(0, head, inRock))).toBeLessThan(EXACT);
    const start = head + ledge;
    expect(apart(work().cut["soil"]!, between(start, start + inSoil, inSoil))).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(EXACT);
  });
});

describe("a rock head that rises away from a long face", () => {
  it.each([0, 0.5])(
    "per metre of face: rock triangle, then soil to daylight, ledge %f",
    (ledge) => {
      // Floor at −3 for x ≤ 2; rock head at −2 + 0.2·(x − 2); rock ½:1, soil 1:1; ground at 0.
      const [rock, soil, m, d, head] = [0.5, 1, 0.2, 3, 2];
      const long = (half: number): number => {
        const outline: [number, number][] = [
          [-2, -half],
          [2, -half],
          [2, half],
          [-2, half],
        ];
        const { work } = dug(
          siteOf({
            points: planePoints(0, 0, 0),
            layers: ["soil", "rock"],
            materials: [earth("soil", soil), earth("rock", rock)],
            // Beyond the probes the same plane goes on: three far out.
            probes: [
              [-48, 0, head + 10],
              [12, 50, head - 2],
              [12, -50, head - 2],
            ],
            works: [pad({ outline, top: -d, walls: { by: "layers", ledge } })],
          }),
        );
        return total(work().cut);
      };
      // The ends are the same for both lengths, so their difference is a middle piece of 4 m.
      const middle = (long(10) - long(8)) / 4;
      // East: the wall leaves the rock where −3 + t/rock = −2 + m·t, then goes level by the ledge.
      const leaves = (d - head) / (1 / rock - m);
      const z = -d + leaves / rock;
      const east = (leaves * (d - z)) / 2 + ledge * -z + (z * z * soil) / 2;
      // West: the rock head lies 0.8 m lower at the floor's edge and falls away, so 0.2 m of rock is
      // left there, and the wall leaves it where −3 + t/rock = −2.8 − m·t.
      const leavesWest = 0.2 / (1 / rock + m);
      const zWest = -d + leavesWest / rock;
      const west = (leavesWest * (d - zWest)) / 2 + ledge * -zWest + (zWest * zWest * soil) / 2;
      const exact = 4 * d + east + west;
      expect(apart(middle, exact)).toBeLessThan(EXACT);
    },
  );
});

/** Rough ground with three or four layers of random slopes and thicknesses. */
function roughSite(seed: number): ReturnType<typeof siteOf> {
  const { between, pick, whole } = seeded(seed);
  const spots = Array.from({ length: whole(6, 40) }, (): Spot => {
    const [x, y] = [between(-18, 18), between(-18, 18)];
    return [x, y, 0.15 * x - 0.1 * y + between(-0.6, 0.6)];
  });
  const count = whole(2, 4);
  const materials = Array.from({ length: count }, (_, i) =>
    earth(`e${i}`, pick([0, 0, 0.25, 0.5, 1, 1.5, between(0, 2)])),
  );
  const probes = Array.from({ length: whole(1, 3) }, (): [number, number, ...number[]] => [
    between(-12, 12),
    between(-12, 12),
    ...Array.from({ length: count - 1 }, () => pick([0, between(0.1, 1.5)])),
  ]);
  const walls: Walls = { by: "layers", ...pick([{}, { ledge: 0.4 }, { ledge: 1 }]) };
  const at: [number, number] = [between(-4, 4), between(-4, 4)];
  const height = 0.15 * at[0] - 0.1 * at[1] - between(0.5, 3);
  const sides = whole(3, 6);
  const outline = Array.from({ length: sides }, (_, i): [number, number] => {
    const angle = (2 * Math.PI * i) / sides + 0.4;
    return [at[0] + 2.5 * Math.cos(angle), at[1] + 2.5 * Math.sin(angle)];
  });
  const work =
    whole(0, 1) === 0
      ? tank({ at, base: height, bearing: between(0, 360), walls })
      : pad({ outline, top: height, walls });
  return siteOf({
    points: [...planePoints(0.15, -0.1, 0, 20), ...spots],
    layers: materials.map(({ id }) => id),
    materials,
    probes,
    works: [work],
  });
}

describe("walls walked up in their own sections, on rough ground with dipping layers", () => {
  const [first, batch] = [50_000, 25];
  it.each(Array.from({ length: 6 }, (_, i) => first + batch * i))(
    `${batch} sites from seed %d`,
    (from) => {
      const faults: string[] = [];
      let compared = 0;
      for (let seed = from; seed < from + batch; seed++) {
        const looked = lookAt(roughSite(seed), { places: 40, stages: false });
        if ("unfit" in looked) throw new Error(`seed ${seed}: ${looked.unfit}`);
        compared += looked.compared;
        faults.push(...looked.faults.map(({ rule, text }) => `seed ${seed}, ${rule}: ${text}`));
      }
      expect(faults).toEqual([]);
      expect(compared).toBeGreaterThan(25 * batch);
    },
  );
});
