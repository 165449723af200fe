import type { CellLayer, LayeredGround, Place } from "../ground/index.js";
import type { Pipe, Trench } from "../site/index.js";
import { invertAt, invertsAlong, wallOf, type InvertAt } from "./grade.js";
import {
  groundPoints,
  pathLegs,
  pathLength,
  placeAt,
  surfaceAlong,
  type PathLeg,
  type PathStretch,
} from "./path.js";
import { meanBuriedArea } from "./pipeVolume.js";
import { reachFindings } from "./reachCheck.js";
import {
  quantitiesOf,
  quantitiesPut,
  structureFinding,
  wallTerms,
  type DugQuantities,
} from "./hole.js";
import { floorRange, trenchShape, type TrenchShape } from "./trenchSurface.js";
import type { PipeRun, PipeStation, WorkQuantities } from "./types.js";
import { benchFinding, grownBox, settledPlan } from "./walls.js";
import { Filling, placedLayer, type Digging, type Extent } from "./work.js";

/**
 * Digs a trench (local m), beds it, fills the pipe zone and fills up to the ground as it was. The
 * pipes themselves are taken out of the zone's volume analytically.
 */
export function digTrench(digging: Digging, trench: Trench): WorkQuantities {
  const { ground } = digging;
  const legs = pathLegs(trench.path);
  const before = surfaceAlong(ground, legs);
  const points = groundPoints(before);
  const length = pathLength(legs);
  const inverts = trench.pipes.map((pipe) => invertsAlong(pipe, length, points));
  const shape = shapeOf(digging, trench, legs, inverts);
  const quantities = cutTrench(digging, trench, shape);
  const inTank = surfaceAlong(ground, legs).filter((stretch) => stretch.structure);
  const buried = before.filter((stretch) => !stretch.structure);
  const displaced = trench.pipes.reduce(
    (sum, pipe, i) => sum + buriedVolume(pipe, inverts[i]!, buried, inTank),
    0,
  );
  const filling = refillTrench(digging, trench, shape, displaced);
  trench.pipes.forEach((pipe, i) => {
    digging.pipes.push(pipeRun(ground, trench, pipe, inverts[i]!, legs, before));
  });
  return {
    id: trench.id,
    name: trench.name,
    kind: trench.kind,
    ...quantities,
    ...quantitiesPut(digging, filling, quantities),
    displaced,
    floor: { lowest: shape.lowest, highest: shape.highest },
  };
}

function cutTrench(digging: Digging, trench: Trench, shape: TrenchShape): DugQuantities {
  const { ground, findings } = digging;
  if (shape.tooMany) findings.push(benchFinding(trench.id, trench.name));
  const taken = ground.tally();
  let structureHit = 0;
  for (const { surface, box, part } of shape.pieces) {
    structureHit += ground.cut(surface, box, taken, part, shape.parts[part]!.floor);
  }
  findings.push(...reachFindings(digging, trench));
  // A pipe has to enter its tank: the ends of the trench may cut into it by about their width.
  if (structureHit > 2 * trench.width ** 2) findings.push(structureFinding(trench.id, trench.name));
  return quantitiesOf(digging, taken);
}

function shapeOf(
  digging: Digging,
  trench: Trench,
  legs: readonly PathLeg[],
  inverts: readonly (readonly InvertAt[])[],
): TrenchShape {
  const terms = wallTerms(digging, trench.walls);
  // The floor does not depend on the walls: first learn how deep it lies.
  const { lowest } = floorRange(trench, legs, inverts);
  const steepest = Math.max(trench.ends?.start ?? 0, trench.ends?.end ?? 0);
  const plan = settledPlan(terms, lowest, (reach) =>
    grownBox(trench.path, trench.width + reach + steepest * Math.max(0, reach)),
  );
  return trenchShape(trench, legs, inverts, plan);
}

function refillTrench(
  digging: Digging,
  trench: Trench,
  shape: TrenchShape,
  displaced: number,
): Filling {
  const { ground } = digging;
  const filling = new Filling();
  const put = (stage: Extent, material: string): CellLayer => placedLayer(digging, material, stage);
  const bedding = ground.refill(
    (part) => shape.parts[part]!.bedding,
    put("bedded", trench.bedding.material),
  );
  filling.add(trench.bedding.material, bedding);
  const zone = ground.refill((part) => shape.parts[part]!.zone, put("zone", trench.zone.material));
  filling.add(trench.zone.material, zone, displaced);
  digging.moved[digging.number]!.zone = zone.volume;
  const backfill = ground.refill(() => null, put("backfilled", trench.backfill), trench.crown);
  filling.add(trench.backfill, backfill);
  return filling;
}

