/** Volumes against closed forms: shapes whose volume a textbook formula gives exactly. */
import { describe, expect, it } from "vitest";
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
} from "../fixtures/site.js";

const EXACT = 1e-12;

/** Volume between two level rectangles and a straight-sided mantle: h/6 (A1 + 4 Am + A2). */
function prismoid(length: number, width: number, height: number, slope: number): number {
  const area = (at: number): number => (length + 2 * slope * at) * (width + 2 * slope * at);
  return (height / 6) * (area(0) + 4 * area(height / 2) + area(height));
}

describe("holes on flat ground", () => {
  it.each([0, 0.5, 0.75, 1, 1.5, 3])("rectangular hole, walls run %f: prismoid", (slope) => {
    const { work, gap } = dug(
      siteOf({
        points: planePoints(0, 0, 0),
        works: [tank({ at: [1.3, -2.2], bearing: 33, walls: run(slope) })],
      }),
    );
    const exact = prismoid(3.6, 2.4, 2.15, slope);
    expect(apart(total(work().cut), exact)).toBeLessThan(EXACT);
    const reach = 2 * slope * 2.15;
    expect(apart(work().daylight, (3.6 + reach) * (2.4 + reach))).toBeLessThan(EXACT);
    expect(work().deepest).toBeCloseTo(2.15, 12);
    expect(gap).toBeLessThan(1e-11);
  });

  it("layers of a hole with sloped walls are prismoids one above the other", () => {
    const { work } = dug(
      siteOf({
        points: planePoints(0, 0, 0),
        layers: ["topsoil", "clay", "limestone"],
        probes: [[10, 10, 0.3, 0.9]],
        works: [tank({ bearing: 71, walls: run(0.75) })],
      }),
    );
    const below = [2.15, 1.85, 0.95].map((height) => prismoid(3.6, 2.4, height, 0.75));
    const { cut } = work();
    expect(apart(cut["topsoil"]!, below[0]! - below[1]!)).toBeLessThan(EXACT);
    expect(apart(cut["clay"]!, below[1]! - below[2]!)).toBeLessThan(EXACT);
    expect(apart(cut["limestone"]!, below[2]!)).toBeLessThan(EXACT);
  });

  it("an L-shaped hole with sloped walls: area, perimeter and mitred corners", () => {
    const outline: [number, number][] = [
      [0, 0],
      [9, 0],
      [9, 3],
      [4, 3],
      [4, 7],
      [0, 7],
    ];
    const [depth, slope] = [1.4, 0.8];
    const { work, gap } = dug(
      siteOf({
        points: planePoints(0, 0, 2),
        works: [pad({ outline, top: 2 - depth, walls: run(slope) })],
      }),
    );
    // Offset by t the area is A + P·t + (5 outward − 1 inward corner)·t², for right angles.
    const exact = 43 * depth + (32 * slope * depth ** 2) / 2 + (4 * slope ** 2 * depth ** 3) / 3;
    expect(apart(total(work().cut), exact)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(1e-11);
  });

  it("a triangular hole: mitres as long as its sharp corners make them", () => {
    const outline: [number, number][] = [
      [0, 0],
      [12, 0],
      [0, 5],
    ];
    const [depth, slope] = [1.2, 0.5];
    const { work } = dug(
      siteOf({
        points: planePoints(0, 0, 0),
        works: [pad({ outline, top: -depth, walls: run(slope) })],
      }),
    );
    // Grown by t about its incircle (radius 2) a triangle keeps its shape: A (1 + t/r)².
    const area = (t: number): number => 30 * (1 + t / 2) ** 2;
    const reach = slope * depth;
    const exact = (depth / 6) * (area(0) + 4 * area(reach / 2) + area(reach));
    expect(apart(total(work().cut), exact)).toBeLessThan(EXACT);
  });

  it("benches: boxes one on the other", () => {
    const { work } = dug(
      siteOf({
        points: planePoints(0, 0, 0),
        works: [tank({ walls: { by: "benches", rise: 0.8, tread: 0.5 } })],
      }),
    );
    const exact = 3.6 * 2.4 * 0.8 + 4.6 * 3.4 * 0.8 + 5.6 * 4.4 * 0.55;
    expect(apart(total(work().cut), exact)).toBeLessThan(EXACT);
  });
});

describe("holes on a plane slope", () => {
  it("vertical walls: floor area × depth at the centre", () => {
    const { work } = dug(
      siteOf({
        points: planePoints(0.2, -0.1, 5),
        works: [tank({ at: [2, 3], bearing: 20, base: 3, walls: run(0) })],
      }),
    );
    const depth = 5 + 0.2 * 2 - 0.1 * 3 - 2.85;
    expect(apart(total(work().cut), 3.6 * 2.4 * depth)).toBeLessThan(EXACT);
  });

  it("a wedge: vertical-walled pad that the slope leaves at its lower side", () => {
    // z = x/4, subgrade 0, pad from x = −4 to 6: cut where x > 0, a wedge.
    const { work } = dug(
      siteOf({
        points: planePoints(0.25, 0, 0),
        works: [
          pad({
            outline: [
              [-4, -3],
              [6, -3],
              [6, 3],
              [-4, 3],
            ],
            walls: run(0),
            fillRun: 0,
          }),
        ],
      }),
    );
    expect(apart(total(work().cut), (6 * 6 * 1.5) / 2)).toBeLessThan(EXACT);
    expect(apart(work().fill["native"]!, (6 * 4 * 1) / 2)).toBeLessThan(EXACT);
    expect(apart(work().daylight, 36)).toBeLessThan(EXACT);
  });

  it.each([
    [0.2, 1, 2],
    [0.1, 0.5, 1.5],
    [0.3, 1.5, 1],
  ])("half-cut, half-fill pad, grade %f, walls run %f, sides run %f", (g, slope, fillRun) => {
    const [half, width] = [5, 8];
    const { work, gap } = dug(
      siteOf({ points: planePoints(g, 0, 0), works: [pad({ walls: run(slope), fillRun })] }),
    );
    // Along the slope: a triangle to the zero line at x = 0, then the wall's triangle beyond the
    // edge, up to where the wall meets the hill. At the two sides: wedges whose depth at x is
    // g·x, cut off by the corner's mitre.
    const face = g * half;
    const middle =
      (width * (g * half ** 2)) / 2 + (width * face ** 2 * slope) / 2 / (1 - g * slope);
    const side = (slope * g ** 2 * half ** 3) / 3 / 2;
    // Corner: between the end wall's and the side wall's planes (mitre at 45°) and the hill.
    const corner = cornerVolume(g, face, slope);
    expect(apart(total(work().cut), middle + 2 * (side + corner))).toBeLessThan(1e-11);
    const fillMiddle =
      (width * (g * half ** 2)) / 2 + (width * face ** 2 * fillRun) / 2 / (1 - g * fillRun);
    const fillSide = (fillRun * g ** 2 * half ** 3) / 3 / 2;
    const fillCorner = cornerVolume(g, face, fillRun);
    const fill = fillMiddle + 2 * (fillSide + fillCorner);
    expect(apart(work().fill["native"]!, fill)).toBeLessThan(1e-11);
    expect(gap).toBeLessThan(1e-11);
  });
});

/**
 * Volume of a mitred outward corner of right angle below a hill z = face + g·u (u outwards along
 * the slope, v across): ∫∫ max(0, face + g·u − max(u, v)/slope) over u, v > 0. The region is the
 * triangle pair (0,0)–(U,0)–(U,U)–(0,V) with U = face·slope/(1 − g·slope), V = face·slope; the
 * height is linear on the pyramids over it, face at the corner and 0 on the outside.
 */
function cornerVolume(g: number, face: number, slope: number): number {
  const u = (face * slope) / (1 - g * slope);
  const v = face * slope;
  // Area of (0,0), (U,0), (U,U), (0,V); every outside edge lies at height 0: a cone over it.
  const area = (u * u) / 2 + (u * v) / 2;
  return (area * face) / 3;
}

describe("trenches", () => {
  const flat = planePoints(0, 0, 0);

  it("vertical walls, level: length × width × depth", () => {
    const { work, gap } = dug(siteOf({ points: flat, works: [trench()] }));
    expect(apart(total(work().cut), 16 * 0.6 * 1.105)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(1e-11);
  });

  it("sloped walls, level: length × (width + run·depth) × depth", () => {
    const { work } = dug(siteOf({ points: flat, works: [trench({ walls: run(1.5) })] }));
    expect(apart(total(work().cut), 16 * (0.6 + 1.5 * 1.105) * 1.105)).toBeLessThan(EXACT);
  });

  it("vertical walls with fall: length × width × mean depth", () => {
    const grade = { by: "fall", start: -1, fall: 0.02 } as const;
    const { work, result } = dug(
      siteOf({ points: flat, works: [trench({ pipes: [pipe({ grade })] })] }),
    );
    expect(apart(total(work().cut), 16 * 0.6 * (1.105 + 0.16))).toBeLessThan(EXACT);
    expect(work().floor.lowest).toBeCloseTo(-1.425, 12);
    expect(work().floor.highest).toBeCloseTo(-1.105, 12);
    expect(result.pipes[0]!.fall).toBeCloseTo(0.02, 12);
    expect(result.pipes[0]!.drop).toBeCloseTo(0.32, 12);
    expect(result.pipes[0]!.cover.least).toBeCloseTo(1 - 0.1 - 0.005, 12);
    expect(result.pipes[0]!.cover.most).toBeCloseTo(1 - 0.1 - 0.005 + 0.32, 12);
  });

  it("sloped walls with fall: the integral of (width + run·depth)·depth", () => {
    const grade = { by: "inverts", start: -1, end: -1.8 } as const;
    const { work } = dug(
      siteOf({ points: flat, works: [trench({ walls: run(0.5), pipes: [pipe({ grade })] })] }),
    );
    const [d0, d1] = [1.105, 1.905];
    const square = (d0 ** 2 + d0 * d1 + d1 ** 2) / 3;
    expect(apart(total(work().cut), 16 * (0.6 * ((d0 + d1) / 2) + 0.5 * square))).toBeLessThan(
      EXACT,
    );
  });

  it.each([90, -90])(
    "bend of %d°, vertical walls: two rectangles and the corner's square",
    (turn) => {
      const path: [number, number][] = [
        [-6, 0],
        [0, 0],
        [0, turn > 0 ? 5 : -5],
      ];
      const { work } = dug(siteOf({ points: flat, works: [trench({ path, width: 0.8 })] }));
      const area = 6 * 0.8 + 5 * 0.8 - 0.4 * 0.4 + 0.4 * 0.4;
      expect(apart(total(work().cut), area * 1.105)).toBeLessThan(EXACT);
      expect(apart(work().daylight, area)).toBeLessThan(EXACT);
    },
  );

  it.each([
    [30, 0],
    [60, 0.5],
    [90, 1],
    [-120, 0.75],
    [135, 0],
  ])(
    "bend of %d°, walls run %f: mitred outside and inside leave length × section",
    (turn, slope) => {
      const angle = (turn * Math.PI) / 180;
      const path: [number, number][] = [
        [-9, 0],
        [0, 0],
        [9 * Math.cos(angle), 9 * Math.sin(angle)],
      ];
      const { work, gap } = dug(
        siteOf({ points: flat, works: [trench({ path, walls: run(slope) })] }),
      );
      // The kite outside a mitred bend is congruent with the overlap inside it, at every height.
      const section = (0.6 + slope * 1.105) * 1.105;
      expect(apart(total(work().cut), 18 * section)).toBeLessThan(1e-11);
      expect(gap).toBeLessThan(1e-11);
    },
  );
});

describe("a round pit as the limit of many-sided ones", () => {
  const [radius, depth] = [3, 2];
  const pit = (sides: number, slope: number): number => {
    const outline = Array.from({ length: sides }, (_, i): [number, number] => {
      // The sides touch the circle, so that they and their walls keep their distance from its axis.
      const reach = radius / Math.cos(Math.PI / sides);
      const angle = (2 * Math.PI * (i + 0.3)) / sides;
      return [1.5 + reach * Math.cos(angle), -2 + reach * Math.sin(angle)];
    });
    const works = [pad({ outline, top: -depth, walls: run(slope) })];
    const { work, gap } = dug(siteOf({ points: planePoints(0, 0, 0), works }));
    expect(gap).toBeLessThan(1e-11);
    return total(work().cut);
  };

  it.each([0, 0.5, 1, 1.5])("frustum of a pyramid, then of a cone, walls run %f", (slope) => {
    const top = radius + slope * depth;
    const cone = ((Math.PI * depth) / 3) * (radius ** 2 + radius * top + top ** 2);
    for (const sides of [3, 4, 7, 12, 48, 192]) {
      // Regular polygons about one circle: n·tan(π/n) in place of π, at every height.
      const ratio = (sides * Math.tan(Math.PI / sides)) / Math.PI;
      expect(apart(pit(sides, slope), ratio * cone)).toBeLessThan(1e-11);
    }
    expect(apart(pit(192, slope), cone)).toBeLessThan(1e-4);
  });

  it("a cone: walls from a floor next to nothing", () => {
    const outline = Array.from({ length: 96 }, (_, i): [number, number] => {
      const angle = (2 * Math.PI * i) / 96;
      return [1e-4 * Math.cos(angle), 1e-4 * Math.sin(angle)];
    });
    const works = [pad({ outline, top: -3, walls: run(1.5) })];
    const { work } = dug(siteOf({ points: planePoints(0, 0, 0), works }));
    expect(apart(total(work().cut), (Math.PI * 4.5 ** 2 * 3) / 3)).toBeLessThan(5e-4);
  });
});

describe("a stair of benches", () => {
  const box = (length: number, width: number, height: number): number => length * width * height;

  it.each([
    [0.5, 0.5],
    [0.8, 0.3],
    [1, 1.2],
    [2.15, 1],
    [3, 1],
  ])("rise %f, tread %f: boxes one on the other, the top one as high as is left", (rise, tread) => {
    const works = [tank({ bearing: 27, walls: { by: "benches", rise, tread } })];
    const { work, gap } = dug(siteOf({ points: planePoints(0, 0, 0), works }));
    let exact = 0;
    for (let bench = 0; bench * rise < 2.15 - 1e-12; bench++) {
      const grown = 2 * bench * tread;
      exact += box(3.6 + grown, 2.4 + grown, Math.min(rise, 2.15 - bench * rise));
    }
    expect(apart(total(work().cut), exact)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(1e-11);
  });

  it("up a plane hillside: every tread leaves a prism below the slope", () => {
    // z = x/4 + 1.5, floor at 0 from x = −2 to 2 and y = −50 to 50: a long cut, looked at per metre
    // by taking a trench 4 m wide along y, whose ends are vertical.
    const [rise, tread, g] = [0.5, 0.4, 0.25];
    const works = [
      trench({
        path: [
          [0, -50],
          [0, 50],
        ],
        width: 4,
        bedding: { depth: 0, material: "crushed-gravel" },
        walls: { by: "benches", rise, tread },
        pipes: [pipe({ grade: { by: "inverts", start: 0.005, end: 0.005 } })],
      }),
    ];
    const { work } = dug(siteOf({ points: planePoints(g, 0, 1.5), works }));
    // Along x, from the floor outwards: each shelf from a to b at height h is cut where the ground
    // x·g + 1.5 stands above it.
    const strip = (a: number, b: number, h: number): number => {
      const start = Math.max(a, (h - 1.5) / g);
      if (start >= b) return 0;
      return ((b - start) * (g * start + 1.5 - h + g * b + 1.5 - h)) / 2;
    };
    let section = strip(-2, 2, 0);
    for (let bench = 1; bench < 60; bench++) {
      const [near, far] = [2 + (bench - 1) * tread, 2 + bench * tread];
      section += strip(near, far, bench * rise) + strip(-far, -near, bench * rise);
    }
    expect(section).toBeGreaterThan(6);
    expect(apart(total(work().cut), 100 * section)).toBeLessThan(EXACT);
  });
});
