import type { PlanPoint, Site } from "../../site/index.js";
import { simplified, useDesk, withPlacedLimit } from "../../store/index.js";
import { words } from "../../words/index.js";

/** m that a kept line may lie off the one that was worked out. */
const OFF = 0.1;

type Line = readonly (readonly [number, number, ...unknown[]])[];

/** The site with a limit of this kind along a line; as it was when the line has no length. */
function withLine(site: Site, kind: string, line: Line): Site {
  const places = line.map(([x, y]): PlanPoint => [x, y]);
  return withPlacedLimit(site, kind, simplified(places, OFF))?.site ?? site;
}

/** Keeps a way of water as a limit of the site. */
export function keepWay(path: Line): void {
  const { edit } = useDesk.getState();
  edit(words.water.steps.keep, (site) => withLine(site, "flood-path", path));
}

/**
 * Draws the ditch that was worked out above a work as a limit: a work that is dug would be a trench
 * with pipes and backfill, which a ditch has not, and would put earth into the figures that nobody
 * has given a section for. A limit says no more than where the line is, and moves like any other.
 */
export function addDitch(work: string, ditch: Line): void {
  const { edit, tell } = useDesk.getState();
  edit(words.water.steps.ditch(work), (site) => withLine(site, "ditch", ditch));
  // The offer is gone from the leaf once it is taken: without a word that looks like nothing done.
  tell(words.water.ditchAdded);
}