/**
 * Outside volume of a pipe below the ground, m³, along its slope: over the stretches of earth, less
 * what runs inside a tank.
 */
function buriedVolume(
  pipe: Pipe,
  inverts: readonly InvertAt[],
  buried: readonly PathStretch[],
  inTank: readonly PathStretch[],
): number {
  let volume = 0;
  for (const stretch of buried) {
    for (const [from, to] of between(stretch, inverts, inTank)) {
      const mid = (from + to) / 2;
      if (inTank.some((tank) => mid > tank.from && mid < tank.to)) continue;
      const depth = (station: number): number =>
        groundOn(stretch, station) - (invertAt(inverts, station) - wallOf(pipe));
      const rate = (invertAt(inverts, to) - invertAt(inverts, from)) / (to - from);
      const area = meanBuriedArea(pipe.outside, depth(from), depth(to));
      volume += area * (to - from) * Math.hypot(1, rate);
    }
  }
  return volume;
}

/** Cuts a stretch where the pipe's grade breaks and where it enters or leaves a tank. */
function between(
  stretch: PathStretch,
  inverts: readonly InvertAt[],
  inTank: readonly PathStretch[],
): [number, number][] {
  const marks = [...inverts.map((at) => at.station), ...inTank.flatMap((t) => [t.from, t.to])]
    .filter((s) => s > stretch.from + 1e-9 && s < stretch.to - 1e-9)
    .sort((a, b) => a - b);
  const ends = [stretch.from, ...marks, stretch.to];
  // Marks of several things may lie on one place: what is between them has no length.
  return ends
    .slice(1)
    .flatMap((to, i): [number, number][] => (to > ends[i]! ? [[ends[i]!, to]] : []));
}

function groundOn(stretch: PathStretch, station: number): number {
  const share = (station - stretch.from) / (stretch.to - stretch.from);
  return stretch.start + share * (stretch.end - stretch.start);
}

/** The pipe as laid, in site coordinates. */
function pipeRun(
  ground: LayeredGround,
  trench: Trench,
  pipe: Pipe,
  inverts: readonly InvertAt[],
  legs: readonly PathLeg[],
  before: readonly PathStretch[],
): PipeRun {
  const buried = before.filter((stretch) => !stretch.structure);
  const length = pathLength(legs);
  const start = invertAt(inverts, 0);
  const end = invertAt(inverts, length);
  const crown = wallOf(pipe) + pipe.inside;
  const covers = buried.flatMap((stretch) =>
    between(stretch, inverts, []).flatMap(([from, to]) =>
      [from, to].map((s) => groundOn(stretch, s) - invertAt(inverts, s) - crown),
    ),
  );
  return {
    id: pipe.id,
    name: pipe.name,
    trench: trench.id,
    service: pipe.service,
    inside: pipe.inside,
    outside: pipe.outside,
    material: pipe.material,
    length,
    fall: length > 0 ? (start - end) / length : 0,
    drop: start - end,
    cover: { least: Math.min(...covers), most: Math.max(...covers) },
    stations: stationsOf(ground.base.tin.origin, legs, inverts, before),
  };
}

function stationsOf(
  origin: readonly [number, number, number],
  legs: readonly PathLeg[],
  inverts: readonly InvertAt[],
  before: readonly PathStretch[],
): PipeStation[] {
  const marks = [
    0,
    pathLength(legs),
    ...legs.map((leg) => leg.station),
    ...inverts.map((at) => at.station),
    ...before.flatMap((stretch) => [stretch.from, stretch.to]),
  ].sort((a, b) => a - b);
  const stations = marks.filter((s, i) => i === 0 || s - marks[i - 1]! > 1e-6);
  return stations.map((station) => {
    const there = before.filter((s) => station >= s.from - 1e-6 && station <= s.to + 1e-6);
    // Where a tank begins or ends, the ground beside it tells more than its lid.
    const on = there.find((s) => !s.structure) ?? there[0];
    const place: Place = placeAt(legs, station);
    return {
      station,
      at: [place[0] + origin[0], place[1] + origin[1]],
      ground: on ? groundOn(on, station) + origin[2] : NaN,
      invert: invertAt(inverts, station) + origin[2],
    };
  });
}
