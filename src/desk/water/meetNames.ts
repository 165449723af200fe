import type { Site } from "../../site/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Runoff } from "../parts.js";

/** Names of the limits that a ditch would meet, in one way or any, each once, with what is asked there. */
export function limitNames(
  { units }: Site,
  limits: Runoff["ditchLimits"],
  how?: Runoff["ditchLimits"][number]["how"],
): string {
  const names = limits
    .filter((one) => how === undefined || one.how === how)
    .map(({ name, distance: is, wanted }) =>
      is > 0
        ? words.water.work.asked(name, distance.print(is, units), distance.print(wanted, units))
        : name,
    );
  return [...new Set(names)].join(", ");
}

/** Names of the works that a ditch would meet, as the scheme has them. */
export function meetNames(site: Site, schemeId: string, meets: Runoff["ditchMeets"]): string {
  const works = site.schemes.find(({ id }) => id === schemeId)?.works ?? [];
  return meets.map(({ work }) => works.find(({ id }) => id === work)?.name ?? work).join(", ");
}
