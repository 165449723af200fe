/**
 * Published volume examples. Textbooks work by average end areas, average dimensions or grid
 * cells; the engine is exact. Each check names its method, and shows the exact figure beside it.
 */
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
  type Spot,
} from "../fixtures/site.js";

const FOOT = 0.3048;
const CUBIC_FOOT = FOOT ** 3;
const CUBIC_YARD = 27 * CUBIC_FOOT;

/** Volume by average end areas: each pair's mean area times the distance between them. */
function averageEndArea(sections: readonly (readonly [station: number, area: number])[]): number {
  return sections.slice(1).reduce((sum, [station, area], i) => {
    const [before, areaBefore] = sections[i]!;
    return sum + ((area + areaBefore) / 2) * (station - before);
  }, 0);
}

/**
 * A vertical-walled cut 1 m wide along x, whose depth at each station is the section's area: its
 * volume in the engine is what average end areas give, because the area varies straight between.
 */
function engineEndAreas(sections: readonly (readonly [station: number, area: number])[]): number {
  const last = sections[sections.length - 1]![0];
  const first = sections[0]![0];
  const points = sections.flatMap(([x, area]): Spot[] => [
    [x, 0, area],
    [x, 1, area],
  ]);
  // The ground ends with the sections, so the cut ends there too.
  const outline: [number, number][] = [
    [first, 0],
    [last, 0],
    [last, 1],
    [first, 1],
  ];
  const works = [pad({ outline, top: 0, walls: run(0), fillRun: 0 })];
  return total(dug(siteOf({ points, works })).work().cut);
}

describe("average end area", () => {
  it("Fundamentals of Transportation, earthwork chapter (read): 4,900 m³", () => {
    const sections = [
      [0, 40],
      [50, 42],
      [100, 19],
      [150, 34],
    ] as const;
    expect(averageEndArea(sections)).toBe(4900);
    expect(engineEndAreas(sections)).toBeCloseTo(4900, 8);
  });

  it("solved exercise to Dagostino & Peterson ch. 9 (read): 1,233 yd³", () => {
    const sections = [
      [830, 0],
      [850, 125],
      [900, 168],
      [950, 210],
      [1000, 144],
      [1050, 75],
      [1075, 0],
    ] as const;
    expect(Math.round(averageEndArea(sections) / 27)).toBe(1233);
    expect(engineEndAreas(sections) / 27).toBeCloseTo(averageEndArea(sections) / 27, 8);
  });

  it("a prism that tapers to a point: average end areas give 3/2 of the exact pyramid", () => {
    const works = [
      pad({
        outline: [
          [0, -2],
          [6, 0],
          [0, 2],
        ],
        top: 0,
        walls: run(0),
      }),
    ];
    // Ground 3 m above at x = 0 falling to the pad's point at x = 6.
    const exact = total(dug(siteOf({ points: planePoints(-0.5, 0, 3), works })).work().cut);
    expect(exact).toBeCloseTo((12 * 6) / 3, 9);
    expect(
      averageEndArea([
        [0, 12],
        [6, 0],
      ]) / exact,
    ).toBeCloseTo(1.5, 9);
  });
});

