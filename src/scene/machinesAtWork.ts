import {
  craneAtWork,
  diggerAtWork,
  type CraneAtWork,
  type DiggerAtWork,
  type Stage,
} from "../estimate/index.js";
import { length, mass, type UnitSystem } from "../units/index.js";
import { words } from "../words/index.js";
import { toScene, type ScenePoint } from "./frame.js";
import type { CraneSizes, DiggerSizes } from "./machineShapes.js";
import type { SceneContents } from "./sceneTargets.js";

/** A machine as it stands at its work. Scene frame, m; turns in radians counter-clockwise from east. */
export type MachineAtWork = {
  at: ScenePoint;
  turn: number;
  /** Two lines: what it is, and what it does there. */
  says: readonly [string, string];
  /** Corners of a box about it, for pointing. */
  about: readonly ScenePoint[];
} & (
  | { kind: "digger"; sizes: DiggerSizes; tip: { ahead: number; up: number } }
  | {
      kind: "crane";
      sizes: CraneSizes;
      swing: number;
      works: boolean;
      /** Where hook and slings hang: end of the boom, hook, and the corners of the tank's top. */
      hook: readonly [ScenePoint, ScenePoint];
      slings: readonly ScenePoint[];
    }
);

/** The stages at which the digger stands at its work, and the crane at its own. */
const DIGS: readonly Stage[] = ["dug", "bedded", "zone"];
const LIFTS: Stage = "set";

/**
 * The machine that the stage asks for, at the picked work or else the first tank. Null at the other
 * stages, without an estimate, and where nothing entered leaves it a place.
 */
export function machineAtWork(
  contents: SceneContents,
  schemeId: string,
  picked: string | null,
): MachineAtWork | null {
  const { site, estimate, stage } = contents;
  // After a scheme was left, its estimate may still be the one that is there.
  if (estimate === null || estimate.scheme !== schemeId) return null;
  if (DIGS.includes(stage)) {
    const standing = diggerAtWork(site, schemeId, estimate, picked);
    return standing === null ? null : diggerIn(contents, standing);
  }
  if (stage !== LIFTS) return null;
  const standing = craneAtWork(site, schemeId, estimate, picked);
  return standing === null ? null : craneIn(contents, standing);
}

function diggerIn(contents: SceneContents, standing: DiggerAtWork): MachineAtWork | null {
  const { frame, ground, site } = contents;
  const { digger } = standing;
  const [x, y] = toScene(frame, standing.at);
  const [tx, ty] = toScene(frame, standing.towards);
  const z = ground.heightAt(x, y)?.z;
  if (z === undefined) return null;
  const turn = Math.atan2(ty - y, tx - x);
  const ahead = Math.min(Math.hypot(tx - x, ty - y), 0.85 * digger.reach);
  const under = ground.heightAt(x + ahead * Math.cos(turn), y + ahead * Math.sin(turn))?.z ?? z;
  const tall = 0.3 + 0.12 * digger.trackLength + 1.6;
  return {
    kind: "digger",
    at: [x, y, z],
    turn,
    says: diggerSays(standing, site.units),
    about: boxAt([x, y, z], Math.max(digger.tailSwing, digger.trackLength / 2), tall),
    sizes: digger,
    tip: { ahead, up: under - z + 0.12 },
  };
}

/** Weight to two figures: a maker's own is no finer. */
function about(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Math.round(value / step) * step;
}

function diggerSays({ digger, name }: DiggerAtWork, units: UnitSystem): [string, string] {
  const weight = mass.fromSystem(about(mass.toSystem(digger.mass, units)), units);
  const said = words.shading;
  const wide = length.print(digger.width, units, { inchParts: 1 });
  return [said.digger(mass.print(weight, units), wide), said.digging(name)];
}

function craneIn(contents: SceneContents, standing: CraneAtWork): MachineAtWork | null {
  const { frame, ground, site } = contents;
  const { crane, tank, stand } = standing;
  const [x, y] = toScene(frame, standing.at);
  const [tx, ty] = toScene(frame, tank.at);
  const z = ground.heightAt(x, y)?.z;
  if (z === undefined) return null;
  const aim = Math.atan2(ty - y, tx - x);
  // The pads are a square along east and north: the truck lies so that it lifts over its side.
  const turn = Math.abs(Math.cos(aim)) > Math.SQRT1_2 ? Math.PI / 2 : 0;
  const radius = stand.radius.value;
  const rise = Math.min(11, Math.max(5, 0.6 * radius + 3));
  const top = tank.base + tank.body.height - frame.origin[2];
  const slings = corners(tank.bearing, tank.body).map(([dx, dy]): ScenePoint => [
    tx + dx,
    ty + dy,
    top,
  ]);
  const spread = crane.outriggers ?? null;
  return {
    kind: "crane",
    at: [x, y, z],
    turn,
    says: craneSays(standing, site.units),
    about: boxAt([x, y, z], (spread ?? 4) / 2, 2.8),
    sizes: { spread, padArea: crane.padArea ?? null, radius, rise },
    swing: aim - turn,
    works: stand.works,
    hook: [
      [tx, ty, z + rise],
      [tx, ty, Math.min(z + rise - 0.5, top + 1.4)],
    ],
    slings,
  };
}

function craneSays({ crane, tank, stand }: CraneAtWork, units: UnitSystem): [string, string] {
  const said = words.shading;
  const far = length.print(stand.radius.value, units, { inchParts: 1 });
  const apart = crane.outriggers;
  const figures =
    apart === undefined
      ? said.crane(crane.name, far)
      : said.craneOnPads(crane.name, far, length.print(apart, units, { inchParts: 1 }));
  return [
    figures,
    stand.works ? said.lifting(tank.name, stand.name) : said.notLifting(tank.name, stand.name),
  ];
}

/** The corners of a body about its middle, turned by its bearing. */
function corners(bearing: number, body: { length: number; width: number }): [number, number][] {
  const way = (bearing * Math.PI) / 180;
  const [along, across] = [
    [Math.sin(way), Math.cos(way)],
    [Math.cos(way), -Math.sin(way)],
  ] as const;
  return [-1, 1].flatMap((i) =>
    [-1, 1].map((j): [number, number] => [
      (i * body.length * along[0] + j * body.width * across[0]) / 2,
      (i * body.length * along[1] + j * body.width * across[1]) / 2,
    ]),
  );
}

function boxAt([x, y, z]: ScenePoint, half: number, tall: number): ScenePoint[] {
  return [-half, half].flatMap((dx) =>
    [-half, half].flatMap((dy) => [0, tall].map((dz): ScenePoint => [x + dx, y + dy, z + dz])),
  );
}
