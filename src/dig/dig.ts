/** All works of a scheme in building order on the layered ground. */
import { checkGround, LayeredGround, type BaseGround } from "../ground/index.js";
import { materialsOf, type Finding, type Scheme, type Site, type Work } from "../site/index.js";
import { balanceEarth, totalCut } from "./earth.js";
import { fillBed, standBuilding, standPile } from "./massing.js";
import { digPad } from "./pad.js";
import { localWork } from "./place.js";
import { reachFindings } from "./reachCheck.js";
import { digTank } from "./tank.js";
import { digTrench } from "./trench.js";
import type { DigResult, PipeRun, WorkQuantities } from "./types.js";
import { nothingMoved, type Digging, type Extent } from "./work.js";

/**
 * Digs every work of a scheme in building order, each finding the ground as the works before it
 * left it. `extent` stops each work early, for showing the job at a stage; quantities are those of
 * the whole job only with "backfilled". Returns the ground too, for drawing and checking.
 */
export function digScheme(
  site: Site,
  scheme: Scheme,
  base: BaseGround,
  extent: Extent = "backfilled",
): { result: DigResult; ground: LayeredGround } {
  const ground = new LayeredGround(base);
  const materials = materialsOf(site);
  const findings: Finding[] = [];
  const pipes: PipeRun[] = [];
  const flattestRun = Math.max(
    0,
    ...site.ground.layers.map((layer) => materials.get(layer.material)?.wallRun ?? 0),
  );
  const works: WorkQuantities[] = [];
  scheme.works.forEach((work, number) => {
    const digging: Digging = { ground, number, extent, flattestRun, findings, pipes };
    const local = localWork(work, base.tin.origin);
    works.push(inSiteFrame(digOne(digging, local), base.tin.origin[2]));
    const stopped = findings.some((each) => each.where === work.id && each.level === "stop");
    findings.push(...shapeFindings(work, works[number]!, stopped));
    ground.finishWork();
  });
  const earth = balanceEarth(works, materials);
  return { result: { cut: totalCut(works), works, earth, pipes, findings }, ground };
}

function digOne(digging: Digging, work: Work): WorkQuantities {
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
    case "pile":
      digging.findings.push(...reachFindings(digging.ground, work));
      return standPile(digging.ground, work);
    case "strip":
      return nothingMoved(work, 0);
  }
}

function inSiteFrame(work: WorkQuantities, height: number): WorkQuantities {
  const { lowest, highest } = work.floor;
  return { ...work, floor: { lowest: lowest + height, highest: highest + height } };
}

function shapeFindings(work: Work, quantities: WorkQuantities, stopped: boolean): Finding[] {
  const findings: Finding[] = [];
  const dug = work.kind === "tank" || work.kind === "trench";
  if (dug && !stopped && Object.keys(quantities.cut).length === 0) {
    findings.push({
      level: "caution",
      code: "dig.above-ground",
      where: work.id,
      text: `${work.name} stands above the ground and cuts nothing. Lower it, or check its elevation.`,
      source: "geometry",
    });
  }
  if ((dug || work.kind === "pad") && work.walls.by === "layers") {
    findings.push({
      level: "caution",
      code: "walls.one-slope",
      where: work.id,
      text: `${work.name} asks for walls by layer. They are drawn and counted at one slope, the flattest that any layer of this site needs, which digs more than layer by layer would.`,
      source: "geometry",
    });
  }
  return findings;
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
  });
  let gap = 0;
  for (const id of new Set([...Object.keys(expected), ...Object.keys(now.volumes)])) {
    if (id === "structure") continue;
    gap = Math.max(gap, Math.abs((expected[id] ?? 0) - (now.volumes[id] ?? 0)));
  }
  return moved > 0 ? gap / moved : gap;
}
