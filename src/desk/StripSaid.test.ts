import { describe, expect, it } from "vitest";
import type { Figures } from "../store/index.js";
import { changesInWords } from "./StripSaid.js";

const SITE = { units: "us", currency: "USD" } as const;
const FIGURES: Figures = {
  cut: 40,
  rock: 5,
  spoil: 30,
  days: 6,
  calendarDays: 9,
  digger: { id: "mini", name: "Mini" },
  cost: { low: 1, likely: 1000, high: 3 },
};

describe("the strip read out", () => {
  it("tells what changed, from what to what", () => {
    const now = { ...FIGURES, cut: 41, cost: { ...FIGURES.cost, likely: 1250 } };
    expect(changesInWords(now, FIGURES, SITE)).toBe(
      "cut 53.6 yd³, was 52.3 yd³; cost $1,250, was $1,000",
    );
    expect(changesInWords(now, FIGURES, { ...SITE, units: "metric" })).toContain("cut 41.0 m³");
  });

  it("says nothing of what prints alike, or when nothing went before", () => {
    expect(changesInWords({ ...FIGURES, cut: 40.000001 }, FIGURES, SITE)).toBe("");
    expect(changesInWords(FIGURES, null, SITE)).toBe("");
  });
});
