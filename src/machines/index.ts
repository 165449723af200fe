/** Digging output, hours, days and hire: pure functions of a scheme and its dig. SI, h, money. */
export { planMachines, DEFAULT_HOURS_PER_DAY } from "./plan.js";
export { catalogueDiggers, diggingTables } from "./catalogue.js";
export type { Digger, DiggingTables, WayOfDigging } from "./catalogue.js";
export {
  bankForCompacted,
  compactedByFhwaShrink,
  compactedByNunnallyShrink,
  looseForCompacted,
  looseFromBank,
  truckLoads,
} from "./bulking.js";
export { cyclesPerHour, digOutput, swingDepthFactor, wayOfDigging } from "./output.js";
export type { Output } from "./output.js";
export { hirePriceIds, workingDays } from "./hire.js";
export { cheapestCover, HIRE_PERIODS, hirePrice } from "./rental.js";
export type { HireRates } from "./rental.js";
export { chosenPrice } from "./prices.js";
export type { ChosenPrice } from "./prices.js";
export { knownMaterial, ownEarth } from "./ownEarth.js";
export { exactly, hoursAt, mapRange, multiplyRanges, sumRanges } from "./range.js";
export type {
  Candidate,
  MachinesResult,
  MaterialHours,
  Range,
  Rental,
  RentalCover,
  WorkHours,
} from "./types.js";
