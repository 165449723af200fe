/** What must not change, or must change in a known way, when a site is moved, turned, scaled … */
import { describe, expect, it } from "vitest";
import { estimate } from "../../src/estimate/index.js";
import type { Site, Work } from "../../src/site/index.js";
import { davisPoints } from "../fixtures/davis.js";
import {
  apart,
  dug,
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
  type SiteParts,
  type Spot,
} from "../fixtures/site.js";
import { seeded } from "../fixtures/seeded.js";

const LAYERS = ["topsoil", "clay", "limestone"];
const PROBES: [x: number, y: number, ...thickness: number[]][] = [
  [20, 18, 0.3, 1.1],
  [78, 15, 0.15, 0.4],
  [70, 71, 0.4, 2.1],
  [28, 80, 0.25, 0],
];

/** A tank hole, an L-shaped pad half in cut and a bent trench in Davis's terrain, flattened. */
function whole(): SiteParts & { points: Site["survey"]["points"]; works: Work[] } {
  return {
    points: davisPoints(0.25),
    layers: LAYERS,
    probes: PROBES,
    works: [
      tank({ at: [34.8, 55.4], bearing: 34, base: 216.2, walls: run(0.75) }),
      pad({
        outline: [
          [60, 42],
          [70.9, 47.1],
          [69.2, 50.7],
          [62.8, 47.7],
          [60.7, 52.3],
          [56.2, 50.2],
        ],
        top: 220.4,
        course: { depth: 0.2, material: "crushed-gravel" },
      }),
      trench({
        path: [
          [24, 46],
          [34, 40],
          [46, 44],
          [42, 54],
        ],
        walls: run(0.5),
        pipes: [pipe({ grade: { by: "inverts", start: 219.4, end: 217.5 } })],
      }),
    ],
  };
}

interface Moved {
  /** Place in plan of a place before. */
  place: (x: number, y: number) => [number, number];
  /** Degrees added to bearings. */
  turn: number;
  lift: number;
  scale: number;
}

function movedWork(work: Work, { place, turn, lift, scale }: Moved): Work {
  const up = (z: number): number => z * scale + lift;
  switch (work.kind) {
    case "tank":
      return {
        ...work,
        at: place(...work.at),
        bearing: work.bearing + turn,
        base: up(work.base),
        overdig: work.overdig * scale,
        bedding: { ...work.bedding, depth: work.bedding.depth * scale },
        body: {
          length: work.body.length * scale,
          width: work.body.width * scale,
          height: work.body.height * scale,
        },
      };
    case "pad":
      return {
        ...work,
        outline: work.outline.map(([x, y]) => place(x, y)),
        top: up(work.top),
        ...(work.course ? { course: { ...work.course, depth: work.course.depth * scale } } : {}),
      };
    case "trench":
      return {
        ...work,
        path: work.path.map(([x, y]) => place(x, y)),
        width: work.width * scale,
        bedding: { ...work.bedding, depth: work.bedding.depth * scale },
        zone: { ...work.zone, above: work.zone.above * scale },
        pipes: work.pipes.map((each) => {
          if (each.grade.by !== "inverts")
            throw new Error(`got ${each.grade.by}, expected inverts`);
          return {
            ...each,
            inside: each.inside * scale,
            outside: each.outside * scale,
            grade: { by: "inverts", start: up(each.grade.start), end: up(each.grade.end) },
          };
        }),
      };
    default:
      throw new Error(`got a ${work.kind}, expected a tank, a pad or a trench`);
  }
}

function movedSite(parts: ReturnType<typeof whole>, moved: Moved): Site {
  return siteOf({
    ...parts,
    points: parts.points.map(({ id, x, y, z }) => {
      const [px, py] = moved.place(x, y);
      return { id, x: px, y: py, z: z * moved.scale + moved.lift };
    }),
    probes: (parts.probes ?? []).map(([x, y, ...thick]) => [
      ...moved.place(x, y),
      ...thick.map((t) => t * moved.scale),
    ]),
    works: parts.works.map((work) => movedWork(work, moved)),
  });
}

/** Every volume of every work, in a fixed order. */
function volumesOf({ result }: Dug): Map<string, number> {
  const out = new Map<string, number>();
  for (const work of result.works) {
    for (const [id, volume] of Object.entries(work.cut)) out.set(`${work.id} cut ${id}`, volume);
    for (const [id, volume] of Object.entries(work.fill)) out.set(`${work.id} fill ${id}`, volume);
    out.set(`${work.id} displaced`, work.displaced);
  }
  return out;
}

/** Largest difference between two digs' volumes, `a` times `scale`³, as a share of all the earth. */
function largestGap(a: Dug, b: Dug, scale = 1): number {
  const [one, two] = [volumesOf(a), volumesOf(b)];
  const size = total(Object.fromEntries(two));
  let gap = 0;
  for (const key of new Set([...one.keys(), ...two.keys()])) {
    gap = Math.max(gap, Math.abs((one.get(key) ?? 0) * scale ** 3 - (two.get(key) ?? 0)) / size);
  }
  return gap;
}

