/** The hours, days and fuel of a digger as a person may open them. */
import type { Quantity } from "../site/index.js";
import { diggingTables } from "./catalogue.js";
import type { Digger } from "./catalogue.js";
import { workingDays } from "./hire.js";
import type { TimedWork } from "./hours.js";
import type { MachinesResult } from "./result.js";
import type { SurplusTime } from "./surplus.js";
import type { Range } from "./types.js";

/** The likely hours, days and fuel of one digger, opened. */
export function workingOf(
  chosen: {
    digger: Digger;
    works: readonly TimedWork[];
    setUp: Range;
    left?: SurplusTime;
    hours: Range;
  },
  hoursPerDay: number,
): MachinesResult["working"] {
  const { left } = chosen;
  const hours = chosen.hours.likely;
  const { source: setUpSource } = diggingTables().setUp;
  const worksIn = chosen.works.map((w) => ({ name: w.name, value: w.hours.likely, unit: "h" }));
  const hoursWorking: Quantity = {
    value: hours,
    unit: "h",
    formula:
      left === undefined
        ? "set-up + hours of every work"
        : "set-up + hours of every work + hours with what is left over",
    inputs: [
      { name: "set-up", value: chosen.setUp.likely, unit: "h" },
      ...worksIn,
      ...(left === undefined ? [] : [{ name: left.name, value: left.hours.likely, unit: "h" }]),
    ],
    source: `set-up: ${setUpSource}${left === undefined ? "" : `; left over: ${left.source}`}`,
  };
  return {
    hours: hoursWorking,
    days: {
      value: workingDays(chosen.hours, hoursPerDay).likely,
      unit: "d",
      formula: "hours ÷ hours per day, rounded up to whole days",
      inputs: [
        { name: "hours", value: hours, unit: "h" },
        { name: "hours per day", value: hoursPerDay, unit: "h" },
      ],
      source: "hire terms count 8 h as a day (published rental terms); yours may differ",
    },
    fuel: {
      value: hours * chosen.digger.fuelPerHour,
      unit: "m³",
      formula: "hours × fuel per hour",
      inputs: [
        { name: "hours", value: hours, unit: "h" },
        { name: "fuel per hour", value: chosen.digger.fuelPerHour, unit: "m³/h" },
      ],
      source: chosen.digger.source,
    },
  };
}
