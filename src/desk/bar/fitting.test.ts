import { describe, expect, it } from "vitest";
import { countFitting } from "./fitting.js";

describe("countFitting", () => {
  it("keeps all when all fit, without asking for room for the menu", () => {
    expect(countFitting([50, 60, 70], 40, 10, 210)).toBe(3);
  });

  it("gives up from the end as many as the menu's button needs", () => {
    // 209 is one px short of all three; the menu takes 50, the first two 130.
    expect(countFitting([50, 60, 70], 40, 10, 209)).toBe(2);
    expect(countFitting([50, 60, 70], 40, 10, 180)).toBe(2);
    expect(countFitting([50, 60, 70], 40, 10, 179)).toBe(1);
  });

  it("puts all into the menu when none fits beside it", () => {
    expect(countFitting([50, 60], 40, 10, 80)).toBe(0);
  });

  it("never asks for a menu when there are no buttons", () => {
    expect(countFitting([], 40, 10, 0)).toBe(0);
  });
});
