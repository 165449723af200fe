import { useEffect } from "react";
import type { Chance } from "../chance/index.js";
import { giveUpAtRest, isLarge, simulateAtRest, useChance, useDesk } from "../store/index.js";
import { useSite } from "./useSite.js";

/** ms without an edit before the strip's range is made. */
const REST = 2000;

/** The simulated cost of the scheme on the desk as it is now; null until the site has rested. */
export function useRangeAtRest(): Chance["total"] | null {
  const { site, schemeId } = useSite();
  const dragging = useDesk((desk) => desk.history?.mark !== null);
  const made = useChance((state) => state.latest.get(schemeId));
  const isMade = made?.site === site;
  const rests = !dragging && !isMade && !isLarge(site);
  useEffect(() => {
    if (!rests) return undefined;
    const timer = setTimeout(() => simulateAtRest(site, schemeId), REST);
    return () => {
      clearTimeout(timer);
      giveUpAtRest();
    };
  }, [site, schemeId, rests]);
  return isMade ? made.chance.total : null;
}
