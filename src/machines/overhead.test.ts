import { describe, expect, it } from "vitest";
import { digOf, schemeOf, workOf } from "../dig/dig.fixture.js";
import type { Limit, Site } from "../site/index.js";
import { axisToEdge } from "./canIt.js";
import { catalogueDiggers } from "./catalogue.js";
import { checkOverhead, roomTo } from "./overhead.js";

const DIGGER = catalogueDiggers()[0]!;
const FT = 0.3048;
/** m from the hole's edge to the farthest that the digger swings. */
const SWING = axisToEdge(DIGGER, { scheme: {} }) + DIGGER.reach;
// Its fill is the site's own, so that no truck comes to it.
const HOLE = workOf({
  ...{ id: "t", name: "Tank", deepest: 2, fill: { native: 3 } },
  outlines: {
    daylight: [
      [
        [-2, -2],
        [0, -2],
        [0, 2],
        [-2, 2],
      ],
    ],
    toe: [],
  },
});

const line = (x: number, more: Partial<Limit> = {}): Limit => ({
  ...{ id: "l", kind: "overhead-line", name: "Line" },
  path: [
    [x, -30],
    [x, 30],
  ],
  ...more,
});

function check(
  limits: Limit[],
  given: { fill?: Record<string, number>; site?: Pick<Site, "rules"> } = {},
) {
  const { fill, site = {} } = given;
  const dig = digOf([fill === undefined ? HOLE : { ...HOLE, fill }]);
  return checkOverhead(DIGGER, { site, scheme: schemeOf(), dig, units: "us", limits });
}
const codes = (...given: Parameters<typeof check>): string[] =>
  check(...given).map(({ code }) => code);

describe("a digger under an overhead line (29 CFR 1926.1408, Table A, second)", () => {
  it("asks first within 20 ft of all that it can reach, and not beyond", () => {
    const known = { voltage: 12_000 };
    expect(codes([line(SWING + 20 * FT + 0.01, known)])).toEqual([]);
    expect(codes([line(SWING + 20 * FT - 0.01, known)])).toEqual(["line.overhead-ask"]);
  });

  it.each([
    [50_000, 10],
    [200_000, 15],
    [350_000, 20],
    [500_000, 25],
    [750_000, 35],
    [1_000_000, 45],
  ])("keeps at %i V %i ft off, on both sides", (voltage, feet) => {
    // Where the table asks for more than 20 ft, the site asks from there on.
    const site = { rules: [{ id: "line-ask", value: 50 * FT }] };
    const at = (room: number) => codes([line(SWING + room, { voltage })], { site });
    expect(at(feet * FT + 0.01)).toEqual(["line.overhead-ask"]);
    expect(at(feet * FT - 0.01)).toEqual(["line.overhead"]);
    // The next row begins just above.
    const next = codes([line(SWING + feet * FT + 0.01, { voltage: voltage + 1 })], { site });
    expect(next).toEqual([voltage === 1_000_000 ? "line.overhead-ask" : "line.overhead"]);
  });

  it("asks for a voltage that is not known, and keeps 20 ft until then", () => {
    const [found] = check([line(SWING + 19 * FT)]);
    expect(found?.code).toBe("line.overhead");
    expect(found?.text).toContain("voltage is not entered");
  });

  it("counts height where it is given: 3 m over and 4 m aside are 5 m", () => {
    expect(roomTo({ plan: 4, raised: 7 }, line(0, { height: 10 }))).toBeCloseTo(5, 12);
    expect(roomTo({ plan: 4, raised: 7 }, line(0))).toBe(4);
    expect(roomTo({ plan: 4, raised: 7 }, line(0, { height: 6 }))).toBe(4);
    const raised = 23 * FT;
    const over = (feet: number) =>
      codes([line(0, { voltage: 12_000, height: raised + feet * FT })]);
    expect(over(20.1)).toEqual([]);
    expect(over(19.9)).toEqual(["line.overhead-ask"]);
    expect(over(9.9)).toEqual(["line.overhead"]);
  });
});

describe("a dump truck under an overhead line", () => {
  const far = { voltage: 12_000 };

  it("is asked about where it tips, with its bed raised to the rule book's height", () => {
    const drive: Limit = {
      ...{ id: "d", kind: "drive", name: "Drive", width: 4 },
      path: [
        [100, -30],
        [100, 30],
      ],
    };
    expect(codes([line(102 + 21 * FT, far), drive])).toEqual([]);
    expect(codes([line(102 + 19 * FT, far), drive])).toEqual(["line.overhead-ask"]);
    const high = { ...far, height: 20 * FT + 9 * FT };
    expect(codes([line(100, high), drive])).toEqual(["line.overhead"]);
  });

  it("comes to holes that earth is brought to, and not to others", () => {
    const near = line(SWING + 1, far);
    expect(check([near])).toHaveLength(1);
    const close = line(1, far);
    expect(check([close])).toHaveLength(1);
    expect(check([close], { fill: { "pea-gravel": 2 } })).toHaveLength(2);
  });
});
