/** All works of a scheme in building order on the layered ground. */
import { checkGround, LayeredGround, type BaseGround, type CellLayer } from "../ground/index.js";
import {
  materialsOf,
  NATIVE,
  runsByMaterial,
  type Finding,
  type Material,
  type PlanPoint,
  type Scheme,
  type Site,
  type Work,
} from "../site/index.js";
import { balanceEarth, haulPlan, totalCut } from "./earth.js";
import { heapPile, standPile } from "./heap.js";
import { fillBed, standBuilding } from "./massing.js";
import { digPad } from "./pad.js";
import { localWork } from "./place.js";
import { overlapFindings } from "./overlapCheck.js";
import { reachFindings } from "./reachCheck.js";
import { digStrip, putBackStrip } from "./strip.js";
import { digTank } from "./tank.js";
import { digTrench } from "./trench.js";
import type { DigResult, Earth, Rings, WorkQuantities } from "./types.js";
import { nothingMoved, reached, type Digging, type Extent } from "./work.js";

/**
 * Digs every work of a scheme in building order, each finding the ground as the works before it
 * left it; then puts back what strips have taken off, and heaps the surplus. `extent` stops each
 * work early, for showing the job at a stage; quantities are those of the whole job only with
 * "backfilled". Returns the ground too, for drawing and checking; who is done with it may
 * `release` it. `watch` is called just before and just after each work, by its number.
 */
export function digScheme(
  site: Site,
  scheme: Scheme,
  base: BaseGround,
  extent: Extent = "backfilled",
  watch?: (when: "before" | "after", number: number, ground: LayeredGround) => void,
): { result: DigResult; ground: LayeredGround } {
  const ground = new LayeredGround(base);
  const materials = materialsOf(site);
  const digging = startDigging(site, ground, extent, materials);
  const local = scheme.works.map((work) => localWork(work, base.tin.origin));
  const works = local.map((work, number) => {
    digging.number = number;
    watch?.("before", number, ground);
    const quantities = digOne(digging, work, local);
    ground.finishWork();
    watch?.("after", number, ground);
    return quantities;
  });
  putBackStrips(digging, local, works, materials);
  const earth = balanceEarth(works, materials);
  heapPiles(digging, local, works, { earth, materials, site });
  const inSite = works.map((work) => inSiteFrame(work, base.tin.origin));
  const findings = scheme.works.flatMap((work, i) => [
    ...digging.findings.filter((each) => each.where === work.id),
    ...shapeFindings(digging, work, works[i]!),
    ...overlapFindings(site, works[i]!, materials),
  ]);
  const haul = extent === "backfilled" ? haulPlan(inSite, scheme, materials) : [];
  const result = {
    cut: totalCut(works),
    works: inSite,
    earth,
    haul,
    pipes: digging.pipes,
    findings,
  };
  return { result, ground };
}

function startDigging(
  site: Site,
  ground: LayeredGround,
  extent: Extent,
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
  return { ground, number: 0, extent, runOf, flattestRun, findings: [], pipes: [] };
}

function digOne(digging: Digging, work: Work, works: readonly Work[]): WorkQuantities {
  if (work.kind === "strip") return digStrip(digging, work, works);
  if (work.kind === "pile") {
    digging.findings.push(...reachFindings(digging.ground, work));
    return standPile(digging.ground, work);
  }
  if (!reached(digging, "dug")) return nothingMoved(work, digging.ground.lowest);
  switch (work.kind) {
    case "tank":
      return digTank(digging, work);
    case "pad":
      return digPad(digging, work);
    case "trench":
      return digTrench(digging, work);
    case "bed":
      digging.findings.push(...reachFindings(digging.ground, work));
      return fillBed(digging, work);
    case "building":
      digging.findings.push(...reachFindings(digging.ground, work));
      return standBuilding(digging, work);
  }
}

