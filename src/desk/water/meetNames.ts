import type { Site } from "../../site/index.js";
import type { Runoff } from "../parts.js";

/** Names of the works that a ditch would meet, as the scheme has them. */
export function meetNames(site: Site, schemeId: string, meets: Runoff["ditchMeets"]): string {
  const works = site.schemes.find(({ id }) => id === schemeId)?.works ?? [];
  return meets.map(({ work }) => works.find(({ id }) => id === work)?.name ?? work).join(", ");
}
