/**
 * Doses, floats and drain-back.
 *
 * Sources: University of Minnesota, volume of liquid in pipe, gal per ft; a trade journal (2015): a
 * chamber of 42 × 60 in, 10.9 gal/in, floats 46 and 52 in below the surface, 65.6 gal; a trade
 * journal (2016): a chamber of 4 × 7 ft, 17.5 gal/in, cover 315 + dose 150 + alarm 88 + reserve 450 =
 * 1,003 gal, 57.1 in; US EPA 625/1-80-012 (1980), Example 7-3: a dose of 450 gal in four.
 */
import { describe, expect, it } from "vitest";
import { depthOf, pipeVolume, planDose, volumeBelow } from "../../src/hydraulics/index.js";

const INCH = 0.0254;
const FOOT = 0.3048;
const GALLON = 3.785411784e-3;

describe("University of Minnesota: gallons in a foot of pipe", () => {
  for (const [name, bore, gallons] of [
    ["1 in", 1.049, 0.045],
    ["1¼ in", 1.38, 0.078],
    ["1½ in", 1.61, 0.11],
    ["2 in", 2.067, 0.17],
    ["3 in", 3.068, 0.38],
    ["4 in", 4.026, 0.661],
  ] as const) {
    it(`${name}: ${gallons}`, () => {
      const got = pipeVolume([{ inside: bore * INCH, length: FOOT }]) / GALLON;
      // Printed to 0.001, some to 0.01 gal.
      expect(Math.abs(got - gallons)).toBeLessThan(0.0051);
    });
  }
});

describe("a chamber of 42 × 60 in (trade journal, 2015)", () => {
  const shape = { by: "box", length: 60 * INCH, width: 42 * INCH } as const;
  it("holds 10.9 gal an inch", () => {
    expect(volumeBelow(shape, INCH) / GALLON).toBeCloseTo(10.9, 1);
  });
  it("gives 65.6 gal between floats 46 and 52 in below the surface, alarm at 43", () => {
    const between = volumeBelow(shape, 26 * INCH) - volumeBelow(shape, 20 * INCH);
    // The source multiplies its rounded 10.9 gal/in, and prints 65.6.
    expect(Math.abs(between / GALLON - 65.6)).toBeLessThan(0.2);
    const plan = planDose({
      shape,
      height: 72 * INCH,
      daily: (300 * GALLON) / 86400,
      volume: between,
      drainBack: 0,
      off: 20 * INCH,
      alarmAbove: 3 * INCH,
      reserve: 0,
      pumpFlow: 1e-3,
      inflow: 0,
    });
    expect((plan.on ?? NaN) / INCH).toBeCloseTo(26, 8);
    expect((72 * INCH - (plan.alarm ?? NaN)) / INCH).toBeCloseTo(43, 8);
  });
});

describe("a chamber of 4 × 7 ft (trade journal, 2016)", () => {
  const shape = { by: "box", length: 7 * FOOT, width: 4 * FOOT } as const;
  it("holds 17.5 gal an inch, and 1,003 gal stand 57.1 in deep", () => {
    expect(volumeBelow(shape, INCH) / GALLON).toBeCloseTo(17.5, 1);
    const depth = depthOf(shape, 1003 * GALLON, 2) ?? NaN;
    // The source divides by its own gallons an inch, 17.5 to 17.57.
    expect(Math.abs(depth / INCH - 57.1)).toBeLessThan(0.4);
  });
  it("stacks cover, dose, alarm and reserve as the source does", () => {
    const plan = planDose({
      shape,
      height: 70 * INCH,
      daily: (450 * GALLON) / 86400,
      volume: 150 * GALLON,
      drainBack: 0,
      off: depthOf(shape, 315 * GALLON, 2) ?? NaN,
      alarmAbove: (88 / 17.45) * INCH,
      reserve: 450 * GALLON,
      pumpFlow: 1e-3,
      inflow: 0,
    });
    expect(Math.abs((plan.full ?? NaN) / INCH - 57.1)).toBeLessThan(0.5);
    expect(plan.perDay).toBeCloseTo(3, 12);
  });
});

describe("shapes", () => {
  it("a lying cylinder is half full at half its depth, and full at its whole", () => {
    const lying = { by: "lying", diameter: 1.2, length: 2 } as const;
    const all = Math.PI * 0.36 * 2;
    expect(volumeBelow(lying, 0.6)).toBeCloseTo(all / 2, 12);
    expect(volumeBelow(lying, 1.2)).toBeCloseTo(all, 12);
    expect(volumeBelow(lying, 3)).toBeCloseTo(all, 12);
  });
  it("goes back from volume to depth for each, and says when there is no room", () => {
    for (const shape of [
      { by: "box", length: 2, width: 1 },
      { by: "round", diameter: 1.3 },
      { by: "lying", diameter: 1.3, length: 2 },
      {
        by: "table",
        rows: [
          { depth: 0.2, volume: 0.1 },
          { depth: 1.2, volume: 2 },
        ],
      },
    ] as const) {
      for (const depth of [0.1, 0.5, 1.1]) {
        expect(depthOf(shape, volumeBelow(shape, depth), 1.2)).toBeCloseTo(depth, 9);
      }
      expect(depthOf(shape, 100, 1.2)).toBeNull();
    }
  });
});

describe("a dose", () => {
  const shape = { by: "box", length: 2, width: 1 } as const;
  const ask = {
    shape,
    height: 1.5,
    daily: 1 / 86400,
    volume: 0.25,
    drainBack: 0.05,
    off: 0.4,
    alarmAbove: 0.1,
    reserve: 1,
    pumpFlow: 1.5e-3,
    inflow: 0.5e-3,
  };
  it("draws the dose and what runs back, for as long as that takes against the inflow", () => {
    const plan = planDose(ask);
    expect(plan.drawn).toBeCloseTo(0.3, 12);
    expect(plan.on).toBeCloseTo(0.55, 9);
    expect(plan.runTime).toBeCloseTo(300, 9);
    expect(plan.hoursWithoutPower).toBeCloseTo((1.5 - 0.55) * 2 * 24, 6);
  });
  it("counts what is free to the inlet's invert where that is lower than the cover", () => {
    const plan = planDose({ ...ask, inlet: 1.2 });
    // 2 m² × (1.2 − 0.65) m over the alarm, and × (1.2 − 0.55) m over the start at 1 m³ a day.
    expect(plan.reserve).toBeCloseTo(1.1, 9);
    expect(plan.freeTo).toBe("inlet");
    expect(plan.hoursWithoutPower).toBeCloseTo((1.2 - 0.55) * 2 * 24, 6);
    expect(plan.full).toBeCloseTo(1.15, 9);
    expect(planDose({ ...ask, inlet: 1.1 }).full).toBeNull();
    const high = planDose({ ...ask, inlet: 1.6 });
    expect([high.reserve, high.freeTo]).toEqual([planDose(ask).reserve, "cover"]);
  });
  it("says where the chamber has no room, and when the pump loses against the inflow", () => {
    const low = planDose({ ...ask, height: 0.6 });
    expect(low.on).not.toBeNull();
    expect(low.alarm).toBeNull();
    expect(low.full).toBeNull();
    expect(planDose({ ...ask, height: 0.5 }).on).toBeNull();
    expect(planDose({ ...ask, inflow: 2e-3 }).runTime).toBeNull();
  });
});
