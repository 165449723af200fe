import { describe, expect, it } from "vitest";
import { isIsoDay, todayIso } from "./isoDay.js";

describe("a day as year-month-day", () => {
  it.each(["2026-05-14", "2028-02-29", "1999-12-31"])("takes %s", (text) => {
    expect(isIsoDay(text)).toBe(true);
  });

  it.each(["14 May 2026", "2026-5-14", "2026-06-31", "2027-02-29", "2026-13-01", "2026-00-10", ""])(
    "refuses %s",
    (text) => {
      expect(isIsoDay(text)).toBe(false);
    },
  );

  it("writes today so", () => {
    expect(isIsoDay(todayIso())).toBe(true);
  });
});
