import { describe, expect, it } from "vitest";
import { percent } from "./percent.js";

describe("a share in percent", () => {
  it.each([
    ["5%", "us", 0.05],
    ["5", "metric", 0.05],
    [" 7.5 % ", "us", 0.075],
    ["7,5 %", "metric", 0.075],
    ["0", "us", 0],
    ["0.5%", "us", 0.005],
  ] as const)("reads %s on a %s site", (text, units, value) => {
    const read = percent.parse(text, units);
    expect(read.ok && read.value).toBeCloseTo(value, 12);
  });

  it.each(["0.05", "1/4 in per ft", "1:50", "some", "-5%", ""])("refuses %s", (text) => {
    expect(percent.parse(text, "us").ok).toBe(false);
  });

  it("prints whole ones as such", () => {
    expect(percent.print(0.05, "us")).toBe("5%");
    expect(percent.print(0.075, "us")).toBe("7.5%");
  });
});
