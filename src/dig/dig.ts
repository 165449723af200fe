/** All works of a scheme in building order on the layered ground. */
import { checkGround, LayeredGround, type BaseGround } from "../ground/index.js";
import {
  materialsOf,
  type Finding,
  type Material,
  type Scheme,
  type Site,
  type Work,
} from "../site/index.js";
import { balanceEarth, haulPlan, totalCut } from "./earth.js";
import { standPile } from "./heap.js";
import { beginWork, heapPiles, inSiteFrame, startDigging } from "./job.js";
import { fillBed, standBuilding } from "./massing.js";
import { digPad } from "./pad.js";
import { localWork } from "./place.js";
import { overlapFindings } from "./overlapCheck.js";
import { reachFindings } from "./reachCheck.js";
import { digStrip, putBackStrip } from "./strip.js";
import { digTank } from "./tank.js";
import { digTrench } from "./trench.js";
import type { DigResult, WorkQuantities } from "./types.js";
import type { Digging, Moved } from "./work.js";

/** A scheme dug from the first work to the last. */
export interface Dug {
  result: DigResult;
  ground: LayeredGround;
  /** For each work: what the stages of the job are reckoned from. */
  moved: readonly Moved[];
}

/**
 * Digs every work of a scheme in building order, each finding the ground as the works before it
 * left it, filled up again; then puts back what strips have taken off, and heaps the surplus.
 * Returns the ground too, for drawing and checking; who is done with it may `release` it. `watch`
 * is called just before and just after each work, by its number.
 */
export function digScheme(
  site: Site,
  scheme: Scheme,
  base: BaseGround,
  watch?: (when: "before" | "after", number: number, ground: LayeredGround) => void,
): Dug {
  const ground = new LayeredGround(base);
  const materials = materialsOf(site);
  const digging = startDigging(site, ground, materials);
  const local = scheme.works.map((work) => localWork(work, base.tin.origin));
  const works = local.map((work, number) => {
    beginWork(digging, number);
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
    ...shapeFindings(digging.findings, work, works[i]!),
    ...overlapFindings(site, works[i]!, materials),
  ]);
  const result = {
    cut: totalCut(works),
    works: inSite,
    earth,
    haul: haulPlan(inSite, scheme, materials),
    pipes: digging.pipes,
    findings,
  };
  return { result, ground, moved: digging.moved };
}

function digOne(digging: Digging, work: Work, works: readonly Work[]): WorkQuantities {
  if (work.kind === "strip") return digStrip(digging, work, works);
  if (work.kind === "pile") {
    digging.findings.push(...reachFindings(digging, work));
    return standPile(digging.ground, work);
  }
  switch (work.kind) {
    case "tank":
      return digTank(digging, work);
    case "pad":
      return digPad(digging, work);
    case "trench":
      return digTrench(digging, work);
    case "bed":
      digging.findings.push(...reachFindings(digging, work));
      return fillBed(digging, work);
    case "building":
      digging.findings.push(...reachFindings(digging, work));
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

function shapeFindings(
  findings: readonly Finding[],
  work: Work,
  quantities: WorkQuantities,
): Finding[] {
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