function turnedBy(degrees: number, dx: number, dy: number, lift: number): Moved {
  const angle = (-degrees * Math.PI) / 180;
  return {
    place: (x, y) => [
      dx + x * Math.cos(angle) - y * Math.sin(angle),
      dy + x * Math.sin(angle) + y * Math.cos(angle),
    ],
    turn: degrees,
    lift,
    scale: 1,
  };
}

const reference = dug(siteOf(whole()));

describe("the site with all three works that the rest is compared with", () => {
  it("digs, fills and balances", () => {
    expect(reference.gap).toBeLessThan(1e-11);
    for (const id of ["tank", "pad", "trench"]) {
      expect(total(reference.work(id).cut)).toBeGreaterThan(5);
      expect(total(reference.work(id).fill)).toBeGreaterThan(5);
    }
  });
});

describe("moved and turned", () => {
  it.each(Array.from({ length: 12 }, (_, i) => 300 + i))("by any amount, seed %d", (seed) => {
    const { between } = seeded(seed);
    const moved = turnedBy(
      between(0, 360),
      between(-500, 500),
      between(-500, 500),
      between(-99, 99),
    );
    expect(largestGap(reference, dug(movedSite(whole(), moved)))).toBeLessThan(1e-10);
  });

  it("a million metres away, where a coordinate holds less than a nanometre", () => {
    const far = dug(movedSite(whole(), turnedBy(0, 1_000_000, 5_000_000, 2000)));
    expect(largestGap(reference, far)).toBeLessThan(1e-10);
    expect(far.gap).toBeLessThan(1e-10);
  });
});

describe("scaled", () => {
  it.each([0.01, 0.1, 0.5, 3, 10, 100])("by %f: volumes by its cube", (scale) => {
    const place = (x: number, y: number): [number, number] => [x * scale, y * scale];
    const scaled = dug(movedSite(whole(), { place, turn: 0, lift: 0, scale }));
    expect(largestGap(reference, scaled, scale)).toBeLessThan(1e-11);
    expect(scaled.gap).toBeLessThan(1e-9);
  });
});

describe("the same ground, surveyed otherwise", () => {
  it.each([41, 42, 43, 44])("points in another order, seed %d", (seed) => {
    const parts = whole();
    const points = seeded(seed).shuffled(parts.points);
    const again = dug(siteOf({ ...parts, points, probes: seeded(seed).shuffled(PROBES) }));
    expect(largestGap(reference, again)).toBeLessThan(1e-11);
  });

  it.each([51, 52, 53, 54, 55, 56])("a plane with more points on it, seed %d", (seed) => {
    const works = [
      tank({ bearing: 20, base: -1.6, walls: run(0.75) }),
      pad({
        id: "L",
        outline: [
          [6, 0],
          [16, 0],
          [16, 4],
          [10, 4],
          [10, 9],
          [6, 9],
        ],
        top: 0.9,
      }),
    ];
    const plain = planePoints(0.15, -0.08, 0);
    const { between } = seeded(seed);
    const more = Array.from({ length: 300 }, (): Spot => {
      const [x, y] = [between(-60, 60), between(-60, 60)];
      return [x, y, 0.15 * x - 0.08 * y];
    });
    // Some of them on edges and corners of the works.
    const places: [number, number][] = [
      [6, 0],
      [10, 4],
      [13, 4],
      [0, 0],
      [6, 4.5],
    ];
    const on = places.map(([x, y]): Spot => [x, y, 0.15 * x - 0.08 * y]);
    const coarse = dug(siteOf({ points: plain, works }));
    const fine = dug(siteOf({ points: [...plain, ...more, ...on], works }));
    expect(largestGap(coarse, fine)).toBeLessThan(1e-11);
    expect(apart(coarse.work("L").daylight, fine.work("L").daylight)).toBeLessThan(1e-9);
    expect(fine.gap).toBeLessThan(1e-11);
  });

  it.each([61, 62, 63])("a triangle split at a place on it, seed %d", (seed) => {
    const { between } = seeded(seed);
    // Three corners only, so that the point added cannot flip an edge elsewhere.
    const corners: Spot[] = [
      [-70, -50, 4],
      [80, -40, -6],
      [0, 90, 9],
    ];
    const [b, c] = [between(0.2, 0.4), between(0.2, 0.4)];
    const mix = (i: 0 | 1 | 2): number =>
      (1 - b - c) * corners[0]![i] + b * corners[1]![i] + c * corners[2]![i];
    const works = [
      tank({ base: 0, bearing: 12, walls: run(1) }),
      trench({
        id: "t",
        path: [
          [-20, 5],
          [9, 2],
          [20, 12],
        ],
      }),
    ];
    const before = dug(siteOf({ points: corners, works }));
    const after = dug(siteOf({ points: [...corners, [mix(0), mix(1), mix(2)]], works }));
    expect(largestGap(before, after)).toBeLessThan(1e-11);
  });

  it("a square grid, whose every cell has four points on one circle", () => {
    const z = (x: number, y: number): number => 2 + 0.1 * x - 0.05 * y;
    const points = Array.from({ length: 41 * 41 }, (_, i): Spot => {
      const [x, y] = [(i % 41) - 20, Math.floor(i / 41) - 20];
      return [x, y, z(x, y)];
    });
    const works = [
      tank({
        at: [0, 0],
        body: { length: 4, width: 2, height: 1 },
        overdig: 0,
        base: 0.5,
        walls: run(0),
      }),
      pad({
        id: "p",
        outline: [
          [6, 2],
          [12, 2],
          [12, 8],
          [6, 8],
        ],
        top: 2,
        walls: run(1),
      }),
    ];
    const grid = dug(siteOf({ points, works }));
    const plain = dug(siteOf({ points: planePoints(0.1, -0.05, 2, 20), works }));
    // Walls run exactly along grid lines and through grid points.
    expect(largestGap(plain, grid)).toBeLessThan(1e-12);
    expect(apart(total(grid.work("tank").cut), 4 * 2 * 1.65)).toBeLessThan(1e-12);
    expect(grid.gap).toBeLessThan(1e-12);
  });
});

