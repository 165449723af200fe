/**
 * Total head of a pumped system, and the pump that meets it.
 *
 * Sources: US EPA 625/1-80-012, Onsite Wastewater Treatment and Disposal Systems (1980), Example 7-3:
 * 54 gpm at 9.5 ft, dose 450/4 = 112 gal; University of Minnesota pump selection forms (three filled
 * ones, length × 1.25 for fittings); N.J.A.C. 7:9A-9.7 (total head = friction + lift + distal head).
 */
import { describe, expect, it } from "vitest";
import {
  headFor,
  isCurveProblem,
  operatingPoint,
  planDose,
  pumpCurve,
  solveNetwork,
  type NetworkNode,
  type PumpCurve,
} from "../../src/hydraulics/index.js";

const FOOT = 0.3048;
const GALLON = 3.785411784e-3;
const GPM = GALLON / 60;

function curveOf(points: readonly (readonly [number, number])[]): PumpCurve {
  const made = pumpCurve(points.map(([flow, head]) => ({ flow, head })));
  if (isCurveProblem(made)) throw new Error(`curve: ${made.text}`);
  return made;
}

/** A pipe that loses `per100` ft per 100 ft at `gallons` by Hazen–Williams: the C that does so. */
function lawFor(per100: number, gallons: number, inside: number) {
  const at150 = (0.2083 * (100 / 150) ** 1.852 * gallons ** 1.852) / inside ** 4.8655;
  return { by: "hazen-williams", c: 150 * (at150 / per100) ** (1 / 1.852) } as const;
}

describe("EPA 1980, Example 7-3", () => {
  const bore = 3.068;
  // Four laterals of 13.5 gpm, stood for by a hole each that gives just that at 2 ft of head.
  const coefficient = 0.61;
  const area = (13.5 * GPM) / (coefficient * Math.sqrt(2 * 9.80665 * 2 * FOOT));
  const diameter = Math.sqrt((4 * area) / Math.PI);
  const nodes: NetworkNode[] = [
    { id: "pump", parent: -1, elevation: 0 },
    {
      id: "bed",
      parent: 0,
      elevation: 7 * FOOT,
      link: {
        inside: bore * 0.0254,
        length: 75 * FOOT,
        law: lawFor(0.67, 54, bore),
        k: 0,
      },
    },
    ...[1, 2, 3, 4].map((i) => ({
      id: `lateral ${i}`,
      parent: 1,
      elevation: 7 * FOOT,
      outlet: { by: "orifice" as const, diameter, coefficient },
    })),
  ];
  it("wants 9.5 ft for 54 gpm", () => {
    expect(headFor(nodes, 54 * GPM) / FOOT).toBeCloseTo(9.5, 1);
  });
  it("a pump that gives 9.5 ft at 54 gpm delivers 54 gpm, 13.5 to each lateral", () => {
    const curve = curveOf([
      [0, 14 * FOOT],
      [54 * GPM, headFor(nodes, 54 * GPM)],
      [90 * GPM, 4 * FOOT],
    ]);
    const solved = solveNetwork(nodes, { by: "pump", water: 0, curve });
    expect(solved.outcome).toBe("solved");
    expect(solved.sourceFlow / GPM).toBeCloseTo(54, 6);
    expect(solved.discharge[3]! / GPM).toBeCloseTo(13.5, 6);
  });
  it("doses 112 gal four times a day", () => {
    const plan = planDose({
      shape: { by: "box", length: 2, width: 1.5 },
      height: 1.5,
      daily: (450 * GALLON) / 86400,
      volume: 112.5 * GALLON,
      drainBack: 0,
      off: 0.3,
      alarmAbove: 0.1,
      reserve: 0,
      pumpFlow: 54 * GPM,
      inflow: 0,
    });
    expect(plan.perDay).toBeCloseTo(4, 9);
    expect(plan.runTime).toBeCloseTo((112.5 / 54) * 60, 9);
  });
});

