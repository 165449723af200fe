/** Hole's edge, overhead lines and pads of a crane lift. */
import { ruleOf } from "../site/index.js";
import type { PlanPoint, Quantity, Tank } from "../site/index.js";
import { liftRules, lineClearance } from "./cranes.js";
import type { LiftJob, LineRoom } from "./liftTypes.js";
import { distanceToLimit, distanceToRings, isOverheadLine } from "./standing.js";

/** Standard gravity, m/s²: ISO 80000-3. */
const GRAVITY = 9.80665;

/**
 * m from the nearest pad to the edge of the tank's hole, and what is to be kept. The pads stand at
 * the corners of a square turned any way, so the nearest is half its diagonal off the axis. Null
 * where the dig has no outline of the hole.
 */
export function edgeRoom(
  { site, dig, lift, crane }: LiftJob,
  tank: Tank,
  at: PlanPoint,
): { distance: Quantity; needed: Quantity } | null {
  const hole = dig.works.find(({ id }) => id === tank.id);
  const rings = hole?.outlines?.daylight ?? [];
  if (hole === undefined || rings.length === 0) return null;
  const away = distanceToRings(at, rings);
  const spread = crane.outriggers ?? 0;
  const depth = Math.max(hole.deepest, hole.tallestFace);
  const usual = ruleOf(site, "crane-back");
  const factor = lift.edgeFactor ?? usual.value;
  return {
    distance: {
      value: Math.max(0, away - spread / Math.SQRT2),
      unit: "m",
      formula:
        "stand to the hole's top edge − between pads ÷ √2, half the diagonal of the square that they stand at",
      inputs: [
        { name: "stand to edge", value: away, unit: "m" },
        { name: "between pads", value: spread, unit: "m" },
      ],
      source: "geometry",
    },
    needed: {
      value: factor * depth,
      unit: "m",
      formula: "edge factor × depth of the hole",
      inputs: [
        { name: "edge factor", value: factor, unit: "" },
        { name: "depth", value: depth, unit: "m" },
      ],
      source: lift.edgeFactor === undefined ? usual.source : "factor set in this scheme",
    },
  };
}

/**
 * The overhead line that leaves least room over what is to be kept; null without lines. Boom and load
 * may be anywhere in the circle of the radius and half the tank's diagonal; heights are not counted.
 */
export function lineRoom(
  { site }: LiftJob,
  tank: Tank,
  at: PlanPoint,
  radius: number,
): LineRoom | null {
  const half = Math.hypot(tank.body.length, tank.body.width) / 2;
  let worst: LineRoom | null = null;
  for (const limit of (site.limits ?? []).filter(isOverheadLine)) {
    const away = distanceToLimit(at, limit);
    if (!Number.isFinite(away)) continue;
    const { least, isOwners, source } = lineClearance(limit.voltage);
    const room = Math.max(0, away - radius - half);
    const line: LineRoom = {
      limit: limit.id,
      name: limit.name ?? limit.kind,
      distance: {
        value: room,
        unit: "m",
        formula: "stand to line in plan − radius − half the tank's diagonal",
        inputs: [
          { name: "stand to line", value: away, unit: "m" },
          { name: "radius", value: radius, unit: "m" },
          { name: "half the tank's diagonal", value: half, unit: "m" },
        ],
        source: "geometry",
      },
      needed: {
        value: least,
        unit: "m",
        formula: "least distance by the line's voltage",
        inputs:
          limit.voltage === undefined ? [] : [{ name: "voltage", value: limit.voltage, unit: "V" }],
        source,
      },
      isAskFirst: room < ruleOf(site, "line-ask").value,
      isOwners,
    };
    if (worst === null || room - least < worst.distance.value - worst.needed.value) worst = line;
  }
  return worst;
}

/** Pa under the most loaded pad; null without the crane's mass or the pad's area. */
export function padPressure({ crane, lift }: LiftJob, load: number): Quantity | null {
  const { mass, padArea } = crane;
  if (mass === undefined || padArea === undefined) return null;
  const usual = liftRules().padShare;
  const share = lift.padShare ?? usual.value;
  return {
    value: (share * (mass + load) * GRAVITY) / padArea,
    unit: "Pa",
    formula: "share on one pad × (crane + load) × gravity ÷ area of the pad",
    inputs: [
      { name: "share on one pad", value: share, unit: "" },
      { name: "crane", value: mass, unit: "kg" },
      { name: "load", value: load, unit: "kg" },
      { name: "gravity", value: GRAVITY, unit: "m/s²" },
      { name: "area of the pad", value: padArea, unit: "m²" },
    ],
    source: lift.padShare === undefined ? usual.source : "share set in this scheme",
  };
}

/**
 * m² that one pad needs so that the ground is pressed with no more than `bearing` Pa: share of crane
 * and load, kg, on it as weight ÷ bearing. Throws on a bearing that is not positive.
 */
export function padAreaNeeded(craneAndLoad: number, share: number, bearing: number): number {
  if (!(bearing > 0)) throw new Error(`padAreaNeeded: got bearing ${bearing}, expected over 0`);
  return (share * craneAndLoad * GRAVITY) / bearing;
}
