/**
 * Hire of machines against published terms.
 * Marks: read = seen in a copy of the source; second = seen quoted; recalled = from memory.
 */
import { describe, expect, it } from "vitest";
import { catalogueDiggers, cheapestCover, HIRE_PERIODS } from "../../src/machines/index.js";

describe("published rental terms", () => {
  it("the meter allows 8 h a day, 40 h a week and 160 to 176 h a month (read)", () => {
    expect(HIRE_PERIODS.day.hours).toBe(8);
    expect(HIRE_PERIODS.week.hours).toBe(40);
    expect(HIRE_PERIODS.fourWeeks.hours).toBeGreaterThanOrEqual(160);
    expect(HIRE_PERIODS.fourWeeks.hours).toBeLessThanOrEqual(176);
  });

  it("the catalogue's week is 3 to 4 days' rate (read), its four weeks about 3 weeks' (recalled)", () => {
    for (const { id, rates } of catalogueDiggers()) {
      const week = rates.week.likely / rates.day.likely;
      const fourWeeks = rates.fourWeeks.likely / rates.week.likely;
      expect(week, id).toBeGreaterThanOrEqual(3);
      expect(week, id).toBeLessThanOrEqual(4);
      expect(fourWeeks, id).toBeGreaterThanOrEqual(2.8);
      expect(fourWeeks, id).toBeLessThanOrEqual(3.2);
    }
  });

  it("so a week pays from the fourth day on, and four weeks from the fourth week on", () => {
    for (const { id, rates } of catalogueDiggers()) {
      const at = {
        day: rates.day.likely,
        week: rates.week.likely,
        fourWeeks: rates.fourWeeks.likely,
      };
      const cover = (days: number) => cheapestCover({ days, hours: 8 * days }, at);
      expect(cover(2), id).toEqual({ days: 2, weeks: 0, fourWeeks: 0 });
      expect(cover(4), id).toEqual({ days: 0, weeks: 1, fourWeeks: 0 });
      expect(cover(20), id).toEqual({ days: 0, weeks: 0, fourWeeks: 1 });
    }
  });
});
