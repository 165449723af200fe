import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cheapestCover, HIRE_PERIODS, hirePrice } from "./rental.js";
import type { HireRates } from "./rental.js";
import type { RentalCover } from "./types.js";

const RATES: HireRates = { day: 100, week: 350, fourWeeks: 1050 };

function covers(cover: RentalCover, need: { days: number; hours: number }): boolean {
  const { day, week, fourWeeks } = HIRE_PERIODS;
  const days = cover.days * day.days + cover.weeks * week.days + cover.fourWeeks * fourWeeks.days;
  const hours =
    cover.days * day.hours + cover.weeks * week.hours + cover.fourWeeks * fourWeeks.hours;
  return days >= need.days && hours >= need.hours;
}

/** Every mix up to the number of each that would do alone. */
function cheapestByTryingAll(need: { days: number; hours: number }, rates: HireRates): number {
  const upTo = (days: number, hours: number) => {
    const most = Math.max(Math.ceil(need.days / days), Math.ceil(need.hours / hours));
    return Array.from({ length: most + 1 }, (_, count) => count);
  };
  const mixes = upTo(1, 8).flatMap((days) =>
    upTo(7, 40).flatMap((weeks) => upTo(28, 160).map((fourWeeks) => ({ days, weeks, fourWeeks }))),
  );
  const enough = mixes.filter((mix) => covers(mix, need));
  return Math.min(...enough.map((mix) => hirePrice(mix, rates)));
}

describe("the cheapest cover", () => {
  it("is nothing for nothing", () => {
    expect(cheapestCover({ days: 0, hours: 0 }, RATES)).toEqual({
      days: 0,
      weeks: 0,
      fourWeeks: 0,
    });
  });

  it("takes days up to three, a week from four, and pays the meter over 40 hours", () => {
    const days = (n: number) => cheapestCover({ days: n, hours: 8 * n }, RATES);
    expect(days(3)).toEqual({ days: 3, weeks: 0, fourWeeks: 0 });
    expect(days(4)).toEqual({ days: 0, weeks: 1, fourWeeks: 0 });
    expect(days(5)).toEqual({ days: 0, weeks: 1, fourWeeks: 0 });
    expect(days(6)).toEqual({ days: 1, weeks: 1, fourWeeks: 0 });
    // 14 days of 8 h are 112 h: two weeks and four days are 1,100, four weeks 1,050.
    expect(days(14)).toEqual({ days: 0, weeks: 0, fourWeeks: 1 });
  });

  it("lets seven short days into one week", () => {
    expect(cheapestCover({ days: 7, hours: 35 }, RATES)).toEqual({
      days: 0,
      weeks: 1,
      fourWeeks: 0,
    });
  });

  it("equals trying every mix, whatever the rates", () => {
    const money = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(
        fc.record({
          days: fc.integer({ min: 0, max: 65 }),
          hours: fc.integer({ min: 0, max: 400 }),
        }),
        fc.record({ day: money, week: money, fourWeeks: money }),
        (need, rates) => {
          const cover = cheapestCover(need, rates);
          expect(covers(cover, need)).toBe(true);
          expect(hirePrice(cover, rates)).toBe(cheapestByTryingAll(need, rates));
        },
      ),
      { numRuns: 150 },
    );
  });

  it("still covers an absurd need, at once", () => {
    const need = { days: 1e9, hours: 8e9 };
    expect(covers(cheapestCover(need, RATES), need)).toBe(true);
  });

  it("refuses a need that is not finite", () => {
    expect(() => cheapestCover({ days: NaN, hours: 1 }, RATES)).toThrow(/NaN/);
  });
});
