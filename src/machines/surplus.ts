/** The digger's time with what is left over: shaped on the site's pile, else loaded into trucks. */
import type { DigResult } from "../dig/index.js";
import type { Scheme } from "../site/index.js";
import { truckLoads } from "./bulking.js";
import { hireCatalogue } from "./hireCatalogue.js";
import { hoursAt, mapRange } from "./range.js";
import type { Range } from "./types.js";

/** m³ loose in one truckload when the scheme says nothing: typical, no source. */
const USUAL_TRUCK_VOLUME = 8;

/** What is done with the surplus and how long that takes the digger, h. */
export interface SurplusTime {
  kind: "spread" | "haul";
  /** The pile that it goes to; null where it is taken away. */
  work: string | null;
  name: string;
  hours: Range;
  source: string;
}

/** What is left over: spread on the site where the scheme has a pile, else taken away. */
export function surplusTime(scheme: Scheme, { earth }: DigResult): SurplusTime | undefined {
  const { surplusLoose } = earth;
  if (!(surplusLoose > 0)) return undefined;
  const { times } = hireCatalogue();
  const pile = scheme.works.find(({ kind }) => kind === "pile");
  if (pile) {
    const hours = hoursAt(surplusLoose, times.spreadPerHour);
    return {
      ...{ kind: "spread", work: pile.id, name: `Shape: ${pile.name}`, hours },
      source: times.source,
    };
  }
  const loads = truckLoads(surplusLoose, scheme.machines?.truckVolume ?? USUAL_TRUCK_VOLUME);
  const hours = mapRange(times.haulLoad, (each) => each * loads);
  return {
    ...{ kind: "haul", work: null, name: "Take the surplus away", hours },
    source: times.source,
  };
}
