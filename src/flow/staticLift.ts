import type { PipeRun } from "../dig/index.js";
import type { Finding, Quantity, Scheme, Tank } from "../site/index.js";
import { pumpWell } from "./fallRules.js";
import { FLOW_SETTINGS } from "./settings.js";
import { tankAt } from "./tankAt.js";
import type { StaticLift } from "./types.js";
import type { Wording } from "./wording.js";

/**
 * Static lift of every pressure pipe that starts at a tank: from the tank's low water to the higher
 * of the far end and the highest place along the path. A pressure pipe that starts at no tank gives
 * a finding and no lift; one whose lift is not above 0 gives a note on siphoning.
 */
export function staticLifts(
  runs: readonly PipeRun[],
  scheme: Scheme,
  words: Wording,
): { lifts: StaticLift[]; findings: Finding[] } {
  const lifts: StaticLift[] = [];
  const findings: Finding[] = [];
  for (const run of runs) {
    if (run.service !== "pressure") continue;
    const first = run.stations[0];
    const last = run.stations.at(-1);
    if (first === undefined || last === undefined) {
      throw new Error(`pressure pipe ${run.id}: got no stations, expected both ends`);
    }
    const tank = tankAt(first.at, scheme, true);
    if (tank === undefined) {
      findings.push(noTank(run, tankAt(last.at, scheme, true), words));
      continue;
    }
    // Beyond the survey: checkPipe has said so, and there is no figure to give.
    if (!run.stations.every((each) => Number.isFinite(each.invert))) continue;
    const lift = liftFrom(tank, run, last.invert);
    lifts.push(lift);
    if (lift.lift.value <= 0) findings.push(siphons(run, tank, lift, words));
  }
  return { lifts, findings };
}

function liftFrom(tank: Tank, run: PipeRun, outlet: number): StaticLift {
  const highest = run.stations.reduce((most, each) => Math.max(most, each.invert), -Infinity);
  const low = lowWaterOf(tank);
  const lift: Quantity = {
    value: Math.max(outlet, highest) - low.elevation,
    unit: "m",
    formula: `the higher of the far end and the highest place along the pipe − low water, where ${low.formula}`,
    inputs: [
      { name: "far end", value: outlet, unit: "m" },
      { name: "highest place along the pipe", value: highest, unit: "m" },
      { name: "low water", value: low.elevation, unit: "m" },
      { name: "underside of the tank", value: tank.base, unit: "m" },
      ...low.inputs,
    ],
    source: low.source,
  };
  return {
    pipe: run.id,
    name: run.name,
    tank: tank.id,
    lowWater: low.elevation,
    outlet,
    highest,
    lift,
  };
}

/** Elevation at which the pump stops, m: the tank's own, or the usual build-up above its underside. */
export function lowWaterOf(tank: Tank): {
  elevation: number;
  formula: string;
  inputs: Quantity["inputs"];
  source: string;
} {
  const given = tank.body.lowWater;
  if (given !== undefined) {
    return {
      elevation: tank.base + given,
      formula: "low water = underside of the tank + the tank's low water level",
      inputs: [{ name: "low water above the underside", value: given, unit: "m" }],
      source: "geometry; the tank's low water level as entered",
    };
  }
  const { slab, intake, pump } = pumpWell();
  return {
    elevation: tank.base + slab.value + intake.value + pump.value,
    formula:
      "low water = underside of the tank + its floor + gap below the pump's intake + height of the pump, which stays under water",
    inputs: [
      { name: "thickness of the tank's floor", value: slab.value, unit: "m" },
      { name: "gap below the pump's intake", value: intake.value, unit: "m" },
      { name: "height of the pump", value: pump.value, unit: "m" },
    ],
    source: `gap: ${intake.source}; floor and pump: ${pump.source}. Enter the tank's own low water level instead`,
  };
}

function noTank(run: PipeRun, atFarEnd: Tank | undefined, words: Wording): Finding {
  const turn =
    atFarEnd === undefined
      ? "Start its path in the pump tank."
      : `Its far end is at ${atFarEnd.name}: draw the path from the tank outwards.`;
  const reach = words.length(FLOW_SETTINGS.meetsTankWithin);
  return {
    level: "caution",
    code: "lift.no-tank",
    where: run.id,
    text: `${run.name} is a pressure pipe that starts at no tank (none within ${reach} of a tank's hole), so its lift is not known. ${turn}`,
    source: "geometry",
  };
}

function siphons(run: PipeRun, tank: Tank, lift: StaticLift, words: Wording): Finding {
  const below = words.length(-lift.lift.value);
  return {
    level: "note",
    code: "lift.below-low-water",
    where: run.id,
    text: `${run.name} lies wholly at or below the low water of ${tank.name} (${below} below it at its highest), so it can go on draining the tank by siphon after the pump stops. A gravity run may do, or the pipe needs an air vent at its top.`,
    source: "common practice, no source",
  };
}
