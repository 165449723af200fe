/** What is written down of the call to the utility locate service. */
import { withoutAbsent, without, type Changes } from "./absent.js";
import type { Site } from "./schema.js";

type Locate = NonNullable<Site["locate"]>;

/** Whether the call has been made and answered: its ticket and its date are both written down. */
export function isLocated({ locate }: Pick<Site, "locate">): boolean {
  return locate?.ticket !== undefined && locate.date !== undefined;
}

/** Changes what is written of the locate call; a field given as undefined is taken out. */
export function setLocate(site: Site, changes: Changes<Locate>): Site {
  const locate = withoutAbsent<object>({ ...site.locate, ...changes });
  if (Object.keys(locate).length > 0) return { ...site, locate };
  return without(site, "locate");
}
