import { describe, expect, it } from "vitest";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { groundReading } from "./groundReading.js";

describe("groundReading", () => {
  // 5 % down to the east; 0.3 m of topsoil over 1 m of clay over rock; a hole down to 97.8 m.
  const site = plainSite({
    height: (x) => 100 - 0.05 * x,
    layers: [0.3, 1],
    works: [plainTank({ overdig: 0.5 })],
  });

  it("tells height, slope and how deep each layer lies", () => {
    const reading = groundReading(site, "plan", "dug", [10, 5]);
    expect(reading?.height).toBe("99.50 m");
    expect(reading?.change).toBeNull();
    expect(reading?.slope).toBe("As found: falls 5.0% to the east");
    expect(reading?.layers.map(({ down }) => down)).toEqual([
      "on top",
      "0.30 m down",
      "1.30 m down",
    ]);
    expect(reading?.layers[0]?.name).toBe("Topsoil");
  });

  it("tells how far it has been dug, and what lies open there", () => {
    const reading = groundReading(site, "plan", "dug", [0, 0]);
    expect(reading?.height).toBe("97.80 m");
    expect(reading?.change).toContain("2.20 m below");
    expect(reading?.layers).toHaveLength(1);
    expect(reading?.layers[0]?.down).toBe("on top");
  });

  it("tells nothing beyond the survey, and calls level ground level", () => {
    expect(groundReading(site, "plan", "dug", [30, 0])).toBeNull();
    const flat = plainSite({ layers: [0.3, 1] });
    expect(groundReading(flat, "plan", "found", [3, 3])?.slope).toBe("As found: about level");
  });
});
