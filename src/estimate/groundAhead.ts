/** The ground of a large survey made ahead of its estimate, away from the page. */
import {
  adoptGround,
  buildTin,
  packTin,
  unpackTin,
  type BuildProgress,
  type PackedTin,
} from "../ground/index.js";
import type { Finding, Site } from "../site/index.js";

/** Triangles made from a survey, as flat arrays, and what was found on the way. */
export interface GroundAhead {
  packed: PackedTin;
  findings: Finding[];
}

/**
 * Triangulates a survey. The buffers of `transfer` may be handed to another thread. A survey that
 * makes no ground gives its fault in words.
 */
export function makeGround(
  survey: Site["survey"],
  onProgress: BuildProgress,
): { ahead: GroundAhead; transfer: ArrayBuffer[] } | { fault: string } {
  const built = buildTin(survey, onProgress);
  if ("problem" in built) return { fault: `${built.problem.text}; ${built.problem.mend}` };
  const { packed, transfer } = packTin(built.tin);
  return { ahead: { packed, findings: built.findings }, transfer };
}

/** Lets estimates of `site` use triangles that `makeGround` made from an equal survey. */
export function takeGround(site: Site, { packed, findings }: GroundAhead): void {
  adoptGround(site, unpackTin(packed, site.survey), findings);
}
