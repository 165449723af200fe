/** The ground of a large survey and its picture, made ahead and away from the page. */
import {
  adoptGround,
  buildTin,
  packTin,
  unpackTin,
  type BuildProgress,
  type PackedTin,
} from "../ground/index.js";
import { adoptFlood, floodFrom, type Flood } from "../runoff/index.js";
import type { Finding, Site } from "../site/index.js";
import { adoptContours, foundContours, type FoundContours } from "./foundContours.js";
import { adoptPicture, foundPicture, type FoundPicture } from "./foundPicture.js";

/** Triangles made from a survey, as flat arrays, and what was found on the way. */
export interface GroundAhead {
  packed: PackedTin;
  findings: Finding[];
  /** Its hollows filled, so that the way of water from one place takes the page no time. */
  flood: Flood;
}

/** What is drawn of the ground as found. */
export interface PictureAhead {
  picture: FoundPicture;
  contours: FoundContours;
}

const taken = new WeakMap<Site["survey"], GroundAhead>();

/** Triangulates a survey. One that makes no ground gives its fault in words. */
export function makeGround(
  survey: Site["survey"],
  onProgress: BuildProgress,
): GroundAhead | { fault: string } {
  const built = buildTin(survey, onProgress);
  if ("problem" in built) return { fault: `${built.problem.text}; ${built.problem.mend}` };
  const flood = floodFrom(built.tin);
  return { packed: packTin(built.tin).packed, findings: built.findings, flood };
}

/** Lets estimates of `site` use triangles that `makeGround` made from an equal survey. */
export function takeGround(site: Site, ahead: GroundAhead): void {
  const tin = unpackTin(ahead.packed, site.survey);
  adoptGround(site, tin, ahead.findings);
  adoptFlood(tin, ahead.flood);
  taken.set(site.survey, ahead);
}

/** The ground that was taken for this very survey, to be handed on; null when none was. */
export function groundTaken(survey: Site["survey"]): GroundAhead | null {
  return taken.get(survey) ?? null;
}

/** Makes what is drawn of a site's ground as found. Throws like `estimate`. */
export function makePicture(site: Site): PictureAhead {
  return { picture: foundPicture(site), contours: foundContours(site) };
}

/** Lets a picture that was made in another thread of the same ground be this site's. */
export function takePicture(site: Site, { picture, contours }: PictureAhead): void {
  adoptPicture(site, picture);
  adoptContours(site, contours);
}
