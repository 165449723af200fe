import type { Finding, PlanPoint, Quantity, Scheme, Tank } from "../site/index.js";
import { flotation, WATER_DENSITY } from "../hydraulics/index.js";
import type { FlotationResult } from "./pressureTypes.js";
import { flowRule } from "./rules.js";
import { tankWater, type TankWater } from "./tankWater.js";
import type { Wording } from "./wording.js";

/** What is known of the ground and its water at a place, as of checkFlow. */
interface WetGround {
  groundAt: (place: PlanPoint) => number;
  waterAt?: ((place: PlanPoint) => number) | null;
}

/**
 * Every tank, empty, against the scheme's highest groundwater or the water as the probes met it,
 * whichever comes higher, where that comes highest over the floor of its hole. A tank without a mass
 * or ground is left out. None when neither water is known.
 */
export function tanksAfloat(scheme: Scheme, { groundAt, waterAt }: WetGround): FlotationResult[] {
  const set = scheme.flow?.flotation;
  return scheme.works.flatMap((tank) => {
    if (tank.kind !== "tank" || tank.body.emptyMass === undefined) return [];
    const ground = groundAt(tank.at);
    const said = set === undefined ? null : tankWater(tank, groundAt, () => set.water);
    const met = waterAt ? tankWater(tank, groundAt, waterAt) : null;
    // What was met on one day is no more than the highest of the year: a lower one set is wrong.
    const isMet = met !== null && met.elevation > (said?.elevation ?? -Infinity) + NOTICED;
    const water = isMet ? met : said;
    if (water === null || !Number.isFinite(ground)) return [];
    const result = afloat(tank, tank.body.emptyMass, ground, water, scheme);
    if (!isMet) return [result];
    return [{ ...result, met: true, ...(said && { over: { met: met.depth, set: said.depth } }) }];
  });
}

/** m of water that nobody would tell apart. */
const NOTICED = 0.005;

function afloat(
  tank: Tank,
  emptyMass: number,
  ground: number,
  water: TankWater,
  scheme: Scheme,
): FlotationResult {
  const { length, width, height } = tank.body;
  const wanted = flowRule("float-factor", scheme);
  const soil = flowRule("soil-weight", scheme);
  const depth = water.elevation - tank.base;
  const cover = ground - tank.base - height;
  const anchor = scheme.flow?.flotation?.anchor ?? 0;
  const result = flotation({
    length,
    width,
    height,
    emptyMass,
    water: depth,
    cover,
    soilDensity: soil.value,
    anchor,
    factor: wanted.value,
  });
  const { uplift, weight } = workings(tank.body, { emptyMass, depth, cover, soil, anchor }, result);
  return {
    tank: tank.id,
    name: tank.name,
    factor: Number.isFinite(result.factor) ? result.factor : null,
    wanted: wanted.value,
    bare: result.uplift > 0 ? (result.tank + result.anchor) / result.uplift : null,
    uplift,
    weight,
    coverMore: result.coverMore,
    anchorMore: result.anchorMore,
  };
}

/** What of a tank's place and ground goes into the sums; m and kg. */
interface Standing {
  emptyMass: number;
  depth: number;
  cover: number;
  soil: { value: number; source: string };
  anchor: number;
}

/** Uplift and what holds the tank down, each so that it can be done again by hand. */
function workings(
  { length, width, height }: Tank["body"],
  { emptyMass, depth, cover, soil, anchor }: Standing,
  result: ReturnType<typeof flotation>,
): { uplift: Quantity; weight: Quantity } {
  const plan = [
    { name: "length", value: length, unit: "m" },
    { name: "width", value: width, unit: "m" },
  ];
  const drowned = Math.min(Math.max(0, cover), Math.max(0, depth - height));
  const waterWeighs = { name: "water", value: WATER_DENSITY, unit: "kg/m³" };
  const uplift: Quantity = {
    value: result.uplift,
    unit: "N",
    formula:
      "weight of the water that it stands in place of: length × width × depth of water, the tank's height at most, × water's weight",
    inputs: [
      ...plan,
      { name: "the tank's height", value: height, unit: "m" },
      waterWeighs,
      { name: "depth of water over the underside", value: Math.max(0, depth), unit: "m" },
    ],
    source: "Archimedes' principle",
  };
  const weight: Quantity = {
    value: result.tank + result.soil + result.anchor,
    unit: "N",
    formula:
      "empty tank + length × width × (ground over the top × soil − of that in water × water's weight) + anchor",
    inputs: [
      { name: "empty tank", value: emptyMass, unit: "kg" },
      ...plan,
      { name: "ground over the top", value: Math.max(0, cover), unit: "m" },
      { name: "of that in water", value: drowned, unit: "m" },
      { name: "soil", value: soil.value, unit: "kg/m³" },
      waterWeighs,
      { name: "anchor", value: anchor, unit: "kg" },
    ],
    source: `soil: ${soil.source}`,
  };
  return { uplift, weight };
}

/** A groundwater set lower than a probe met it: the tank is weighed against what was met. */
export function waterFindings(results: readonly FlotationResult[], words: Wording): Finding[] {
  return results.flatMap(({ tank, name, over }): Finding[] => {
    if (over === undefined) return [];
    const text = `The highest groundwater is set ${words.length(over.set)} below the ground, but at ${name} it lies ${words.length(over.met)} below by what the probes met, which is higher. The tank is weighed against that. Enter the highest of the year, which is no lower.`;
    return [
      { level: "caution", code: "tank.water-set-low", where: tank, text, source: "geometry" },
    ];
  });
}

/** A tank that may float up when it stands empty in groundwater. */
export function floatFindings(
  results: readonly FlotationResult[],
  scheme: Scheme,
  words: Wording,
): Finding[] {
  const rule = flowRule("float-factor", scheme);
  return results.flatMap((result): Finding[] => {
    if (result.factor === null || result.factor >= result.wanted - 1e-9) return [];
    return [
      {
        level: result.factor < 1 ? "stop" : "caution",
        code: "tank.floats",
        where: result.tank,
        text: `${result.name}, empty with groundwater as ${result.met === true ? "the probes met it" : "high as set"}, weighs ${result.factor.toFixed(2)} times its uplift; ${result.wanted} is wanted. ${words.length(result.coverMore)} more ground over it or an anchor of ${words.mass(result.anchorMore)} (weighed in water) would do. Never pump it out while water stands round it; ask a designer.`,
        source: rule.source,
      },
    ];
  });
}

/** A tank that may float up between being set and being covered. */
export function bareFloatFindings(results: readonly FlotationResult[], scheme: Scheme): Finding[] {
  const rule = flowRule("float-factor", scheme);
  return results.flatMap(({ name, tank, bare, wanted, met }): Finding[] => {
    if (bare === null || bare >= wanted - 1e-9) return [];
    const high = met === true ? "the probes met it" : "high as set";
    const text = `${name}, set and empty but not yet covered, with groundwater as ${high}, weighs ${bare.toFixed(2)} times its uplift; ${wanted} is wanted. Until it is covered keep its hole drained, or fill it with water as its maker says.`;
    return [{ level: "caution", code: "tank.floats-bare", where: tank, text, source: rule.source }];
  });
}
