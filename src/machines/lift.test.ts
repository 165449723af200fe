import { describe, expect, it } from "vitest";
import { digOf, schemeOf, tankOf, workOf } from "../dig/dig.fixture.js";
import type { Lift, Limit, PlanPoint } from "../site/index.js";
import { checkLift } from "./lift.js";

const TABLE = [
  { radius: 6, load: 6000 },
  { radius: 8, load: 5000 },
  { radius: 10, load: 4000 },
];
const HALF = 2;
const DIG = digOf([
  workOf({
    id: "t",
    deepest: 2,
    tallestFace: 2,
    outlines: {
      daylight: [
        [
          [-HALF, -HALF],
          [HALF, -HALF],
          [HALF, HALF],
          [-HALF, HALF],
        ],
      ],
      toe: [],
    },
  }),
]);

interface Asked {
  at?: PlanPoint;
  emptyMass?: number | null;
  lift?: Partial<Lift>;
  crane?: Partial<Extract<Lift["crane"], { by: "table" }>>;
  limits?: Limit[];
}

function lifted(
  { at = [8, 0], emptyMass = 4500, lift = {}, crane = {}, limits = [] }: Asked = {},
  rise = 0,
  barriers: [number, number][][] = [],
) {
  const scheme = schemeOf({
    works: [tankOf("t", emptyMass === null ? {} : { emptyMass })],
    machines: {
      lift: {
        crane: { by: "table", name: "Crane", table: TABLE, block: 100, ...crane },
        rigging: 50,
        stands: [{ id: "s", name: "Drive", at }],
        ...lift,
      },
    },
  });
  const { result, findings } = checkLift(
    { units: "metric", limits },
    scheme,
    DIG,
    ([x]) => rise * x,
    barriers,
  );
  const tank = result?.tanks[0];
  const stand = tank?.stands[0];
  if (result === null || tank === undefined || stand === undefined) throw new Error("got no lift");
  return { result, tank, stand, against: stand.reasons.map(({ code }) => code), findings };
}

describe("the lift of a tank", () => {
  it("counts slings and block as load, and reads the chart at the longer radius", () => {
    const { tank, stand, result, findings } = lifted();
    expect(tank.load?.value).toBe(4650);
    expect(stand.radius.value).toBe(8);
    expect(stand.rated?.value).toBe(5000);
    expect(stand.share?.value).toBeCloseTo(0.93, 12);
    expect(stand).toMatchObject({ works: true, reasons: [] });
    expect(result.best).toBe("s");
    expect(findings.map(({ code }) => code)).toEqual(["lift.near-rating"]);
    expect(lifted({ at: [8.01, 0] }).stand.rated?.value).toBe(4000);
  });

  it("says at the stand itself what the findings warn of", () => {
    const stand = (asked: Asked, rise = 0, barriers: [number, number][][] = []) =>
      lifted(asked, rise, barriers).stand.warnings.map(({ code }) => code);
    expect(stand({ emptyMass: 3000 })).toEqual([]);
    expect(stand({})).toEqual(["near-rating"]);
    expect(stand({ emptyMass: 3000, crane: { outriggers: 4 } }, 0.06, [])).toEqual(["slope"]);
    const through: [number, number][] = [
      [9, -20],
      [9, 20],
    ];
    const past: [number, number][] = [
      [11, -20],
      [11, 20],
    ];
    const light = { emptyMass: 3000, crane: { outriggers: 4 } };
    expect(stand(light, 0, [through])).toEqual(["barrier"]);
    expect(stand(light, 0, [past])).toEqual([]);
    // A rating that is exceeded is a reason against, not a thing to be minded.
    expect(stand({ emptyMass: 4851 })).toEqual([]);
  });

  it("is against a load over the rating, not at it", () => {
    expect(lifted({ emptyMass: 4850 }).against).toEqual([]);
    const over = lifted({ emptyMass: 4851 });
    expect(over.against).toEqual(["over-rating"]);
    expect(over.result.best).toBeNull();
    expect(over.findings.map(({ code }) => code)).toContain("lift.no-stand");
  });

  it("has no rating beyond the chart", () => {
    expect(lifted({ at: [10, 0], emptyMass: 3000 }).against).toEqual([]);
    const beyond = lifted({ at: [10.01, 0], emptyMass: 3000 });
    expect(beyond.against).toEqual(["beyond-table"]);
    expect(beyond.stand.share).toBeNull();
  });

  it("invents no weight", () => {
    const none = lifted({ emptyMass: null });
    expect(none.tank.load).toBeNull();
    expect(none.against).toEqual(["no-weight"]);
    expect(none.findings.map(({ code }) => code)).toContain("lift.no-weight");
  });

  it("keeps 1.5 depths from the hole's edge unless told otherwise, from the nearest pad", () => {
    const light = { emptyMass: 1000 };
    expect(lifted({ ...light, at: [5.01, 0] }).against).toEqual([]);
    expect(lifted({ ...light, at: [4.99, 0] }).against).toEqual(["edge"]);
    expect(lifted({ ...light, at: [4.1, 0], lift: { edgeFactor: 1 } }).against).toEqual([]);
    const crane = { outriggers: 2 * Math.SQRT2 };
    expect(lifted({ ...light, at: [6.99, 0], crane }).against).toEqual(["edge"]);
    expect(lifted({ ...light, at: [7.01, 0], crane }).against).toEqual([]);
  });

  it("keeps boom and load from an overhead line, and asks first within 20 ft", () => {
    const half = Math.hypot(2.6, 1.5) / 2;
    const line = (room: number): Limit => {
      const x = 8 + 8 + half + room;
      return {
        id: "l",
        kind: "overhead-line",
        voltage: 12_000,
        path: [
          [x, -9],
          [x, 9],
        ],
      };
    };
    const near = lifted({ limits: [line(3.04)] });
    expect(near.against).toEqual(["line"]);
    const asked = lifted({ limits: [line(3.06)] });
    expect(asked.against).toEqual([]);
    expect(asked.findings.map(({ code }) => code)).toContain("lift.line-ask");
    const clear = lifted({ limits: [line(6.1)] });
    expect(clear.findings.map(({ code }) => code)).not.toContain("lift.line-ask");
  });

  it("presses on the ground with 65% of crane and load on one pad", () => {
    const crane = { mass: 15_350, padArea: 0.5 };
    const pressure = (0.65 * 20_000 * 9.80665) / 0.5;
    const kept = lifted({ crane, lift: { groundBearing: pressure + 1 } });
    expect(kept.stand.pad?.value).toBeCloseTo(pressure, 6);
    expect(kept.against).toEqual([]);
    expect(lifted({ crane, lift: { groundBearing: pressure - 1 } }).against).toEqual(["pad"]);
    expect(lifted({ lift: { groundBearing: 1 } }).stand.pad).toBeNull();
  });

  it("never says safe, and leaves it to the operator", () => {
    const { findings } = lifted({ emptyMass: 4851, at: [4, 0] });
    expect(findings.length).toBeGreaterThan(0);
    for (const { text } of findings) {
      expect(text).not.toMatch(/\bsafe/i);
      expect(text).toContain("The operator decides.");
    }
  });
});

