/** A site that comes in the page's own address. */
import { isSiteLink, isWithout, LEFT_OUT, siteOfLink } from "../handover/index.js";
import type { Site } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskTools } from "./deskTools.js";
import { openRead } from "./openSites.js";

/** That a site is a copy out of a link, and what its maker left out of it. */
export function openedSays(site: Site): string {
  const without = LEFT_OUT.filter((what) => isWithout(site, what));
  return [words.link.opened(site.name), ...without.map((what) => words.link.without[what])].join(
    " ",
  );
}

/**
 * Opens the site that the page's address holds, as one of this device's own sites, and takes it out of
 * the address. What is on the desk stays on the list, or is set aside when it could not be kept, as
 * with a file. False when the address holds none, or one that cannot be used, which the person is told.
 */
export async function openLink(tools: DeskTools): Promise<boolean> {
  const { href, pathname, search } = window.location;
  if (!isSiteLink(href)) return false;
  // At once, so that loading the page anew does not open the link over what was changed since.
  window.history.replaceState(null, "", `${pathname}${search}`);
  const site = await siteOfLink(href);
  if (!site.ok) {
    tools.set({ unopened: { file: words.link.name, problems: site.problems } });
    return false;
  }
  tools.large.giveUp();
  await openRead(tools, site.value, openedSays(site.value));
  return true;
}
