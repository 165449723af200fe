/** Places where one height is exactly another, or a wall runs exactly through a point or an edge. */
import { describe, expect, it } from "vitest";
import type { Walls } from "../../src/site/index.js";
import { lookAt } from "../fixtures/faults.js";
import {
  apart,
  dug,
  pad,
  pipe,
  planePoints,
  run,
  siteOf,
  tank,
  total,
  trench,
  type Spot,
} from "../fixtures/site.js";
import { LAYERS } from "../fixtures/threeWorks.js";

const EXACT = 1e-12;
const square: Spot[] = planePoints(0, 0, 0);
/** A hole 3.6 × 2.4 m, 2.15 m deep: the plain tank's. */
const HOLE = 3.6 * 2.4 * 2.15;

type Probes = [x: number, y: number, ...thickness: number[]][];

describe("a wall through a place that matters", () => {
  it.each<[string, Probes]>([
    [
      "on a wall, on a corner of the floor, on a survey point, within",
      [
        [1.8, 0, 0.5, 1],
        [1.2, 1.8, 0.2, 0.4],
        [60, 60, 0.1, 0.9],
        [0, 0, 0.3, 0.3],
      ],
    ],
    [
      "on all four corners of the floor",
      [
        [1.2, 1.8, 0.5, 1],
        [-1.2, 1.8, 0.2, 0.4],
        [-1.2, -1.8, 0.1, 0.9],
        [1.2, -1.8, 0.3, 0.3],
      ],
    ],
    [
      "in line with a wall",
      [
        [1.2, -20, 0.5, 1],
        [1.2, 20, 0.2, 0.4],
        [1.2, 1.8, 0, 0],
      ],
    ],
  ])("probes %s", (_, probes) => {
    const site = siteOf({
      points: square,
      layers: LAYERS,
      probes,
      works: [tank({ walls: run(0) })],
    });
    const { work, gap } = dug(site);
    expect(apart(total(work().cut), HOLE)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(EXACT);
    expect(lookAt(site, { places: 40, stages: true })).toMatchObject({ faults: [] });
  });

  it.each<[string, Spot[], (x: number, y: number) => number]>([
    [
      "survey points on the floor's corners and walls",
      [
        [1.2, 1.8, 0],
        [-1.2, 1.8, 0],
        [-1.2, -1.8, 0],
        [1.2, -1.8, 0],
        [1.2, 0.3, 0],
        [0, 1.8, 0],
      ],
      () => 0,
    ],
    [
      "an edge of triangles along each wall, beyond its ends",
      [
        [1.2, -9, 0],
        [1.2, 9, 0],
        [-1.2, -9, 0],
        [-1.2, 9, 0],
        [-9, 1.8, 0],
        [9, 1.8, 0],
      ],
      () => 0,
    ],
  ])("%s", (_, more) => {
    for (const slope of [0, 1]) {
      const works = [tank({ walls: run(slope) })];
      const plain = dug(siteOf({ points: square, works }));
      const fine = dug(siteOf({ points: [...square, ...more], works }));
      expect(apart(total(plain.work().cut), total(fine.work().cut))).toBeLessThan(EXACT);
      expect(apart(plain.work().daylight, fine.work().daylight)).toBeLessThan(EXACT);
      expect(fine.gap).toBeLessThan(EXACT);
    }
  });

  it("a ridge exactly under a wall: the height at the wall is the ridge's", () => {
    // z = 1 − |x|·0.2 from a breakline along x = 0; a pad's side lies on the ridge.
    const points: Spot[] = [-20, 0, 20].flatMap((x) =>
      [-20, 20].map((y): Spot => [x, y, 1 - 0.2 * Math.abs(x)]),
    );
    const site = siteOf({
      points,
      breaklines: [["p2", "p3"]],
      works: [
        pad({
          outline: [
            [0, -3],
            [2, -3],
            [2, 3],
            [0, 3],
          ],
          top: 0,
          walls: run(0),
        }),
      ],
    });
    const { work, gap } = dug(site);
    expect(apart(total(work().cut), 6 * 2 * 0.8)).toBeLessThan(EXACT);
    expect(work().deepest).toBeCloseTo(1, 12);
    expect(gap).toBeLessThan(EXACT);
  });

  it("sloped walls that reach daylight exactly on survey points and along an edge", () => {
    // 1:1 walls from a 4 × 4 m floor 2 m down come out on the square of 8 m whose corners are surveyed.
    const ring: Spot[] = [
      [4, 4, 0],
      [-4, 4, 0],
      [-4, -4, 0],
      [4, -4, 0],
      [4, 0, 0],
      [0, -4, 0],
    ];
    const works = [
      pad({
        outline: [
          [-2, -2],
          [2, -2],
          [2, 2],
          [-2, 2],
        ],
        top: -2,
        walls: run(1),
      }),
    ];
    const { work, gap } = dug(siteOf({ points: [...square, ...ring], works }));
    expect(apart(total(work().cut), (2 / 6) * (16 + 4 * 36 + 64))).toBeLessThan(EXACT);
    expect(apart(work().daylight, 64)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(EXACT);
  });

  it("a trench along an edge of triangles, with bends on survey points", () => {
    const points: Spot[] = [
      ...square,
      [-8, 0, 0],
      [0, 0, 0],
      [0, 6, 0],
      [4, 6, 0],
      [0, 0.3, 0],
      [-0.3, 0, 0],
    ];
    const path: [number, number][] = [
      [-8, 0],
      [0, 0],
      [0, 6],
      [4, 6],
    ];
    const works = [trench({ path })];
    const plain = dug(siteOf({ points: square, works }));
    const fine = dug(siteOf({ points, works }));
    expect(apart(total(plain.work().cut), total(fine.work().cut))).toBeLessThan(EXACT);
    expect(apart(total(fine.work().cut), 18 * 0.6 * 1.105)).toBeLessThan(EXACT);
    expect(fine.gap).toBeLessThan(EXACT);
  });
});

describe("layers of no thickness", () => {
  it("are not cut and break nothing", () => {
    const probes: Probes = [
      [-20, 0, 0, 0],
      [20, 0, 0, 0],
      [0, 30, 0, 2],
    ];
    const { work, gap } = dug(siteOf({ points: square, layers: LAYERS, probes, works: [tank()] }));
    expect(work().cut["topsoil"]).toBeUndefined();
    expect(apart(total(work().cut), HOLE)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(EXACT);
  });

  it("that pinch out under the floor: a wedge of the layer above it", () => {
    // The clay thins from 2 m at x = −2 to nothing at x = 0 and on; 4 × 2 m floor 3 m down.
    const probes: Probes = [
      [-2, 0, 2],
      [0, 0, 0],
      [2, 0, 0],
    ];
    const works = [
      pad({
        outline: [
          [-2, -1],
          [2, -1],
          [2, 1],
          [-2, 1],
        ],
        top: -3,
        walls: run(0),
      }),
    ];
    const { work, gap } = dug(
      siteOf({ points: square, layers: ["clay", "limestone"], probes, works }),
    );
    expect(apart(work().cut["clay"]!, (2 * 2 * 2) / 2)).toBeLessThan(EXACT);
    expect(apart(work().cut["limestone"]!, 24 - 4)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(EXACT);
  });
});

const WALLS: Walls[] = [run(0), run(1), { by: "benches", rise: 0.5, tread: 0.5 }];

describe("a floor exactly at the ground", () => {
  it.each(
    WALLS.flatMap((walls) => [
      [`tank, walls ${JSON.stringify(walls)}`, tank({ base: 0.15, walls })] as const,
      [`pad, walls ${JSON.stringify(walls)}`, pad({ top: 0, walls })] as const,
      [
        `trench, walls ${JSON.stringify(walls)}`,
        trench({ walls, pipes: [pipe({ grade: { by: "inverts", start: 0.105, end: 0.105 } })] }),
      ] as const,
    ]),
  )("%s cuts nothing", (_, work) => {
    const done = dug(siteOf({ points: square, works: [work] }));
    expect(total(done.work().cut)).toBeLessThan(1e-9);
    expect(total(done.work().fill)).toBeLessThan(1e-9);
    expect(done.work().deepest).toBeLessThan(1e-9);
    expect(done.gap).toBeLessThan(1e-9);
  });

  it("in one triangle of several, and a work off the survey altogether", () => {
    const points: Spot[] = [
      [-20, -20, 0],
      [20, -20, 0],
      [0, 0, 0],
      [-20, 20, 5],
      [20, 20, 5],
    ];
    const outline: [number, number][] = [
      [-5, -15],
      [5, -15],
      [5, 5],
      [-5, 5],
    ];
    const done = dug(siteOf({ points, works: [pad({ top: 0, outline }), tank({ at: [500, 0] })] }));
    expect(total(done.work("pad").cut)).toBeGreaterThan(1);
    expect(total(done.work("tank").cut)).toBe(0);
    expect(done.result.findings.map((f) => [f.where, f.code])).toContainEqual([
      "tank",
      "survey.too-small",
    ]);
    expect(done.gap).toBeLessThan(EXACT);
  });

  it.each(["pad then pad", "pad then tank"])(
    "of an earlier work: %s digs nothing twice",
    (which) => {
      const first = pad({ id: "first", top: -1, walls: run(1) });
      const floor = { base: -1, bedding: { depth: 0, material: "crushed-gravel" } };
      const second =
        which === "pad then pad"
          ? pad({ id: "second", top: -1, walls: run(1) })
          : tank({ id: "second", ...floor });
      const done = dug(siteOf({ points: square, works: [first, second] }));
      expect(total(done.work("second").cut)).toBeLessThan(1e-9);
      expect(done.gap).toBeLessThan(EXACT);
    },
  );
});

describe("a floor exactly at the rock head", () => {
  it.each([0, 0.75])("takes the soil and no rock, walls run %f", (slope) => {
    const probes: Probes = [[3, 4, 0.65, 1.5]];
    const { work, gap } = dug(
      siteOf({ points: square, layers: LAYERS, probes, works: [tank({ walls: run(slope) })] }),
    );
    expect(work().cut["limestone"] ?? 0).toBeLessThan(1e-9);
    const whole = (d: number): number => (3.6 + 2 * slope * d) * (2.4 + 2 * slope * d);
    const exact = (2.15 / 6) * (whole(0) + 4 * whole(1.075) + whole(2.15));
    expect(apart(total(work().cut), exact)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(EXACT);
  });

  it("that slopes: the rock head meets the floor along a line under its middle", () => {
    // Rock head at −2.15 + 0.1·y under the plain tank's floor (y from −1.8 to 1.8).
    const probes: Probes = [
      [0, -10, 3.15],
      [0, 10, 1.15],
      [5, 10, 1.15],
    ];
    const { work, gap } = dug(
      siteOf({
        points: square,
        layers: ["clay", "limestone"],
        probes,
        works: [tank({ walls: run(0) })],
      }),
    );
    expect(apart(work().cut["limestone"]!, (2.4 * 1.8 * 0.18) / 2)).toBeLessThan(EXACT);
    expect(apart(total(work().cut), HOLE)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(EXACT);
  });
});

describe("poor surveys", () => {
  const works = [
    tank({ walls: run(1) }),
    pad({
      id: "p",
      outline: [
        [5, 5],
        [9, 5],
        [9, 9],
        [5, 9],
      ],
      top: 0.3,
    }),
  ];
  const plain = dug(siteOf({ points: square, works }));

  it.each<[string, Spot[]]>([
    [
      "points twice and thrice, within the welding tolerance",
      [
        [1, 1, 0],
        [1, 1, 0],
        [1.0004, 1, 0],
        [-2, 3, 0],
        [-2, 3.0009, 0],
      ],
    ],
    [
      "points just beyond the welding tolerance: slivers 1 mm wide",
      [
        [1, 1, 0],
        [1.0011, 1, 0],
        [1, 1.0011, 0],
        [-2, 3, 0],
        [-2, 3.002, 0],
        [-2.0011, 3.001, 0],
      ],
    ],
    [
      "forty points in line, along a wall's daylight and along the survey's edge",
      [
        ...Array.from({ length: 40 }, (_, i): Spot => [-19.5 + i, 3.95, 0]),
        ...Array.from({ length: 40 }, (_, i): Spot => [-58 + 3 * i, -60, 0]),
      ],
    ],
    [
      "points a hair off a line: triangles 1e-5 m high and 20 m long",
      [...Array.from({ length: 20 }, (_, i): Spot => [-19 + 2 * i, i % 2 === 0 ? 2 : 2.00001, 0])],
    ],
  ])("%s", (_, more) => {
    const done = dug(siteOf({ points: [...square, ...more], works }));
    for (const { id, cut, fill, daylight } of plain.result.works) {
      expect(apart(total(cut), total(done.work(id).cut))).toBeLessThan(1e-11);
      expect(apart(total(fill), total(done.work(id).fill))).toBeLessThan(1e-11);
      expect(apart(daylight, done.work(id).daylight)).toBeLessThan(1e-9);
    }
    expect(done.gap).toBeLessThan(1e-11);
  });

  it("cliffs: ground that drops 5 m within 2 mm", () => {
    const points: Spot[] = [-20, 0, 0.002, 20].flatMap((x) =>
      [-20, -5, 5, 20].map((y): Spot => [x, y, x > 0.001 ? -5 : 0]),
    );
    const given = pad({
      outline: [
        [-4, -3],
        [4, -3],
        [4, 3],
        [-4, 3],
      ],
      top: -2,
      walls: run(0),
      fillRun: 0,
    });
    const { work, gap } = dug(siteOf({ points, works: [given] }));
    // Linear within the cliff: 2 mm wide, from 2 m of cut to 3 m of fill.
    const [cut, fill] = [
      6 * (4 * 2 + (0.002 * 0.4 * 2) / 2),
      6 * (3.998 * 3 + (0.002 * 0.6 * 3) / 2),
    ];
    expect(apart(total(work().cut), cut)).toBeLessThan(1e-11);
    expect(apart(total(work().fill), fill)).toBeLessThan(1e-11);
    expect(gap).toBeLessThan(1e-11);
  });
});