describe("works that do not touch", () => {
  it.each([
    [0, 1, 2],
    [1, 0, 2],
    [2, 1, 0],
    [2, 0, 1],
  ])("built in the order %d, %d, %d give the same quantities", (...order) => {
    const parts = whole();
    const again = dug(siteOf({ ...parts, works: order.map((i) => parts.works[i]!) }));
    for (const work of reference.result.works) {
      const other = again.work(work.id);
      expect(apart(total(work.cut), total(other.cut))).toBeLessThan(1e-12);
      expect(apart(total(work.fill), total(other.fill))).toBeLessThan(1e-12);
      expect(other.daylight).toBeCloseTo(work.daylight, 9);
    }
  });
});

describe("borderline ground", () => {
  const square: Spot[] = planePoints(0, 0, 0);

  it("a probe exactly on a wall, on a corner of the floor and on a survey point", () => {
    const probes: typeof PROBES = [
      [1.8, 0, 0.5, 1],
      [1.2, 1.8, 0.2, 0.4],
      [60, 60, 0.1, 0.9],
      [0, 0, 0.3, 0.3],
    ];
    const { work, gap } = dug(
      siteOf({ points: square, layers: LAYERS, probes, works: [tank({ walls: run(0) })] }),
    );
    expect(apart(total(work().cut), 3.6 * 2.4 * 2.15)).toBeLessThan(1e-12);
    expect(gap).toBeLessThan(1e-12);
  });

  it("layers of no thickness are not cut and break nothing", () => {
    const probes: typeof PROBES = [
      [-20, 0, 0, 0],
      [20, 0, 0, 0],
      [0, 30, 0, 2],
    ];
    const { work, gap } = dug(siteOf({ points: square, layers: LAYERS, probes, works: [tank()] }));
    expect(work().cut["topsoil"]).toBeUndefined();
    expect(apart(total(work().cut), 3.6 * 2.4 * 2.15)).toBeLessThan(1e-12);
    expect(gap).toBeLessThan(1e-12);
  });

  it.each([
    ["tank", tank({ base: 0.15 })],
    ["tank with sloped walls", tank({ base: 0.15, walls: run(1) })],
    ["pad", pad({ top: 0 })],
    ["trench", trench({ pipes: [pipe({ grade: { by: "inverts", start: 0.105, end: 0.105 } })] })],
  ])("%s with its floor exactly at the ground cuts nothing", (_, work) => {
    const done = dug(siteOf({ points: square, works: [work] }));
    expect(total(done.work().cut)).toBeLessThan(1e-9);
    expect(done.work().deepest).toBeLessThan(1e-9);
    expect(done.gap).toBeLessThan(1e-9);
  });

  it("a floor plane that lies in a survey triangle, and works off the survey altogether", () => {
    const points: Spot[] = [
      [-20, -20, 0],
      [20, -20, 0],
      [0, 0, 0],
      [-20, 20, 5],
      [20, 20, 5],
    ];
    const site = siteOf({
      points,
      works: [
        pad({
          top: 0,
          outline: [
            [-5, -15],
            [5, -15],
            [5, 5],
            [-5, 5],
          ],
        }),
        tank({ at: [500, 0] }),
      ],
    });
    const done = dug(site);
    expect(total(done.work("pad").cut)).toBeGreaterThan(1);
    expect(total(done.work("tank").cut)).toBe(0);
    expect(done.result.findings.map((f) => [f.where, f.code])).toContainEqual([
      "tank",
      "survey.too-small",
    ]);
    expect(done.gap).toBeLessThan(1e-12);
  });

  it("the estimate of one site is the same twice, and again after another", () => {
    const site = siteOf(whole());
    const first = JSON.stringify(estimate(site, SCHEME));
    estimate(siteOf({ points: square, works: [tank()] }), SCHEME);
    expect(JSON.stringify(estimate(site, SCHEME))).toBe(first);
    expect(JSON.stringify(estimate(siteOf(whole()), SCHEME))).toBe(first);
  });
});
