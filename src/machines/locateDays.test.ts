import { describe, expect, it } from "vitest";
import { digOf, schemeOf, workOf } from "../dig/dig.fixture.js";
import { catalogueMaterials, setLocate } from "../site/index.js";
import type { Site } from "../site/index.js";
import { plainSite } from "../site/site.fixture.js";
import { afterWorkingDays, startsTooEarly, startsTooLate } from "./locateDays.js";
import { planMachines } from "./plan.js";

const LOCATE = { ticket: "A 12", date: "2027-04-01", days: 2 };

describe("the days after the locate call", () => {
  it("are whole working days after that of the call", () => {
    // A Thursday: Friday and Monday are waited, Tuesday is the first to dig on.
    expect(afterWorkingDays("2027-04-01", 2)).toBe("2027-04-06");
    expect(afterWorkingDays("2027-04-01", 0)).toBe("2027-04-02");
    // A Saturday: Monday and Tuesday are waited.
    expect(afterWorkingDays("2027-04-03", 2)).toBe("2027-04-07");
  });

  it("keep the job from starting before they are over, and not after", () => {
    const starts = (start: string) =>
      startsTooEarly({ locate: LOCATE }, schemeOf({ machines: { days: { start } } }));
    expect(starts("2027-04-05")[0]?.code).toBe("line.locate-early");
    expect(starts("2027-04-06")).toEqual([]);
    expect(startsTooEarly({}, schemeOf())).toEqual([]);
    // Days not entered: Friday and Monday are waited all the same.
    const { ticket, date } = LOCATE;
    const unsaid = (start: string) =>
      startsTooEarly({ locate: { ticket, date } }, schemeOf({ machines: { days: { start } } }));
    expect(unsaid("2027-04-05")[0]?.text).toContain("2 usual working days");
    expect(unsaid("2027-04-06")).toEqual([]);
  });

  it("warn of a ticket that may have run out, more than 14 days after its call", () => {
    const late = (start: string, locate: Site["locate"] = LOCATE) =>
      startsTooLate({ locate }, schemeOf({ machines: { days: { start } } }));
    // Ten business days after Thursday 1 April: Thursday 15 April.
    expect(afterWorkingDays("2027-04-01", 9)).toBe("2027-04-15");
    expect(late("2027-04-15")).toEqual([]);
    const [found] = late("2027-04-16");
    expect(found).toMatchObject({ level: "caution", code: "line.locate-old" });
    expect(found?.text).toContain("15 days after");
    expect(found?.source).toContain("76-2321");
    expect(late("2027-04-16", { ticket: "A 12" })).toEqual([]);
    expect(startsTooLate({ locate: LOCATE }, schemeOf())).toEqual([]);
  });

  it("stand in the schedule before anything else, until the call is written down", () => {
    const dig = digOf([workOf({ id: "t", cut: { clay: 9 }, deepest: 1 })]);
    const job = (locate?: { days: number | null }) =>
      planMachines(schemeOf(), dig, catalogueMaterials(), "us", locate && { locate }).job;
    const [called, setUp] = job({ days: 3 }).schedule.likely.tasks;
    expect(called).toMatchObject({ id: "locate", firstDay: 1, lastDay: 3 });
    expect(setUp).toMatchObject({ id: "set-up", firstDay: 4 });
    // None entered: two full business days, Nebraska Revised Statutes 76-2321.
    const unknown = job({ days: null });
    expect(unknown.tasks[0]?.name).toContain("2 working days taken; enter your state's");
    expect(unknown.tasks[0]?.source).toContain("Nebraska Revised Statutes 76-2321");
    expect(unknown.schedule.likely.tasks[1]?.firstDay).toBe(3);
    expect(job({ days: 0 }).schedule.likely.tasks[1]?.firstDay).toBe(1);
    expect(job().tasks[0]?.id).toBe("set-up");
  });

  it("are written into the site, and taken out of it again", () => {
    const site = plainSite({});
    const called = setLocate(site, LOCATE);
    expect(called.locate).toEqual(LOCATE);
    expect(setLocate(called, { days: undefined }).locate).toEqual({
      ticket: "A 12",
      date: "2027-04-01",
    });
    const none = { ticket: undefined, date: undefined, days: undefined };
    expect(setLocate(called, none)).toEqual(site);
  });
});
