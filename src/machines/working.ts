/** The hours, days and fuel of a digger as a person may open them. */
import type { Quantity } from "../site/index.js";
import { diggingTables } from "./catalogue.js";
import type { Digger } from "./catalogue.js";
import { workingDays } from "./hire.js";
import type { TimedWork } from "./hours.js";
import type { MachinesResult } from "./result.js";
import type { Range } from "./types.js";

/** The likely hours, days and fuel of one digger, opened. */
export function workingOf(
  chosen: { digger: Digger; works: readonly TimedWork[]; setUp: Range; hours: Range },
  hoursPerDay: number,
): MachinesResult["working"] {
  const hours = chosen.hours.likely;
  const { source: setUpSource } = diggingTables().setUp;
  const worksIn = chosen.works.map((w) => ({ name: w.name, value: w.hours.likely, unit: "h" }));
  const hoursWorking: Quantity = {
    value: hours,
    unit: "h",
    formula: "set-up + hours of every work",
    inputs: [{ name: "set-up", value: chosen.setUp.likely, unit: "h" }, ...worksIn],
    source: `set-up: ${setUpSource}`,
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
