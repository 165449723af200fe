import { describe, expect, it } from "vitest";
import { wordingFor } from "../flow/index.js";
import type { WorkQuantities } from "../dig/index.js";
import type { Limit, PlanPoint, Scheme, Work } from "../site/index.js";
import { plainTank, plainTrench } from "../site/site.fixture.js";
import { checkLimits } from "./checkLimits.js";
import { publishedSetbacks, setbackTables } from "./setbacks.js";

const words = wordingFor("metric");

/** The findings on works near limits, and the distances asked for. */
function check(
  works: Work[],
  limits: Limit[],
  more: Partial<Scheme> = {},
  dug: WorkQuantities[] = [],
) {
  const scheme: Scheme = { id: "s", name: "S", works, ...more };
  return checkLimits({ limits }, scheme, dug, words);
}

const codes = ({ findings }: ReturnType<typeof check>): string[] =>
  findings.map(({ code }) => code);

/** A line north–south, so many metres east of the origin. */
const lineAt = (x: number): PlanPoint[] => [
  [x, -50],
  [x, 50],
];

/** A tank with its long side north–south, 2 m wide about the origin, and a field like it. */
const tank = plainTank({
  id: "t",
  at: [0, 0],
  bearing: 0,
  body: { length: 3, width: 2, height: 1.5 },
});
const bed: Work = {
  ...{ kind: "bed", id: "b", name: "Bed", at: [0, 0], bearing: 0, length: 6, width: 2 },
  ...{ height: 0.6, wall: 0, base: 100, filling: [] },
};

// Oregon Administrative Rules 340-071-0220, Table 1, in feet.
const TABLE: readonly [from: "field" | "tank", to: string, feet: number][] = [
  ["field", "well", 100],
  ["tank", "well", 50],
  ["field", "neighbour-well", 100],
  ["tank", "neighbour-well", 50],
  ["field", "watercourse", 100],
  ["tank", "watercourse", 50],
  ["field", "seasonal-watercourse", 50],
  ["tank", "seasonal-watercourse", 50],
  ["field", "lot-line", 10],
  ["tank", "lot-line", 5],
  ["field", "building", 10],
  ["tank", "building", 5],
  ["field", "water-line", 10],
  ["tank", "water-line", 10],
];

describe("the published table of setbacks", () => {
  it("holds these rows and no others", () => {
    expect(publishedSetbacks().map(({ from, to }) => `${from} ${to}`)).toEqual(
      TABLE.map(([from, to]) => `${from} ${to}`),
    );
  });

  it.each(TABLE)("%s to %s: %d ft, silent just beyond and told just within", (from, to, feet) => {
    const work = from === "tank" ? tank : bed;
    // The body ends 1 m east of the origin.
    const limit = (away: number): Limit => ({ id: "l", kind: to, path: lineAt(1 + away) });
    const wanted = feet * 0.3048;
    expect(codes(check([work], [limit(wanted + 0.001)]))).toEqual([]);
    const near = check([work], [limit(wanted - 0.01)]);
    expect(codes(near)).toEqual(["limit.too-near"]);
    expect(near.findings[0]?.source).toContain("340-071-0220");
    expect(near.setbacks[0]).toMatchObject({ from, to: "l", own: false });
    expect(near.setbacks[0]?.distance).toBeCloseTo(wanted - 0.01, 9);
    expect(near.setbacks[0]?.wanted).toBeCloseTo(wanted, 9);
  });
});

