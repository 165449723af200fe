import { planDose, type ChamberShape, type NetworkSolution } from "../hydraulics/index.js";
import type { PressureSystem, Quantity, Tank } from "../site/index.js";
import { pumpWell } from "./fallRules.js";
import type { PressureParts } from "./pressureNetwork.js";
import type { DoseResult } from "./pressureTypes.js";

/** A chamber's inside as it counts for levels: m over its floor. */
export interface Chamber {
  shape: ChamberShape;
  /** m from floor to cover, from floor to the inlet's invert where known, and the floor's elevation. */
  height: number;
  inlet?: number;
  floor: number;
}

/** m: wall, floor and cover of a precast tank where the file does not say (typical, no source). */
const WALL = 0.075;
const COVER = 0.1;

/** The chamber that the pump stands in: as given, else a box of the tank's body less its walls. */
export function chamberOf(system: PressureSystem, tank: Tank): Chamber {
  const floor = system.floor ?? pumpWell().slab.value;
  const shape: ChamberShape = system.chamber ?? {
    by: "box",
    length: tank.body.length - 2 * WALL,
    width: tank.body.width - 2 * WALL,
  };
  const { height, inlet } = tank.body;
  const own = { shape, floor: tank.base + floor, height: height - floor - COVER };
  return inlet === undefined ? own : { ...own, inlet: inlet - floor };
}

/** The dose and the float levels of a system at the flow that its pump gives. */
export function doseOf(
  { system, lowWater }: PressureParts,
  chamber: Chamber,
  daily: Quantity,
  drainBack: number,
  solved: NetworkSolution,
): DoseResult {
  const { dose } = system;
  const day = daily.value * 86400;
  const volume = dose.volume ?? day / dose.perDay;
  const plan = planDose({
    shape: chamber.shape,
    height: chamber.height,
    ...(chamber.inlet !== undefined && { inlet: chamber.inlet }),
    daily: daily.value,
    volume,
    drainBack,
    off: lowWater - chamber.floor,
    alarmAbove: dose.alarmAbove ?? USUAL_ALARM,
    reserve: dose.reserve ?? day,
    pumpFlow: solved.sourceFlow,
    inflow: daily.value,
  });
  return {
    volume: {
      value: volume,
      unit: "m³",
      formula: dose.volume === undefined ? "the day's flow ÷ doses a day" : "as entered",
      inputs: [
        { name: "day's flow", value: day, unit: "m³" },
        { name: "doses a day", value: dose.perDay, unit: "each" },
      ],
      source: daily.source,
    },
    runTime:
      plan.runTime === null
        ? null
        : {
            value: plan.runTime,
            unit: "s",
            formula: "(dose + what runs back) ÷ (the pump's flow − the day's mean flow)",
            inputs: [
              { name: "dose", value: volume, unit: "m³" },
              { name: "runs back", value: drainBack, unit: "m³" },
              { name: "pump's flow", value: solved.sourceFlow, unit: "m³/s" },
              { name: "day's mean flow", value: daily.value, unit: "m³/s" },
            ],
            source: "geometry",
          },
    plan,
    between: (volume / daily.value) * (system.alternating === true ? 2 : 1),
  };
}

/** m of the alarm above the start: 3 in, as in the worked chamber of 42 × 60 in (trade journal, 2015). */
const USUAL_ALARM = 0.0762;
