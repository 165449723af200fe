import type { Estimate } from "./types.js";
import { materialsOf } from "../site/index.js";
import type { MaterialKind, Site } from "../site/index.js";

/** The five figures of the strip. SI; days are working days of the job; cost in the site's currency. */
export interface Figures {
  /** m³ bank, all works. */
  cut: number;
  /** m³ bank of rippable and hard rock. */
  rock: number;
  /** m³ loose that neither goes back nor stays. */
  spoil: number;
  /** Working days of the job by its likely schedule, and calendar days from first to last. */
  days: number;
  calendarDays: number;
  /** The machine that the days are reckoned with. */
  digger: { id: string; name: string };
  cost: { low: number; likely: number; high: number };
}

/** Whether a material counts as rock in the five figures: rippable or hard. */
export const isRock = (kind: MaterialKind | undefined): boolean =>
  kind === "rock" || kind === "rippable";

/** The five figures of an estimate. */
export function fiveFigures(estimate: Estimate, site: Site): Figures {
  const materials = materialsOf(site);
  let cut = 0;
  let rock = 0;
  for (const [id, volume] of Object.entries(estimate.cut)) {
    cut += volume;
    if (isRock(materials.get(id)?.kind)) rock += volume;
  }
  const { low, likely, high } = estimate.cost.total;
  return {
    cut,
    rock,
    spoil: estimate.earth.surplusLoose,
    days: estimate.machines.job.schedule.likely.workingDays,
    calendarDays: estimate.machines.job.schedule.likely.calendarDays,
    digger: { id: estimate.machines.digger.id, name: estimate.machines.digger.name },
    cost: { low, likely, high },
  };
}
