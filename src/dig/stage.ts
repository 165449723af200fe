/** A job at a stage: every work has come as far, and no farther. */
import { LayeredGround, type BaseGround } from "../ground/index.js";
import { materialsOf, type Scheme, type Site, type Work } from "../site/index.js";
import { balanceEarth } from "./earth.js";
import { digScheme, type Dug } from "./dig.js";
import { standPile } from "./heap.js";
import { beginWork, heapPiles, inSiteFrame, startDigging } from "./job.js";
import { localWork } from "./place.js";
import { digStrip } from "./strip.js";
import type { Earth, WorkQuantities } from "./types.js";
import { EXTENTS, nothingMoved, type Digging, type Extent } from "./work.js";

/**
 * What of a work is done at a stage: `cut` is what it took out of the ground as found, `fill` what
 * stands of what it put in, so that found − cut + fill is what the ground holds.
 */
export type StageWork = Pick<
  WorkQuantities,
  "id" | "name" | "kind" | "cut" | "fill" | "displaced" | "floor" | "heap"
>;

/** What is out and in when the job has come to a stage. */
export interface StageDig {
  ground: LayeredGround;
  works: readonly StageWork[];
  /** The balance of what is out and in by then; the piles hold what is left over. */
  earth: Earth;
}

/**
 * A scheme at a stage. Holes are those of the whole job, in which each work finds the ground as the
 * works before it left it: a trench that follows the ground does not follow it down into a hole
 * that only stands open because the stage shows all works at once. See `stageOf`.
 */
export function digToStage(site: Site, scheme: Scheme, base: BaseGround, extent: Extent): StageDig {
  return stageOf(site, scheme, digScheme(site, scheme, base), extent);
}

/**
 * A dug scheme at a stage: its ground with all that is put in later taken off again, and the piles
 * heaped with what is out by then. What would lie on earth that is not in yet is not in either. The
 * ground is one of its own, but at the last stage, where it is that of `dug`.
 */
export function stageOf(site: Site, scheme: Scheme, dug: Dug, extent: Extent): StageDig {
  const { result, ground: whole } = dug;
  if (extent === "backfilled") return { ground: whole, works: result.works, earth: result.earth };
  const local = scheme.works.map((work) => localWork(work, whole.base.tin.origin));
  if (extent === "stripped") return strippedOnly(site, whole.base, local);
  const ground = whole.upTo(EXTENTS.indexOf(extent));
  return heaped(site, ground, local, standingWorks(dug, local, ground));
}

/** What of each work is done, local m: what lies in `ground` by now, and all that was dug. */
function standingWorks(
  { result, moved }: Dug,
  local: readonly Work[],
  ground: LayeredGround,
): WorkQuantities[] {
  const placed = ground.placed();
  const z = ground.base.tin.origin[2];
  return result.works.map((whole, number) => {
    const { natural, zone } = moved[number]!;
    const fill = placed.record(({ by, structure }) => by === number && !structure);
    const built = local[number]!;
    let displaced = 0;
    if (built.kind === "trench") {
      const laid = placed.record(({ by, step }) => by === number && step === ZONE);
      const stands = laid[built.zone.material] ?? 0;
      // Of the pipes the share that has its zone about it: the rest hangs in a hole yet to be filled.
      displaced = zone > 0 ? Math.min(stands, whole.displaced * (stands / zone)) : 0;
      if (displaced > 0) fill[built.zone.material] = fill[built.zone.material]! - displaced;
    }
    const { lowest, highest } = whole.floor;
    return {
      ...nothingMoved(built, 0),
      ...{ cut: natural, fill, displaced },
      floor: { lowest: lowest - z, highest: highest - z },
    };
  });
}

const ZONE = EXTENTS.indexOf("zone");

/** What strips take off, before all else. */
function strippedOnly(site: Site, base: BaseGround, local: readonly Work[]): StageDig {
  const ground = new LayeredGround(base);
  const digging = startDigging(site, ground, materialsOf(site));
  const works = local.map((work, number) => {
    beginWork(digging, number);
    const stripped =
      work.kind === "strip" ? digStrip(digging, work, local) : nothingMoved(work, ground.lowest);
    ground.finishWork();
    return stripped;
  });
  return heaped(site, ground, local, works);
}

/** Heaps on the piles what is out by now. */
function heaped(
  site: Site,
  ground: LayeredGround,
  local: readonly Work[],
  moved: readonly WorkQuantities[],
): StageDig {
  const materials = materialsOf(site);
  const digging: Digging = startDigging(site, ground, materials);
  const works = moved.map((work, number) => {
    const built = local[number]!;
    return built.kind === "pile" ? standPile(ground, built) : work;
  });
  const earth = balanceEarth(works, materials);
  heapPiles(digging, local, works, { earth, materials, site });
  return { ground, works: works.map((work) => inSiteFrame(work, ground.base.tin.origin)), earth };
}
