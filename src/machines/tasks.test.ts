import { describe, expect, it } from "vitest";
import { digOf, schemeOf, tankOf, trenchOf, workOf } from "../dig/dig.fixture.js";
import { catalogueMaterials } from "../site/index.js";
import type { Scheme } from "../site/index.js";
import { catalogueDiggers } from "./catalogue.js";
import { daysSettings } from "./daysSettings.js";
import type { Task } from "./dayTypes.js";
import { hiredThings, hiresOf } from "./hires.js";
import { planMachines } from "./plan.js";
import { schedule } from "./schedule.js";
import { tasksOf } from "./tasks.js";

const MATERIALS = catalogueMaterials();
const TANK = workOf({
  id: "tank",
  cut: { "common-earth": 20, "shelf-rock": 2 },
  fill: { "crushed-gravel": 1, native: 12 },
  deepest: 2,
});
const TRENCH = workOf({
  id: "trench",
  kind: "trench",
  cut: { "common-earth": 8 },
  fill: { "crushed-gravel": 2, native: 5 },
  deepest: 1,
});

function job(days: NonNullable<Scheme["machines"]>["days"] = {}) {
  const scheme = schemeOf({
    works: [tankOf("tank"), trenchOf("trench", 0.6)],
    machines: { digger: "digger-3-5t", days },
  });
  const dig = digOf([TANK, TRENCH], { surplusLoose: 20 });
  const machines = planMachines(scheme, dig, MATERIALS);
  const settings = daysSettings(scheme);
  return { machines, settings, tasks: tasksOf(scheme, dig, machines, MATERIALS, settings) };
}

function hoursOf(tasks: readonly Task[], work: string, kinds: Task["kind"][]): number {
  const own = tasks.filter((task) => task.work === work && kinds.includes(task.kind));
  return own.reduce((sum, { hours }) => sum + hours.likely, 0);
}

describe("tasks of a job", () => {
  it("dig and place just the hours of the works, rock with the hammer", () => {
    const { machines, tasks } = job();
    for (const work of machines.works) {
      expect(hoursOf(tasks, work.id, ["dig", "break"])).toBeCloseTo(work.dig.likely, 9);
      const placed = hoursOf(tasks, work.id, ["bed", "zone", "backfill"]);
      expect(placed).toBeCloseTo(work.place.likely, 9);
    }
    const broken = tasks.filter(({ needs }) => needs.includes("hammer")).map(({ id }) => id);
    expect(broken).toEqual(["tank:break"]);
  });

  it("backfill only after test and inspection, and lay pipe only when the tank is set", () => {
    const { settings, tasks } = job();
    const { likely } = schedule(tasks, settings);
    const at = (id: string) => {
      const timed = likely.tasks.find((task) => task.id === id);
      if (!timed) throw new Error(`got no task ${id}`);
      return timed;
    };
    expect(at("tank:backfill").start).toBeGreaterThanOrEqual(at("tank:inspect").end);
    expect(at("tank:inspect").start).toBeGreaterThanOrEqual(at("tank:stand").end);
    expect(at("trench:lay").start).toBeGreaterThanOrEqual(at("tank:set").end);
    expect(at("trench:dig").start).toBeGreaterThanOrEqual(at("tank:break").end);
    expect(at("haul").start).toBeGreaterThanOrEqual(at("trench:backfill").end);
  });

  it("wait longer for a slow inspection, and the digger stands idle meanwhile", () => {
    const days = (inspectionWait: number) => {
      const { settings, tasks } = job({ inspectionWait, weather: 0 });
      return schedule(tasks, settings).likely;
    };
    expect(days(6).workingDays - days(1).workingDays).toBe(5);
    expect(days(6).uses.digger.length).toBe(days(1).uses.digger.length);
  });

  it("keep a person alone from laying while digging", () => {
    const { tasks } = job({ crew: 1 });
    const digging = tasks.filter(({ needs }) => needs.includes("digger"));
    expect(digging.every(({ needs }) => needs.includes("crew"))).toBe(true);
    expect(digging.length).toBeGreaterThan(3);
  });

  it("are none where nothing is dug", () => {
    const scheme = schemeOf();
    const machines = planMachines(scheme, digOf([]), MATERIALS);
    expect(tasksOf(scheme, digOf([]), machines, MATERIALS, daysSettings(scheme))).toEqual([]);
  });
});

describe("hires of a job", () => {
  it("price every thing that is used, from low to high, with its idle days", () => {
    const { machines, settings, tasks } = job({ inspectionWait: 8 });
    const digger = catalogueDiggers().find(({ id }) => id === machines.digger.id);
    if (!digger) throw new Error("got no digger");
    const planned = schedule(tasks, settings);
    const hires = hiresOf(hiredThings(digger, undefined), planned);
    expect(hires.map(({ resource }) => resource)).toEqual([
      "digger",
      "hammer",
      "compactor",
      "craneTruck",
      "dumpTruck",
    ]);
    for (const { price, plans, resource } of hires) {
      expect(price.low).toBeLessThanOrEqual(price.likely);
      expect(price.likely).toBeLessThanOrEqual(price.high);
      const onSite = plans.likely.stays.reduce((sum, { from, to }) => sum + to - from + 1, 0);
      expect(onSite - plans.likely.idleDays).toBe(planned.likely.uses[resource].length);
    }
  });

  it("take the scheme's own price", () => {
    const { machines, settings, tasks } = job();
    const digger = catalogueDiggers().find(({ id }) => id === machines.digger.id);
    if (!digger) throw new Error("got no digger");
    const priced = hiredThings(digger, [{ id: "crane-truck-day", price: 1234 }]);
    const crane = hiresOf(priced, schedule(tasks, settings)).find((h) => h.id === "crane-truck");
    expect(crane?.price).toEqual({ low: 1234, likely: 1234, high: 1234 });
  });
});
