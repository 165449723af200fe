import { describe, expect, it } from "vitest";
import { digOf, schemeOf, workOf } from "../dig/dig.fixture.js";
import { catalogueMaterials } from "../site/index.js";
import { planMachines } from "./plan.js";
import { cheapestOf, type PlannedTrial } from "./wholeCost.js";

const MATERIALS = catalogueMaterials();
const HOLE = workOf({
  id: "hole",
  cut: { topsoil: 6, "common-earth": 60, "weathered-rock": 10 },
  fill: { native: 40, "crushed-gravel": 3 },
  deepest: 2.6,
});

/** The job with one digger chosen by hand. */
const withDigger = (
  digger: string,
  wholeCost?: (m: { rental: { total: { likely: number } } }) => number,
) =>
  planMachines(schemeOf({ machines: { digger } }), digOf([HOLE]), MATERIALS, "metric", {
    ...(wholeCost && { wholeCost }),
  });

describe("comparing diggers by the whole job", () => {
  const plan = planMachines(schemeOf(), digOf([HOLE]), MATERIALS);
  const able = plan.candidates.filter(({ can }) => can);

  it("shows each the hire and the days that it has when chosen by hand", () => {
    expect(able.length).toBeGreaterThan(2);
    for (const candidate of able) {
      const chosen = withDigger(candidate.id);
      expect(candidate.price).toEqual(chosen.rental.total);
      expect(candidate.calendarDays).toBe(chosen.job.schedule.likely.calendarDays);
      expect(candidate.jobDays).toBe(chosen.job.schedule.likely.workingDays);
    }
  });

  it("takes none that another beats", () => {
    const best = able.find(({ id }) => id === plan.digger.id);
    for (const { whole } of able) expect(whole).toBeGreaterThanOrEqual(best?.whole ?? Infinity);
  });

  it("goes by the cost that is given, not by the hire", () => {
    // Turned about, the dearest to hire must win.
    const turned = planMachines(schemeOf(), digOf([HOLE]), MATERIALS, "metric", {
      wholeCost: ({ rental }) => -rental.total.likely,
    });
    const dearest = Math.max(...able.map(({ price }) => price.likely));
    expect(turned.rental.total.likely).toBe(dearest);
    expect(turned.digger.id).not.toBe(plan.digger.id);
  });

  it("takes the sooner of two that cost the same", () => {
    const one = (id: string, whole: number, calendarDays: number) =>
      ({ id, whole, job: { schedule: { likely: { calendarDays } } } }) as unknown as PlannedTrial;
    const [slow, quick, dear] = [one("slow", 900, 11), one("quick", 900, 9), one("dear", 901, 2)];
    expect(cheapestOf([slow, quick, dear])).toBe(quick);
    expect(cheapestOf([quick, slow])).toBe(quick);
    expect(cheapestOf([])).toBeUndefined();
  });
});