describe("what distances are measured between", () => {
  it("a trench is a field where the scheme says that it takes the water, and has its width", () => {
    const trench = plainTrench({ id: "f", path: lineAt(0), width: 1 });
    const well: Limit = { id: "w", kind: "well", at: [31, 0] };
    expect(codes(check([trench], [well]))).toEqual([]);
    const [kept] = check([trench], [well], { flow: { field: ["f"] } }).setbacks;
    // 31 m from the path, less half the width.
    expect(kept).toMatchObject({ from: "field", distance: 30.5 });
    const nearer: Limit = { ...well, at: [30.9, 0] };
    expect(codes(check([trench], [nearer], { flow: { field: ["f"] } }))).toEqual([
      "limit.too-near",
    ]);
  });

  it("buildings of the scheme count as buildings", () => {
    const house = (x: number): Work => ({
      ...{ kind: "building", id: "h", name: "House", base: 100, height: 3 },
      outline: [
        [x, -5],
        [x + 8, -5],
        [x + 8, 5],
        [x, 5],
      ],
    });
    expect(codes(check([tank, house(2.53)], []))).toEqual([]);
    expect(codes(check([tank, house(2.5)], []))).toEqual(["limit.too-near"]);
  });

  it("a lot line is a line: what lies within is no nearer for that", () => {
    const lot: Limit = {
      ...{ id: "l", kind: "lot-line", closed: true },
      path: [
        [-20, -20],
        [20, -20],
        [20, 20],
        [-20, 20],
      ],
    };
    const inside = check([tank], [lot]);
    expect(codes(inside)).toEqual([]);
    expect(inside.setbacks[0]?.distance).toBeCloseTo(18.5, 9);
    // The side that closes it counts as well: the body then reaches 0.5 m from x = -20.
    const near = check([{ ...tank, at: [-18.5, 0] } as Work], [lot]);
    expect(near.setbacks[0]?.distance).toBeCloseTo(0.5, 9);
    const easement: Limit = { ...lot, id: "e", kind: "easement" };
    expect(codes(check([tank], [easement]))).toEqual(["limit.crossed"]);
  });

  it("what lies beyond a lot line that closes is told, however far off", () => {
    const lot: Limit = {
      ...{ id: "l", kind: "lot-line", closed: true },
      path: [
        [40, -20],
        [80, -20],
        [80, 20],
        [40, 20],
      ],
    };
    const beyond = check([tank], [lot]);
    expect(codes(beyond)).toEqual(["limit.outside-lot"]);
    expect(beyond.setbacks[0]).toMatchObject({ distance: 0, outside: true });
    // The same line drawn open bounds nothing.
    expect(codes(check([tank], [{ ...lot, closed: false }]))).toEqual([]);
    const inside = check([{ ...tank, at: [60, 0] } as Work], [lot]);
    expect(codes(inside)).toEqual([]);
    expect(inside.setbacks[0]?.outside).toBeUndefined();
  });

  it("a site's own table stands in place of the published one, the greater of it and a limit's own", () => {
    const well: Limit = { id: "w", kind: "well", at: [21, 0] };
    const scheme: Scheme = { id: "s", name: "S", works: [tank] };
    const rows = [{ from: "tank", to: "well", distance: 20.1, source: "our county, table 3" }];
    const own = checkLimits({ limits: [well], setbacks: rows }, scheme, [], words);
    expect(own.findings[0]?.source).toContain("our county, table 3");
    const found = (over: Partial<Limit>) =>
      checkLimits({ limits: [{ ...well, ...over }], setbacks: rows }, scheme, [], words);
    // 20 m off: the greater of the two holds, unless the person says that the limit's own replaces it.
    expect(found({ setback: 19 }).setbacks[0]).toMatchObject({ wanted: 20.1, own: false });
    expect(found({ setback: 19 }).findings).toHaveLength(1);
    expect(found({ setback: 20.2 }).setbacks[0]).toMatchObject({ wanted: 20.2, own: true });
    const replaced = found({ setback: 19, setbackReplaces: true });
    expect(replaced.findings).toMatchObject([
      {
        ...{
          level: "caution",
          code: "limit.less-than-table",
          where: "w",
          source: "our county, table 3",
        },
        text: expect.stringContaining("asks 20.10 m of a tank") as string,
      },
    ]);
    expect(replaced.setbacks[0]).toMatchObject({ wanted: 19, own: true });
    expect(replaced.setbacks[0]?.source).toContain("replace the greater one of the table");
    // Nothing replaces a row by saying so alone.
    expect(found({ setbackReplaces: true }).setbacks[0]).toMatchObject({ wanted: 20.1 });
    expect(found({ setback: 0, setbackReplaces: true }).findings).toHaveLength(1);
  });
});

describe("the edge of a hole", () => {
  const dug = (half: number): WorkQuantities => ({
    ...{ id: "t", name: "Tank 1", kind: "tank", cut: {}, fill: {}, displaced: 0 },
    ...{ floor: { lowest: 0, highest: 0 }, deepest: 2, tallestFace: 2, daylight: 4 * half * half },
    materialsMet: [],
    outlines: {
      daylight: [
        [
          [-half, -half],
          [half, -half],
          [half, half],
          [-half, half],
        ],
      ],
      toe: [],
    },
  });

  it("is told when it opens over a lot line that the tank keeps off, and not just before", () => {
    const lot: Limit = { id: "l", kind: "lot-line", path: lineAt(3) };
    expect(codes(check([tank], [lot], {}, [dug(2.99)]))).toEqual([]);
    expect(codes(check([tank], [lot], {}, [dug(3.01)]))).toEqual(["limit.hole-over"]);
  });

  it("is told when it cuts into a tree's circle of roots, and not just before", () => {
    const bare: Limit = { id: "x", kind: "tree", at: [7, 0] };
    const tree: Limit = { ...bare, radius: 4 };
    expect(codes(check([tank], [tree], {}, [dug(2.99)]))).toEqual([]);
    expect(codes(check([tank], [tree], {}, [dug(3.01)]))).toEqual(["limit.roots"]);
    expect(codes(check([tank], [bare], {}, [dug(6)]))).toEqual([]);
  });

  it("keeps a distance of its own where a table asks for one", () => {
    const lot: Limit = { id: "l", kind: "lot-line", path: lineAt(5) };
    const rows = [{ from: "dig", to: "lot-line", distance: 1, source: "our county" }];
    const scheme: Scheme = { id: "s", name: "S", works: [tank] };
    const at = (half: number) =>
      checkLimits({ limits: [lot], setbacks: rows }, scheme, [dug(half)], words).findings;
    expect(at(3.99)).toEqual([]);
    expect(at(4.02)[0]?.text).toContain("The hole for");
  });
});

