import { describe, expect, it } from "vitest";
import { riseStep } from "./pickedKeys.js";

describe("the step that Page Up raises by", () => {
  it("is round in the person's units", () => {
    expect(riseStep("us") / 0.3048).toBeCloseTo(0.1, 12);
    expect(riseStep("metric")).toBe(0.05);
  });
});
