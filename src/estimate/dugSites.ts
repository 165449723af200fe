/** Grounds of the sites that were read last, so that an edit is dug once for all who read it. */
import { digScheme, stageOf, type Dug, type Extent } from "../dig/index.js";
import type { BaseGround, LayeredGround } from "../ground/index.js";
import type { Scheme, Site } from "../site/index.js";

/** What has been dug of one site; documents are never changed in place. */
interface DugSite {
  site: Site;
  base: BaseGround;
  /** By the scheme's id. */
  whole: Map<string, Dug>;
  /** By stage and scheme: those short of the whole, each in memory of its own. */
  stages: Map<string, LayeredGround>;
}

/**
 * The last first. Two are kept, since who compares goes from one to the other: the site beside an
 * edit that is only tried, or beside its works up to one of them.
 */
const kept: DugSite[] = [];
const KEPT = 2;

/**
 * A scheme dug from the first work to the last, its ground to be read only. Estimate, meshes and
 * sections of a site all read the same dig. Sites that come later take its memory: nobody may hold
 * on to a ground from one edit to the next.
 */
export function wholeDig(site: Site, scheme: Scheme, base: BaseGround): Dug {
  const { whole } = dugSite(site, base);
  let dug = whole.get(scheme.id);
  if (!dug) whole.set(scheme.id, (dug = digScheme(site, scheme, base)));
  return dug;
}

/** The ground of a scheme at a stage, to be read only; it lasts as long as that of `wholeDig`. */
export function stageDig(
  site: Site,
  scheme: Scheme,
  base: BaseGround,
  stage: Extent,
): LayeredGround {
  const dug = wholeDig(site, scheme, base);
  if (stage === "backfilled") return dug.ground;
  const { stages } = dugSite(site, base);
  const key = `${stage} ${scheme.id}`;
  let ground = stages.get(key);
  if (!ground) stages.set(key, (ground = stageOf(site, scheme, dug, stage).ground));
  return ground;
}

function dugSite(site: Site, base: BaseGround): DugSite {
  const at = kept.findIndex((each) => each.site === site && each.base === base);
  const [known] = at < 0 ? [] : kept.splice(at, 1);
  const found = known ?? { site, base, whole: new Map(), stages: new Map() };
  kept.unshift(found);
  for (const gone of kept.splice(KEPT)) letGo(gone);
  return found;
}

function letGo({ whole, stages }: DugSite): void {
  for (const { ground } of whole.values()) ground.release();
  for (const ground of stages.values()) ground.release();
}
