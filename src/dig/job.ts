/** What digging a whole scheme and showing it at a stage have in common. */
import type { CellLayer, LayeredGround } from "../ground/index.js";
import {
  NATIVE,
  runsByMaterial,
  type Material,
  type PlanPoint,
  type Site,
  type Work,
} from "../site/index.js";
import { heapPile } from "./heap.js";
import type { Earth, Rings, WorkQuantities } from "./types.js";
import type { Digging } from "./work.js";

/** The state of a job that nothing has been done of. */
export function startDigging(
  site: Site,
  ground: LayeredGround,
  materials: ReadonlyMap<string, Material>,
): Digging {
  const typed = runsByMaterial(site.ground.layers, materials);
  const flattestRun = Math.max(0, ...typed.values());
  const runOf = ({ material, structure }: CellLayer): number | null => {
    if (structure) return null;
    // Earth put back stands no better than the worst of what it was dug from.
    return material === NATIVE
      ? flattestRun
      : (typed.get(material) ?? materials.get(material)?.wallRun ?? flattestRun);
  };
  const { units } = site;
  return { ground, units, number: 0, runOf, flattestRun, findings: [], pipes: [], moved: [] };
}

/** Turns to a work, by its number. */
export function beginWork(digging: Digging, number: number): void {
  digging.number = number;
  digging.moved[number] = { natural: {}, zone: 0 };
}

function isTopsoil(id: string, materials: ReadonlyMap<string, Material>): boolean {
  return materials.get(id)?.kind === "topsoil";
}

/**
 * Heaps what is left over, changing the piles' quantities in `works`: topsoil that is not put back
 * on the piles for topsoil, where there are any, and all else in equal shares on the others. Before
 * the backfill is in, the piles hold all the earth that is out by then.
 */
export function heapPiles(
  digging: Digging,
  local: readonly Work[],
  works: WorkQuantities[],
  {
    earth,
    materials,
    site,
  }: { earth: Earth; materials: ReadonlyMap<string, Material>; site: Site },
): void {
  const piles = local.flatMap((work, number) => (work.kind === "pile" ? [{ work, number }] : []));
  const forTopsoil = piles.filter(({ work }) => isTopsoil(work.material, materials));
  const topsoil = forTopsoil.length > 0 ? (earth.topsoil?.leftLoose ?? 0) : 0;
  for (const { work, number } of piles) {
    const holdsTopsoil = isTopsoil(work.material, materials);
    const others = piles.length - forTopsoil.length;
    const share = holdsTopsoil
      ? topsoil / forTopsoil.length
      : Math.max(0, earth.surplusLoose - topsoil) / others;
    // A scheme with none but topsoil piles still has to put the rest somewhere.
    const rest = others === 0 ? Math.max(0, earth.surplusLoose - topsoil) / piles.length : 0;
    digging.number = number;
    works[number] = heapPile(digging, work, share + rest, { works, site });
    digging.ground.finishWork();
  }
}

/** A work's quantities moved from the ground's local frame into the site's. */
export function inSiteFrame(
  work: WorkQuantities,
  origin: readonly [number, number, number],
): WorkQuantities {
  const [ox, oy, oz] = origin;
  const rings = (all: Rings): PlanPoint[][] =>
    all.map((ring) => ring.map(([x, y]): PlanPoint => [x + ox, y + oy]));
  const { outlines, fillFoot, cutCentre, fillCentre, heap } = work;
  const { lowest, highest } = work.floor;
  return {
    ...work,
    floor: { lowest: lowest + oz, highest: highest + oz },
    ...(outlines && {
      outlines: { daylight: rings(outlines.daylight), toe: rings(outlines.toe) },
    }),
    ...(fillFoot && { fillFoot: rings(fillFoot) }),
    ...(cutCentre && { cutCentre: [cutCentre[0] + ox, cutCentre[1] + oy, cutCentre[2] + oz] }),
    ...(fillCentre && { fillCentre: [fillCentre[0] + ox, fillCentre[1] + oy, fillCentre[2] + oz] }),
    ...(heap && { heap: { ...heap, toe: rings(heap.toe) } }),
  };
}
