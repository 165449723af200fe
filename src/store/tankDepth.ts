/** How deep a tank lies where it was moved to, and the depth that it had where it stood. */
import { groundAt } from "../estimate/index.js";
import { changeWork, findWork } from "../site/index.js";
import type { History, PlanPoint, Site, Tank } from "../site/index.js";

/** Ground as found over a tank's middle; m. */
export interface TankDepth {
  /** Ground over its top; negative where it stands out. Null beyond the survey. */
  cover: number | null;
  /** Where it stood when its level was set, and how much higher the ground is here; null: there. */
  moved: { from: PlanPoint; rise: number } | null;
}

/** m: less than this is finer than a tank is set. */
const SAME = 0.005;

/** The depth of a tank of the history's present site. */
export function tankDepth(history: History, schemeId: string, tankId: string): TankDepth | null {
  const site = history.present;
  const tank = tankOf(site, schemeId, tankId);
  if (tank === null) return null;
  const ground = groundAt(site, tank.at);
  const from = levelSetAt(history, schemeId, tank);
  const before = groundAt(site, from);
  const rise = ground === null || before === null ? 0 : ground - before;
  return {
    cover: ground === null ? null : ground - tank.base - tank.body.height,
    moved: Math.abs(rise) <= SAME ? null : { from, rise },
  };
}

/** The site with the tank as deep as it was where it stood. */
export function withDepthKept(
  site: Site,
  schemeId: string,
  tankId: string,
  { rise }: NonNullable<TankDepth["moved"]>,
): Site {
  return changeWork(site, schemeId, tankId, (work) =>
    work.kind === "tank" ? { ...work, base: work.base + rise } : work,
  );
}

/** Where the tank stood earliest, with the level that it has now never changed since. */
function levelSetAt({ past, mark }: History, schemeId: string, tank: Tank): PlanPoint {
  const sites = [...past.map(({ site }) => site), ...(mark === null ? [] : [mark.site])];
  let from = tank.at;
  for (const site of sites.reverse()) {
    const was = tankOf(site, schemeId, tank.id);
    if (was === null || was.base !== tank.base) break;
    from = was.at;
  }
  return from;
}

function tankOf(site: Site, schemeId: string, tankId: string): Tank | null {
  const work = findWork(site, schemeId, tankId);
  return work?.kind === "tank" ? work : null;
}
