import { describe, expect, it } from "vitest";
import { ticks } from "./ticks.js";

describe("ticks", () => {
  it("are round in the site's own unit", () => {
    expect(ticks(98.2, 100.6, 0.4, "metric").map(({ text }) => text)).toEqual([
      "98.5",
      "99.0",
      "99.5",
      "100.0",
      "100.5",
    ]);
    const feet = ticks(0, 6, 1.2, "us");
    expect(feet.map(({ text }) => text)).toEqual(["0", "5", "10", "15"]);
    expect(feet[1]!.at).toBeCloseTo(1.524, 9);
  });
});