describe("grid cells, Dagostino & Peterson ch. 9: mean of the corner cuts × area", () => {
  /** A vertical-walled cell of 50 ft × 50 ft down to 0 with these cuts at its corners, in ft. */
  function engineCell(cuts: readonly [number, number, number, number]): number {
    const places = [
      [0, 0],
      [50, 0],
      [50, 50],
      [0, 50],
    ] as const;
    const points = places.map(([x, y], i): Spot => [x * FOOT, y * FOOT, cuts[i]! * FOOT]);
    const outline = places.map(([x, y]): [number, number] => [x * FOOT, y * FOOT]);
    const works = [pad({ outline, top: 0, walls: run(0), fillRun: 0 })];
    return total(dug(siteOf({ points, works })).work().cut) / CUBIC_FOOT;
  }
  const mean = (cuts: readonly number[]): number => cuts.reduce((a, b) => a + b, 0) / 4;

  it("Ex 9-8 (read): 1.4, 1.4, 1.2, 1.3 ft → 3,313 ft³ = 123 yd³; two triangles agree to 2 %", () => {
    const cuts = [1.4, 1.4, 1.3, 1.2] as const;
    const published = 2500 * mean(cuts);
    expect(Math.round(published)).toBe(3313);
    expect(Math.round(published / 27)).toBe(123);
    // Exact for the two triangles that the surface has: the shared edge's corners count twice.
    const byTriangles = [2500 / 6].flatMap((third) => [
      third * (2 * cuts[0] + cuts[1] + 2 * cuts[2] + cuts[3]),
      third * (cuts[0] + 2 * cuts[1] + cuts[2] + 2 * cuts[3]),
    ]);
    const exact = engineCell(cuts);
    expect(Math.min(...byTriangles.map((volume) => Math.abs(volume - exact)))).toBeLessThan(1e-6);
    expect(apart(exact, published)).toBeLessThan(0.02);
  });

  it("Ex 9-5 (read): 0.1, 0.8, 0, 0 ft → 563 ft³ by the mean; the triangles between give theirs", () => {
    const cuts = [0.1, 0.8, 0, 0] as const;
    expect(Math.round(2500 * mean(cuts))).toBe(563);
    const exact = engineCell(cuts);
    const byTriangles = [(2500 / 6) * (0.2 + 0.8), (2500 / 6) * (0.1 + 1.6)];
    expect(Math.min(...byTriangles.map((volume) => Math.abs(volume - exact)))).toBeLessThan(1e-6);
  });

  it("Ex 9-6 (read): between 0.3 ft of cut and 0.7 ft of fill 50 ft apart the zero line is at 15 ft", () => {
    const points = planePoints(-1 / 50, 0, 0.3 * FOOT);
    const outline: [number, number][] = [
      [0, 0],
      [50 * FOOT, 0],
      [50 * FOOT, FOOT],
      [0, FOOT],
    ];
    const works = [pad({ outline, top: 0, walls: run(0), fillRun: 0 })];
    const { daylight, cut, fill } = dug(siteOf({ points, works })).work();
    expect(daylight / FOOT / FOOT).toBeCloseTo(15, 9);
    expect(total(cut) / CUBIC_FOOT).toBeCloseTo((15 * 0.3) / 2, 9);
    expect(fill["native"]! / CUBIC_FOOT).toBeCloseTo((35 * 0.7) / 2, 9);
  });
});

/** A rectangular pit on level ground: floor, depth and wall run in feet; volume in ft³. */
function pit(length: number, width: number, depth: number, slope: number): number {
  const works = [
    tank({
      body: { length: length * FOOT, width: width * FOOT, height: FOOT },
      overdig: 0,
      base: -depth * FOOT,
      bedding: { depth: 0, material: "crushed-gravel" },
      walls: run(slope),
    }),
  ];
  return total(dug(siteOf({ points: planePoints(0, 0, 0), works })).work().cut) / CUBIC_FOOT;
}