describe("University of Minnesota forms: lift + network + friction over length × 1.25", () => {
  for (const [gallons, lift, network, per100, length, total] of [
    [29, 28, 5, 1.55, 140, 35.7],
    [47, 15, 5, 3.99, 120, 26.0],
    [38, 15, 5, 3.67, 228, 30.5],
  ] as const) {
    it(`${gallons} gpm: ${total} ft`, () => {
      const bore = 2.067;
      const hole = Math.sqrt(
        (4 * gallons * GPM) / (0.61 * Math.sqrt(2 * 9.80665 * network * FOOT)) / Math.PI,
      );
      const nodes: NetworkNode[] = [
        { id: "pump", parent: -1, elevation: 0 },
        {
          id: "end",
          parent: 0,
          elevation: lift * FOOT,
          link: {
            inside: bore * 0.0254,
            length: length * 1.25 * FOOT,
            law: lawFor(per100, gallons, bore),
            k: 0,
          },
          outlet: { by: "orifice", diameter: hole, coefficient: 0.61 },
        },
      ];
      expect(headFor(nodes, gallons * GPM) / FOOT).toBeCloseTo(total, 1);
    });
  }
});

describe("a pump's curve", () => {
  const curve = curveOf([
    [0, 12],
    [0.001, 11],
    [0.002, 8.5],
    [0.003, 4],
  ]);
  it("passes its points and falls all the way", () => {
    for (const { flow, head } of curve.points) expect(curve.headAt(flow)).toBeCloseTo(head, 12);
    let before = Infinity;
    for (let flow = 0; flow <= 0.004; flow += 1e-5) {
      expect(curve.headAt(flow)).toBeLessThan(before + 1e-12);
      before = curve.headAt(flow);
    }
  });
  it("has the slope that its heads have", () => {
    for (const flow of [0.0003, 0.0015, 0.0027, 0.0035]) {
      const slope = (curve.headAt(flow + 1e-8) - curve.headAt(flow - 1e-8)) / 2e-8;
      expect(curve.slopeAt(flow) / slope).toBeCloseTo(1, 5);
    }
  });
  it("meets a system at the flow that the solver finds too", () => {
    const law = { by: "hazen-williams", c: 150 } as const;
    const nodes: NetworkNode[] = [
      { id: "pump", parent: -1, elevation: 0 },
      {
        id: "end",
        parent: 0,
        elevation: 5,
        link: { inside: 0.04, length: 40, law, k: 8 },
        outlet: { by: "orifice", diameter: 0.02, coefficient: 0.61 },
      },
    ];
    const solved = solveNetwork(nodes, { by: "pump", water: 0, curve });
    const point = operatingPoint(curve, (flow) => headFor(nodes, flow));
    if (point.kind !== "meets") throw new Error(`got ${point.kind}, expected an operating point`);
    expect(point.flow / solved.sourceFlow).toBeCloseTo(1, 8);
    expect(point.head / solved.sourceHead).toBeCloseTo(1, 8);
  });
  it("says when it cannot lift so high, and when it runs off its end", () => {
    expect(operatingPoint(curve, () => 13)).toEqual({ kind: "below-shut-off", short: 1 });
    expect(operatingPoint(curve, () => 3)).toEqual({ kind: "off-curve", most: 0.003, over: 1 });
  });
  it("refuses points that are no curve, naming the row", () => {
    const bad = (points: { flow: number; head: number }[]) => {
      const made = pumpCurve(points);
      return isCurveProblem(made) ? made.row : "made";
    };
    expect(bad([{ flow: 0, head: 5 }])).toBeNull();
    expect(
      bad([
        { flow: 0, head: 5 },
        { flow: 0.001, head: 6 },
      ]),
    ).toBe(1);
    expect(
      bad([
        { flow: 0.001, head: 3 },
        { flow: 0, head: 5 },
        { flow: 0.001, head: 2 },
      ]),
    ).not.toBe("made");
    expect(
      bad([
        { flow: 0, head: -5 },
        { flow: 1, head: -6 },
      ]),
    ).toBe(0);
  });
});