describe("the crane", () => {
  const scheme = (id: string) =>
    schemeOf({
      works: [tankOf("t", { emptyMass: 4170 })],
      machines: {
        lift: {
          crane: { by: "catalogue", id },
          rigging: 60,
          stands: [
            { id: "near", name: "Near", at: [6, 0] },
            { id: "far", name: "Far", at: [20, 0] },
            { id: "mid", name: "Mid", at: [12, 0] },
          ],
        },
      },
    });

  it("of the catalogue is called invented, and the stand with the least share is best", () => {
    const { result, findings } = checkLift(
      { units: "us" },
      scheme("boom-truck-25t"),
      digOf([]),
      () => NaN,
    );
    expect(result?.tanks[0]?.stands.map(({ works }) => works)).toEqual([true, false, true]);
    expect(result?.best).toBe("near");
    expect(result?.tanks[0]?.stands[0]?.unlevel).toBeNull();
    expect(findings[0]?.code).toBe("lift.typical-crane");
  });

  it("is told of stands whose ground slopes more than 5%, all in one, and not of less", () => {
    const sloping = (slope: number) =>
      checkLift(
        { units: "us" },
        scheme("boom-truck-25t"),
        digOf([]),
        ([x]) => slope * x,
      ).findings.filter(({ code }) => code === "lift.slope");
    expect(sloping(0.0499)).toEqual([]);
    expect(sloping(0.0501)).toHaveLength(1);
    expect(sloping(0.06)[0]?.text).toContain("Near 6.0%, Far 6.0%, Mid 6.0%");
  });

  it("that the catalogue lacks gives a finding and no result", () => {
    const { result, findings } = checkLift({ units: "us" }, scheme("none"), digOf([]), () => 0);
    expect(result).toBeNull();
    expect(findings.map(({ code }) => code)).toEqual(["lift.unknown-crane"]);
  });

  it("is not asked for by a scheme without a lift", () => {
    const none = checkLift({ units: "us" }, schemeOf(), digOf([]), () => 0);
    expect(none).toEqual({ result: null, findings: [] });
  });
});
