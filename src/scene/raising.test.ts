import { describe, expect, it } from "vitest";
import { riseStep } from "./raising.js";

describe("the step of raising", () => {
  it("is 0.1 ft or 0.05 m", () => {
    expect(riseStep("us") / 0.3048).toBeCloseTo(0.1, 12);
    expect(riseStep("metric")).toBe(0.05);
  });
});
