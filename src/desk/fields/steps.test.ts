import { describe, expect, it } from "vitest";
import { bearing, elevation, length, money, pipeSlope, size } from "../../units/index.js";
import type { Measure, PrintOptions, UnitSystem } from "../../units/index.js";
import { percent } from "./percent.js";
import { stepped } from "./steps.js";

const FOOT = 0.3048;

function up(measure: Measure, from: number, system: UnitSystem, print?: PrintOptions): string {
  const next = stepped({ measure, system, from, by: 1, large: false, print });
  return measure.print(next, system, print);
}

describe("a step by an arrow key", () => {
  it("goes by what is set out on the ground", () => {
    expect(up(length, FOOT, "us")).toBe("1′ 1″");
    expect(up(length, 0.3, "metric")).toBe("0.35 m");
    expect(up(elevation, 2410.39 * FOOT, "us")).toBe("2,410.40 ft");
    expect(up(pipeSlope, 0.02, "us")).toBe("2.1%");
    expect(up(percent, 0.05, "us")).toBe("6%");
    expect(up(bearing, 90, "us")).toContain("91");
    expect(up(money("USD"), 36, "us", { digits: 2 })).toBe("$37.00");
    expect(up(money("USD"), 1500, "us", { digits: 2 })).toBe("$1,600.00");
    expect(up(size, 0.125 * 0.0254, "us", { digits: 3 })).toBe("0.156 in");
  });

  it("takes a value between two steps to the next one on either side", () => {
    const step = { measure: length, system: "us", from: 1.03 * FOOT, large: false } as const;
    expect(length.print(stepped({ ...step, by: 1 }), "us")).toBe("1′ 1″");
    expect(length.print(stepped({ ...step, by: -1 }), "us")).toBe("1′ 0″");
  });

  it("goes by a foot of inches, or ten steps, with Shift", () => {
    const step = { system: "us", by: 1, large: true } as const;
    expect(length.print(stepped({ ...step, measure: length, from: FOOT }), "us")).toBe("2′ 0″");
    const metric = { ...step, system: "metric", measure: length, from: 0.5 } as const;
    expect(length.print(stepped(metric), "metric")).toBe("1.00 m");
  });

  it("comes back to where it was, up and down, a hundred times over", () => {
    let value = 0.15;
    for (let n = 0; n < 100; n += 1) {
      for (const by of [1, -1] as const) {
        value = stepped({ measure: length, system: "metric", from: value, by, large: false });
      }
    }
    expect(value).toBeCloseTo(0.15, 9);
  });
});
