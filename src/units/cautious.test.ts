import { describe, expect, it } from "vitest";
import { distanceAtLeast, distanceAtMost } from "./cautious.js";
import { FOOT } from "./table.js";

describe("distances on the cautious side", () => {
  it("are cut down or rounded up at the last digit shown", () => {
    expect(distanceAtMost(8.879, "metric")).toBe("8.87 m");
    expect(distanceAtLeast(8.871, "metric")).toBe("8.88 m");
    expect(distanceAtMost(29.19 * FOOT, "us")).toBe("29.1 ft");
    expect(distanceAtLeast(70.81 * FOOT, "us")).toBe("70.9 ft");
  });

  it("leave alone what is whole but for noise", () => {
    expect(distanceAtMost(30.48 - 1e-12, "us")).toBe("100.0 ft");
    expect(distanceAtLeast(0.1 + 0.2, "metric")).toBe("0.30 m");
  });
});
