import { describe, expect, it } from "vitest";
import { catalogueMaterials } from "../site/index.js";
import type { Work } from "../site/index.js";
import { catalogueDiggers } from "./catalogue.js";
import { digOf, schemeOf, trenchOf, workOf } from "../dig/dig.fixture.js";
import { planMachines } from "./plan.js";
import type { Range } from "./types.js";

const MATERIALS = catalogueMaterials();
const HOLE = workOf({
  id: "hole",
  cut: { topsoil: 6, "common-earth": 30, "weathered-rock": 10, "shelf-rock": 4 },
  fill: { native: 20, "crushed-gravel": 3 },
  deepest: 2.6,
});

const PILE: Work = { kind: "pile", id: "spoil", name: "Spoil", at: [0, 0], material: "native" };

function isOrdered(range: Range): boolean {
  return range.low <= range.likely && range.likely <= range.high;
}

describe("planning the machines", () => {
  it("gives zeros, not NaN, when there is nothing to dig", () => {
    const plan = planMachines(schemeOf(), digOf([]), MATERIALS);
    for (const range of [plan.hours, plan.days, plan.setUp, plan.fuel, plan.rental.total]) {
      expect(range).toEqual({ low: 0, likely: 0, high: 0 });
    }
    expect(plan.works).toEqual([]);
    expect(plan.findings).toEqual([]);
    expect(plan.digger.reason).toBe("nothing to dig");
    expect(JSON.stringify(plan)).not.toMatch(/null/);
  });

  it("adds up: materials to works, works and set-up to the job", () => {
    const plan = planMachines(schemeOf(), digOf([HOLE]), MATERIALS);
    const [work] = plan.works;
    if (!work) throw new Error("got no work");
    const sum = work.materials.reduce((total, line) => total + line.hours.likely, 0);
    expect(work.materials).toHaveLength(6);
    expect(work.hours.likely).toBeCloseTo(sum, 9);
    expect(plan.hours.likely).toBeCloseTo(sum + 2, 9);
    expect(plan.days.likely).toBe(Math.ceil(plan.hours.likely / 8));
    for (const range of [plan.hours, plan.days, plan.rental.cost, plan.rental.total, work.hours]) {
      expect(isOrdered(range)).toBe(true);
    }
    for (const line of work.materials) {
      expect(line.working.value).toBe(line.hours.likely);
      expect(isOrdered(line.hours)).toBe(true);
    }
  });

  it.each([["pile" as const], ["haul" as const]])(
    "counts what is left over once: in the hours, the fuel and on the meter (%s)",
    (end) => {
      const dig = digOf([HOLE]);
      const over = digOf([HOLE], { surplusLoose: 24 });
      const works = end === "pile" ? [PILE] : [];
      const plan = planMachines(schemeOf({ works }), over, MATERIALS);
      const without = planMachines(schemeOf(), dig, MATERIALS);
      const onMeter = plan.job.schedule.likely.uses.digger.reduce(
        (sum, { hours }) => sum + hours,
        0,
      );
      expect(plan.left?.hours.likely).toBeGreaterThan(1);
      expect(plan.hours.likely).toBeCloseTo(
        without.hours.likely + (plan.left?.hours.likely ?? 0),
        9,
      );
      expect(onMeter).toBeCloseTo(plan.hours.likely, 9);
      expect(plan.working.hours.inputs.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(
        plan.hours.likely,
        9,
      );
      expect(plan.fuel.likely / plan.hours.likely).toBeCloseTo(
        without.fuel.likely / without.hours.likely,
        12,
      );
    },
  );

  it("opens hours that the inputs shown reproduce", () => {
    const plan = planMachines(schemeOf(), digOf([HOLE]), MATERIALS);
    const earth = plan.works[0]?.materials.find((line) => line.material === "common-earth");
    if (!earth) throw new Error("got no line for earth");
    const [bank, loose, ...factors] = earth.working.inputs.map((input) => input.value);
    const product = factors.reduce((p, factor) => p * factor, 1);
    expect(((bank ?? 0) * (loose ?? 0)) / product).toBeCloseTo(earth.hours.likely, 9);
  });

  it("doubles the digging hours with the volume", () => {
    const once = workOf({ id: "a", cut: { clay: 12 }, deepest: 2 });
    const twice = workOf({ id: "a", cut: { clay: 24 }, deepest: 2 });
    const hours = (work: typeof once) =>
      planMachines(schemeOf({ machines: { digger: "digger-8t" } }), digOf([work]), MATERIALS)
        .works[0]?.dig.likely ?? NaN;
    expect(hours(twice)).toBeCloseTo(2 * hours(once), 9);
  });

  it("counts the hammer for hard rock, and only there", () => {
    const plan = planMachines(schemeOf(), digOf([HOLE]), MATERIALS);
    expect(plan.hammerHours.likely).toBeGreaterThan(0);
    expect(plan.hammerHours.likely).toBeLessThan(plan.hours.likely);
    expect(plan.rental.hammer.cost.likely).toBeGreaterThan(0);
    expect(plan.findings.map((f) => f.code)).toContain("machine.hammer");
    const soft = workOf({ id: "soft", cut: { "common-earth": 30, "weathered-rock": 5 } });
    const easy = planMachines(schemeOf(), digOf([soft]), MATERIALS);
    expect(easy.hammerHours).toEqual({ low: 0, likely: 0, high: 0 });
    expect(easy.rental.hammer.cost).toEqual({ low: 0, likely: 0, high: 0 });
  });
});

describe("choosing the digger", () => {
  it("takes the cheapest of those that reach the floor", () => {
    const deep = workOf({ id: "deep", cut: { "common-earth": 60 }, deepest: 4.2 });
    const plan = planMachines(schemeOf(), digOf([deep]), MATERIALS);
    const able = plan.candidates.filter((candidate) => candidate.can);
    expect(able.map((c) => c.id)).toEqual(["digger-8t", "digger-14t", "digger-20t"]);
    const best = Math.min(...able.map((c) => c.price.likely));
    expect(able.find((c) => c.id === plan.digger.id)?.price.likely).toBe(best);
    const short = plan.candidates.find((c) => c.id === "digger-3-5t");
    expect(short?.reason).toBe("digs to 3.10 m; deep needs 4.20 m");
  });

  it("says the reason in the site's units", () => {
    const deep = workOf({ id: "deep", cut: { "common-earth": 60 }, deepest: 4.2 });
    const plan = planMachines(schemeOf(), digOf([deep]), MATERIALS, "us");
    expect(plan.candidates[0]?.reason).toMatch(/′.*″/);
  });

  it("keeps the scheme's own digger but stops where it cannot reach", () => {
    const deep = workOf({ id: "deep", cut: { "common-earth": 60 }, deepest: 4.2 });
    const scheme = schemeOf({ machines: { digger: "digger-1-5t" } });
    const plan = planMachines(scheme, digOf([deep]), MATERIALS);
    expect(plan.digger.id).toBe("digger-1-5t");
    expect(plan.findings.find((f) => f.code === "machine.cannot")?.level).toBe("stop");
  });

  it("says so when no digger of the catalogue can, and shows the deepest", () => {
    const pit = workOf({ id: "pit", cut: { "common-earth": 900 }, deepest: 9 });
    const plan = planMachines(schemeOf(), digOf([pit]), MATERIALS);
    expect(plan.candidates.every((candidate) => !candidate.can)).toBe(true);
    expect(plan.digger.id).toBe("digger-20t");
    expect(plan.findings.map((f) => f.code)).toContain("machine.cannot");
  });

  it("rules out buckets wider than the trench", () => {
    const run = workOf({ id: "run", kind: "trench", cut: { "common-earth": 5 }, deepest: 1 });
    const scheme = schemeOf({ works: [trenchOf("run", 0.35)] });
    const plan = planMachines(scheme, digOf([run]), MATERIALS);
    const able = plan.candidates.filter((c) => c.can).map((c) => c.id);
    expect(able).toEqual(["digger-1-5t", "digger-3-5t", "digger-5-5t"]);
  });

  it("names a digger that the catalogue lacks", () => {
    const scheme = schemeOf({ machines: { digger: "steam-shovel" } });
    const plan = planMachines(scheme, digOf([HOLE]), MATERIALS);
    expect(plan.findings.map((f) => f.code)).toContain("machine.unknown");
    expect(catalogueDiggers().map((d) => d.id)).toContain(plan.digger.id);
  });

  it("cautions at the end of its reach", () => {
    const edge = workOf({ id: "edge", cut: { clay: 20 }, deepest: 3.7 });
    const scheme = schemeOf({ machines: { digger: "digger-5-5t" } });
    const plan = planMachines(scheme, digOf([edge]), MATERIALS);
    expect(plan.findings.map((f) => [f.code, f.where])).toContainEqual([
      "machine.near-limit",
      "edge",
    ]);
  });
});

describe("the scheme's settings", () => {
  it("shorten the day and the hour", () => {
    const scheme = (machines: { hoursPerDay?: number; efficiency?: number }) =>
      planMachines(
        schemeOf({ machines: { digger: "digger-8t", ...machines } }),
        digOf([HOLE]),
        MATERIALS,
      );
    const usual = scheme({});
    expect(scheme({ hoursPerDay: 4 }).hours).toEqual(usual.hours);
    expect(scheme({ hoursPerDay: 4 }).days.likely).toBeGreaterThan(usual.days.likely);
    const half = scheme({ efficiency: 0.375 });
    const earth = (plan: typeof usual) =>
      plan.works[0]?.materials.find((m) => m.material === "topsoil")?.hours.likely ?? NaN;
    expect(earth(half)).toBeCloseTo(2 * earth(usual), 9);
  });

  it("set the rates", () => {
    const works = [workOf({ id: "small", cut: { topsoil: 2 }, deepest: 0.3 })];
    const free = planMachines(
      schemeOf({
        machines: { digger: "digger-8t" },
        prices: [
          { id: "digger-8t-day", price: 1, source: "quote" },
          { id: "digger-8t-delivery", price: 7 },
        ],
      }),
      digOf(works),
      MATERIALS,
    );
    expect(free.days.likely).toBe(1);
    expect(free.rental.total.likely).toBe(8);
    expect(free.rental.source).toMatch(/quote/);
  });
});