// Clark County Code 24.17.120 (Clark County, Washington), field and tank, in feet. What it says of
// surface water stands for watercourses, of wells for neighbours' too.
const CLARK: readonly [to: string, field: number, tank: number][] = [
  ["well", 100, 50],
  ["neighbour-well", 100, 50],
  ["watercourse", 100, 50],
  ["lot-line", 5, 5],
  ["building", 10, 5],
];

describe("the other published tables", () => {
  it("begin with the one that stands until a site has its own", () => {
    expect(setbackTables()[0]?.rows).toBe(publishedSetbacks());
  });

  it("hold Clark County's", () => {
    const rows = setbackTables().find(({ id }) => id === "clark-county")?.rows ?? [];
    expect(
      rows.map(({ from, to, distance }) => [from, to, Math.round(distance / 0.003048) / 100]),
    ).toEqual(
      CLARK.flatMap(([to, field, tank]) => [
        ["field", to, field],
        ["tank", to, tank],
      ]),
    );
    for (const { source } of rows) expect(source).toContain("24.17.120");
  });

  it.each(CLARK)("%s: silent just beyond, told just within", (to, field, tankFeet) => {
    const rows = setbackTables().find(({ id }) => id === "clark-county")?.rows ?? [];
    for (const [work, feet] of [
      [bed, field],
      [tank, tankFeet],
    ] as const) {
      const at = (metres: number): Limit[] => [{ id: "x", kind: to, path: lineAt(1 + metres) }];
      const scheme: Scheme = { id: "s", name: "S", works: [work] };
      const found = (metres: number) =>
        codes(checkLimits({ limits: at(metres), setbacks: [...rows] }, scheme, [], words));
      expect(found(feet * 0.3048 + 0.01)).toEqual([]);
      expect(found(feet * 0.3048 - 0.01)).toEqual(["limit.too-near"]);
    }
  });
});

describe("an area kept for a second field", () => {
  const reserve: Limit = {
    ...{ id: "r", kind: "reserve-field", name: "Reserve area", closed: true },
    path: [
      [-2, -3],
      [2, -3],
      [2, 3],
      [-2, 3],
    ],
  };
  const line = (off: number): Limit => ({
    ...{ id: "l", kind: "lot-line", name: "Lot line", path: lineAt(2 + off) },
  });
  // Oregon Administrative Rules 340-071-0220, Table 1: a field 10 ft off a lot line.
  const asked = 10 * 0.3048;

  it("keeps what a field keeps: silent just beyond, told just within", () => {
    expect(codes(check([], [reserve, line(asked + 0.01)]))).toEqual([]);
    const near = check([], [reserve, line(asked - 0.01)]);
    expect(near.findings).toMatchObject([{ level: "caution", code: "limit.too-near", where: "r" }]);
    expect(near.findings[0]?.text).toMatch(/^Reserve area is 3\.0\d m from Lot line/);
    expect(near.findings[0]?.source).toContain("340-071-0220");
  });

  it("is listed with its distances, also from buildings, after those of the works", () => {
    const house: Work = {
      ...{ kind: "building", id: "h", name: "House", base: 100, height: 3 },
      outline: [
        [-20, -3],
        [-10, -3],
        [-10, 3],
        [-20, 3],
      ],
    };
    const { setbacks } = check([house, { ...bed, at: [40, 0] }], [reserve, line(60)]);
    const mine = setbacks.filter((kept) => kept.reserve === true);
    expect(mine.map(({ from, to, distance }) => [from, to, distance])).toEqual([
      ["field", "l", 60],
      ["field", "h", 8],
    ]);
    expect(setbacks.slice(-2)).toEqual(mine);
  });

  it("is told where it lies outside the lot", () => {
    const lot: Limit = {
      ...{ id: "lot", kind: "lot-line", name: "Lot line", closed: true },
      path: [
        [10, -30],
        [60, -30],
        [60, 30],
        [10, 30],
      ],
    };
    expect(check([], [reserve, lot]).findings).toMatchObject([
      { code: "limit.outside-lot", where: "r" },
    ]);
  });
});