/** Puts the strips' earth back, changing their quantities in `works`. */
function putBackStrips(
  digging: Digging,
  local: readonly Work[],
  works: WorkQuantities[],
  materials: ReadonlyMap<string, Material>,
): void {
  local.forEach((work, number) => {
    if (work.kind !== "strip") return;
    digging.number = number;
    works[number] = putBackStrip(digging, work, local, works[number]!, materials);
    digging.ground.finishWork();
  });
}

function isTopsoil(id: string, materials: ReadonlyMap<string, Material>): boolean {
  return materials.get(id)?.kind === "topsoil";
}

/**
 * Heaps what is left over, changing the piles' quantities in `works`: topsoil that is not put back
 * on the piles for topsoil, where there are any, and all else in equal shares on the others. Before
 * the backfill is in, the piles hold all the earth that is out by then.
 */
function heapPiles(
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

function inSiteFrame(
  work: WorkQuantities,
  origin: readonly [number, number, number],
): WorkQuantities {
  const [ox, oy, oz] = origin;
  const rings = (all: Rings): PlanPoint[][] =>
    all.map((ring) => ring.map(([x, y]): PlanPoint => [x + ox, y + oy]));
  const { outlines, cutCentre, fillCentre, heap } = work;
  const { lowest, highest } = work.floor;
  return {
    ...work,
    floor: { lowest: lowest + oz, highest: highest + oz },
    ...(outlines && {
      outlines: { daylight: rings(outlines.daylight), toe: rings(outlines.toe) },
    }),
    ...(cutCentre && { cutCentre: [cutCentre[0] + ox, cutCentre[1] + oy, cutCentre[2] + oz] }),
    ...(fillCentre && { fillCentre: [fillCentre[0] + ox, fillCentre[1] + oy, fillCentre[2] + oz] }),
    ...(heap && { heap: { ...heap, toe: rings(heap.toe) } }),
  };
}

function shapeFindings(
  { extent, findings }: Digging,
  work: Work,
  quantities: WorkQuantities,
): Finding[] {
  if (extent === "stripped") return [];
  const stopped = findings.some((each) => each.where === work.id && each.level === "stop");
  const dug = work.kind === "tank" || work.kind === "trench";
  if (!dug || stopped || Object.keys(quantities.cut).length > 0) return [];
  return [
    {
      level: "caution",
      code: "dig.above-ground",
      where: work.id,
      text: `${work.name} stands above the ground and cuts nothing. Lower it, or check its elevation.`,
      source: "geometry",
    },
  ];
}

/**
 * Balances a dug ground against its ledger: for every material, what stood there as found − cut +
 * fill must be what stands there now. Returns the largest gap as a share of the earth moved.
 */
export function ledgerGap(scheme: Scheme, result: DigResult, ground: LayeredGround): number {
  const { origin, lowest } = ground.base.tin;
  const datum = Math.min(lowest, ...result.works.map((w) => w.floor.lowest - origin[2])) - 1;
  const { now, found } = checkGround(ground, datum);
  const expected: Record<string, number> = { ...found.volumes };
  let moved = 0;
  const move = (id: string, volume: number): void => {
    expected[id] = (expected[id] ?? 0) + volume;
    moved += Math.abs(volume);
  };
  result.works.forEach((work, i) => {
    const built = scheme.works[i]!;
    if (built.kind === "bed") return;
    // The pipes lie in the zone's layer; the ledger counts them as displaced.
    if (built.kind === "trench") move(built.zone.material, work.displaced);
    for (const [id, volume] of Object.entries(work.cut)) move(id, -volume);
    for (const [id, volume] of Object.entries(work.fill)) move(id, volume);
    if (built.kind === "pile") move(built.material, work.heap?.volume ?? 0);
  });
  let gap = 0;
  for (const id of new Set([...Object.keys(expected), ...Object.keys(now.volumes)])) {
    if (id === "structure") continue;
    gap = Math.max(gap, Math.abs((expected[id] ?? 0) - (now.volumes[id] ?? 0)));
  }
  return moved > 0 ? gap / moved : gap;
}
