/**
 * Friction in full pipes.
 *
 * Sources: 77 Illinois Administrative Code 906, Appendix A, Exhibit I (Schedule 40, C 150, feet per
 * 100 ft); the Hazen–Williams worked example 200 gpm through 3.048 in; a textbook problem on
 * Swamee–Jain (L 6 m, D 0.3 m, V 2 m/s). Inside diameters: ASTM D1785.
 */
import { describe, expect, it } from "vitest";
import {
  coefficientOf,
  darcyFactor,
  fittingLength,
  frictionSlope,
  minorLoss,
  swameeJain,
  waterViscosity,
} from "../../src/hydraulics/index.js";
import { flow as flowUnits } from "../../src/units/index.js";

const INCH = 0.0254;
const gpm = (value: number): number => flowUnits.fromSystem(value, "us");
const C150 = { by: "hazen-williams", c: 150 } as const;

const BORES = [1.049, 1.38, 1.61, 2.067, 3.068];
/** gpm, then ft per 100 ft at each bore; null where the table is blank. */
const TABLE: readonly (readonly [number, ...(number | null)[]])[] = [
  [5, 1.52, 0.39, 0.18, null, null],
  [10, 5.5, 1.46, 0.7, 0.21, null],
  [15, null, 3.06, 1.45, 0.44, 0.07],
  [20, null, 5.23, 2.46, 0.74, 0.12],
  [30, null, null, 5.22, 1.54, 0.23],
  [40, null, null, null, 2.62, 0.39],
  [50, null, null, null, 3.98, 0.58],
];

describe("77 Ill. Adm. Code 906 App. A Exh. I: Schedule 40, C 150", () => {
  for (const [gallons, ...losses] of TABLE) {
    losses.forEach((loss, i) => {
      if (loss === null) return;
      const bore = BORES[i]!;
      it(`${gallons} gpm in ${bore} in loses ${loss} ft per 100 ft`, () => {
        const got = 100 * frictionSlope(C150, gpm(gallons), bore * INCH);
        // Printed to 0.01 ft, and its own diameters differ a little: within 4% and one last digit.
        expect(Math.abs(got - loss)).toBeLessThan(0.04 * loss + 0.01);
      });
    });
  }
});

it("200 gpm through 30 ft of 3.048 in at C 140 loses 2.7 ft (worked example)", () => {
  const law = { by: "hazen-williams", c: 140 } as const;
  const metres = frictionSlope(law, gpm(200), 3.048 * INCH) * 30 * 0.3048;
  expect(metres / 0.3048).toBeCloseTo(2.7, 1);
});

describe("textbook problem: 6 m of 0.3 m pipe at 2 m/s, roughness 0.12 mm", () => {
  // The problem's Re of 599,993 comes from its flow as rounded; the law needs only V D / ν.
  const reynolds = (2 * 0.3) / 1e-6;
  it("has a friction factor of 0.0169 by Swamee and Jain", () => {
    expect(swameeJain(reynolds, 0.12 / 300)).toBeCloseTo(0.0169, 4);
  });
  it("loses 0.069 m", () => {
    const law = { by: "darcy", roughness: 0.12e-3, viscosity: 1e-6 } as const;
    const lost = 6 * frictionSlope(law, 2 * (Math.PI / 4) * 0.09, 0.3);
    expect(lost).toBeCloseTo(0.069, 3);
  });
});

describe("Colebrook and White's equation", () => {
  it("holds for the factor, over the whole range (the equation itself is the check)", () => {
    for (const reynolds of [4000, 2e4, 1e5, 1e6, 1e8]) {
      for (const rough of [0, 1e-6, 1e-4, 1e-2, 0.05]) {
        const f = darcyFactor(reynolds, rough);
        const right = -2 * Math.log10(rough / 3.7 + 2.51 / (reynolds * Math.sqrt(f)));
        expect(Math.abs(1 / Math.sqrt(f) - right)).toBeLessThan(1e-10);
      }
    }
  });
  it("is within 3% of Swamee and Jain in the range that they give", () => {
    for (const reynolds of [5000, 1e5, 1e8]) {
      for (const rough of [1e-6, 1e-3, 0.05]) {
        const ratio = darcyFactor(reynolds, rough) / swameeJain(reynolds, rough);
        expect(Math.abs(ratio - 1)).toBeLessThan(0.035);
      }
    }
  });
  it("meets 64/Re and never lets the loss fall as the flow grows", () => {
    expect(darcyFactor(1000, 1e-3)).toBe(0.064);
    let before = 0;
    for (let reynolds = 1500; reynolds < 6000; reynolds += 10) {
      const loss = darcyFactor(reynolds, 1e-4) * reynolds ** 2;
      expect(loss).toBeGreaterThan(before);
      before = loss;
    }
  });
});

it("water at 20 °C has a kinematic viscosity of 1.004e-6 m²/s (handbooks; recalled), within 2.5%", () => {
  expect(Math.abs(waterViscosity(20) / 1.004e-6 - 1)).toBeLessThan(0.025);
});

describe("fittings as lengths of pipe (handbook table, second-hand)", () => {
  it("gives the table's own rows", () => {
    expect((fittingLength("elbow-90", 2.067 * INCH) ?? NaN) / 0.3048).toBeCloseTo(5.7, 3);
    expect((fittingLength("tee-branch", 1.049 * INCH) ?? NaN) / 0.3048).toBeCloseTo(6, 3);
  });
  it("lies between two rows for a bore between them, and knows what it lacks", () => {
    const between = (fittingLength("elbow-90", 1.5 * INCH) ?? NaN) / 0.3048;
    expect(between).toBeGreaterThan(3.8);
    expect(between).toBeLessThan(4);
    expect(fittingLength("whistle", 0.05)).toBeUndefined();
  });
  it("as K loses just what the length loses", () => {
    const k = coefficientOf(1.7, C150, 1e-3, 0.05);
    expect(minorLoss(k, 1e-3, 0.05)).toBeCloseTo(1.7 * frictionSlope(C150, 1e-3, 0.05), 12);
  });
});
