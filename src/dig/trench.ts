import type { LayeredGround, Place } from "../ground/index.js";
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
import { structureFinding } from "./tank.js";
import { trenchShape, type TrenchShape } from "./trenchSurface.js";
import type { PipeRun, PipeStation, WorkQuantities } from "./types.js";
import { benchFinding, grownBox, wallPlan, wallReach } from "./walls.js";
import { Filling, materialsMet, placedLayer, reached, type Digging } from "./work.js";

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
  if (shape.tooMany) digging.findings.push(benchFinding(trench.id, trench.name));
  const taken = ground.tally();
  let structureHit = 0;
  for (const { surface, box, part } of shape.pieces) {
    structureHit += ground.cut(surface, box, taken, part, shape.parts[part]!.floor);
  }
  digging.findings.push(...reachFindings(ground, trench));
  const { area, deepest, tallest } = ground.markedExtent();
  const inTank = surfaceAlong(ground, legs).filter((stretch) => stretch.structure);
  const buried = before.filter((stretch) => !stretch.structure);
  const displaced = trench.pipes.reduce(
    (sum, pipe, i) => sum + buriedVolume(pipe, inverts[i]!, buried, inTank),
    0,
  );
  const fill = refillTrench(digging, trench, shape, displaced);
  // A pipe has to enter its tank: the ends of the trench may cut into it by about their width.
  if (structureHit > 2 * trench.width ** 2) {
    digging.findings.push(structureFinding(trench.id, trench.name));
  }
  trench.pipes.forEach((pipe, i) => {
    digging.pipes.push(pipeRun(ground, trench, pipe, inverts[i]!, legs, buried));
  });
  const cut = taken.record();
  return {
    id: trench.id,
    name: trench.name,
    kind: trench.kind,
    cut,
    fill: fill.record(),
    displaced,
    floor: { lowest: shape.lowest, highest: shape.highest },
    deepest,
    tallestFace: tallest,
    daylight: area,
    materialsMet: materialsMet(ground, cut),
  };
}

function shapeOf(
  digging: Digging,
  trench: Trench,
  legs: readonly PathLeg[],
  inverts: readonly (readonly InvertAt[])[],
): TrenchShape {
  const { ground } = digging;
  // First with plain vertical walls, to learn the floor; then with as many benches as it needs.
  const { lowest } = trenchShape(trench, legs, inverts, wallPlan({ by: "run", run: 0 }, 0, 0), 0);
  let height = Math.max(0, ground.highestIn() - lowest);
  for (let pass = 0; ; pass++) {
    const plan = wallPlan(trench.walls, height, digging.flattestRun);
    const reach = wallReach(plan, height);
    const seen = Math.max(
      0,
      ground.highestIn(grownBox(trench.path, trench.width + reach)) - lowest,
    );
    if (seen >= height || pass === 3) return trenchShape(trench, legs, inverts, plan, reach);
    height = seen;
  }
}

function refillTrench(
  digging: Digging,
  trench: Trench,
  shape: TrenchShape,
  displaced: number,
): Filling {
  const { ground } = digging;
  const fill = new Filling();
  if (reached(digging, "bedded")) {
    const layer = placedLayer(digging, trench.bedding.material);
    fill.add(
      trench.bedding.material,
      ground.refill((part) => shape.parts[part]!.bedding, layer).volume,
    );
  }
  if (reached(digging, "backfilled")) {
    const layer = placedLayer(digging, trench.zone.material);
    const zone = ground.refill((part) => shape.parts[part]!.zone, layer).volume;
    fill.add(trench.zone.material, Math.max(0, zone - displaced));
    fill.add(
      trench.backfill,
      ground.refill(() => null, placedLayer(digging, trench.backfill), trench.crown ?? 0).volume,
    );
  }
  return fill;
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
  return ends.slice(1).map((to, i): [number, number] => [ends[i]!, to]);
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
  buried: readonly PathStretch[],
): PipeRun {
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
    stations: stationsOf(ground.base.tin.origin, legs, inverts, buried),
  };
}

function stationsOf(
  origin: readonly [number, number, number],
  legs: readonly PathLeg[],
  inverts: readonly InvertAt[],
  buried: readonly PathStretch[],
): PipeStation[] {
  const marks = [
    0,
    pathLength(legs),
    ...legs.map((leg) => leg.station),
    ...inverts.map((at) => at.station),
    ...buried.flatMap((stretch) => [stretch.from, stretch.to]),
  ].sort((a, b) => a - b);
  const stations = marks.filter((s, i) => i === 0 || s - marks[i - 1]! > 1e-6);
  return stations.map((station) => {
    const on = buried.find((s) => station >= s.from - 1e-6 && station <= s.to + 1e-6);
    const place: Place = placeAt(legs, station);
    return {
      station,
      at: [place[0] + origin[0], place[1] + origin[1]],
      ground: on ? groundOn(on, station) + origin[2] : NaN,
      invert: invertAt(inverts, station) + origin[2],
    };
  });
}