describe("pits by average dimensions, beside the exact prismoid", () => {
  it("Dagostino & Peterson Ex 9-14 (read): 34'1\" × 40'4\" average × 8' at ½:1 → 10,997 ft³", () => {
    const [length, width] = [40 + 4 / 12, 34 + 1 / 12];
    expect(Math.abs(length * width * 8 - 10_997)).toBeLessThan(1.5);
    expect(Math.round((length * width * 8) / 27)).toBe(407);
    // The exact solid has (½·8)²·8/3·… more: by ½²·8³/3 than the average dimensions.
    const exact = pit(length - 4, width - 4, 8, 0.5);
    expect(exact).toBeCloseTo(length * width * 8 + (0.5 ** 2 * 8 ** 3) / 3, 6);
  });

  it("exercise (read): top 41'2\" × 53'2\", bottom 27'10\" × 39'10\", 10' → 16,042; exact 16,190.6", () => {
    const inches = (feet: number, more: number): number => feet + more / 12;
    const [top, bottom] = [
      [inches(41, 2), inches(53, 2)],
      [inches(27, 10), inches(39, 10)],
    ] as const;
    const average = ((top[0] + bottom[0]) / 2) * ((top[1] + bottom[1]) / 2) * 10;
    expect(Math.abs(average - 16_042)).toBeLessThan(1);
    const slope = (top[0] - bottom[0]) / 2 / 10;
    const exact = pit(bottom[1], bottom[0], 10, slope);
    expect(exact).toBeCloseTo(16_190.6, 1);
  });

  it("USDA Agriculture Handbook 590 Ponds (recalled): 12 ft deep, 40 × 100 ft, 2:1 → 3,612 yd³", () => {
    expect(Math.round(pit(100, 40, 12, 2) / 27)).toBe(3612);
  });
});

describe("OSHA training material on 29 CFR 1926 Subpart P (read): 2 ft bottom, 6 ft deep", () => {
  it.each([
    [1, 14],
    [1.5, 20],
  ])(
    "walls %f:1 → %d ft at the top, from the area where the trench cuts the ground",
    (slope, top) => {
      const length = 30 * FOOT;
      const invert = -6 * FOOT + 0.105;
      const works = [
        trench({
          path: [
            [0, 0],
            [length, 0],
          ],
          width: 2 * FOOT,
          walls: run(slope),
          pipes: [pipe({ grade: { by: "inverts", start: invert, end: invert } })],
        }),
      ];
      const { work } = dug(siteOf({ points: planePoints(0, 0, 0), works }));
      expect(work().daylight / length / FOOT).toBeCloseTo(top, 9);
      expect(work().deepest / FOOT).toBeCloseTo(6, 9);
    },
  );
});

describe("one wall on sloping ground (derived): offsets d·S/(1 ∓ g·S) from the floor's edges", () => {
  const [width, depth, g] = [8, 8, 0.2];

  /** Top width, ft, of a trench across a slope g with walls `slope`, and its tallest face, ft. */
  function crossSlope(grade: number, slope: number): { top: number; face: number } {
    const invert = -depth * FOOT + 0.105;
    const works = [
      trench({
        path: [
          [-5, 0],
          [5, 0],
        ],
        width: width * FOOT,
        walls: run(slope),
        pipes: [pipe({ grade: { by: "inverts", start: invert, end: invert } })],
      }),
    ];
    const { work } = dug(siteOf({ points: planePoints(0, grade, 0), works }));
    return { top: work().daylight / 10 / FOOT, face: work().tallestFace / FOOT };
  }

  it("8 ft wide, 8 ft deep, 20 %, 1½:1 → 18.86 and 8.31 ft, top 35.2 ft, uphill face 12.6 ft", () => {
    const up = ((depth + (g * width) / 2) * 1.5) / (1 - g * 1.5);
    const down = ((depth - (g * width) / 2) * 1.5) / (1 + g * 1.5);
    expect(up).toBeCloseTo(18.86, 2);
    expect(down).toBeCloseTo(8.31, 2);
    const { top, face } = crossSlope(g, 1.5);
    expect(top).toBeCloseTo(up + width + down, 9);
    expect(top).toBeCloseTo(35.2, 1);
    expect(face).toBeCloseTo(12.6, 1);
    expect(face).toBeCloseTo(up / 1.5, 9);
  });

  it("no daylight when g·S is 1 or more: the wall runs to the survey's edge, and a finding says so", () => {
    const works = [tank({ walls: run(2) })];
    const { result } = dug(siteOf({ points: planePoints(0, 0.6, 0), works }));
    expect(result.findings.map((f) => f.code)).toContain("survey.too-small");
  });
});

describe("bank yards", () => {
  it("1 yd³ is 27 ft³ is 0.764554857984 m³", () => {
    expect(CUBIC_YARD).toBeCloseTo(0.764554857984, 12);
  });
});
