/**
 * Hire of machines against published terms.
 * Marks: read = seen in a copy of the source; second = seen quoted; recalled = from memory.
 */
import { describe, expect, it } from "vitest";
import {
  catalogueDiggers,
  cheapestCover,
  coverWith,
  HIRE_PERIODS,
} from "../../src/machines/index.js";

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

describe("hours beyond the meter, and the week against the day", () => {
  const rates = { day: 100, week: 350, fourWeeks: 1050 };

  it("are paid pro rata: rate ÷ included hours (rental terms, read)", () => {
    // One week of 40 h worked 50 h: ten hours at 350 ÷ 40.
    const { cover, overageHours, overage, price } = coverWith({ days: 7, hours: 50 }, rates);
    expect(cover).toEqual({ days: 0, weeks: 1, fourWeeks: 0 });
    expect(overageHours).toBe(10);
    expect(overage).toBeCloseTo((10 * 350) / 40, 9);
    expect(price).toBeCloseTo(350 + 87.5, 9);
    // One day of 8 h worked 10 h, and four weeks of 160 h worked 200 h.
    expect(coverWith({ days: 1, hours: 10 }, rates).overage).toBeCloseTo((2 * 100) / 8, 9);
    expect(coverWith({ days: 28, hours: 200 }, rates).overage).toBeCloseTo((40 * 1050) / 160, 9);
  });

  it("a week at 3.5 days' rate pays from the fourth day, below 3 from the third (week of 3 to 4, read)", () => {
    const weeks = (days: number, week: number) =>
      coverWith({ days, hours: 0 }, { day: 100, week, fourWeeks: 1050 }).cover.weeks;
    expect([2, 3, 4].map((days) => weeks(days, 350))).toEqual([0, 0, 1]);
    expect([2, 3, 4].map((days) => weeks(days, 290))).toEqual([0, 1, 1]);
    expect([3, 4, 5].map((days) => weeks(days, 410))).toEqual([0, 0, 1]);
  });
});
