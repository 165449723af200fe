import { useEffect } from "react";
import type { Chance } from "../../chance/index.js";
import { CHANCE_RUNS, simulate, useChance } from "../../store/index.js";
import { useSite } from "../useSite.js";

/** ms without an edit before the site counts as at rest. */
const REST = 700;

/** How the simulation of the scheme on the desk stands, for the leaf that shows it. */
export interface ShownChance {
  chance: Chance | null;
  /** True when `chance` is of the site as it is now. */
  current: boolean;
  /** 0 to 1 while one is being made. */
  share: number | null;
  fault: string | null;
}

/** Has the open scheme simulated whenever it comes to rest, and tells how that stands. */
export function useChanceAtRest(): ShownChance {
  const { site, schemeId, estimate } = useSite();
  const { latest, running, fault } = useChance();
  const wanted = estimate !== null;
  useEffect(() => {
    if (!wanted) return undefined;
    const timer = setTimeout(() => simulate(site, [schemeId]), REST);
    return () => clearTimeout(timer);
  }, [site, schemeId, wanted]);
  const made = latest.get(schemeId);
  return {
    chance: made?.chance ?? null,
    current: made?.site === site && made.runs === CHANCE_RUNS,
    share: running?.schemeId === schemeId ? running.share : null,
    fault,
  };
}
