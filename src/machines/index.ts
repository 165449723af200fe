/** Digging output, hours, days and hire: pure functions of a scheme and its dig. SI, h, money. */
export { planMachines, DEFAULT_HOURS_PER_DAY } from "./plan.js";
export type { Given } from "./plan.js";
export { catalogueDiggers, diggersOf, diggingTables, ownDiggerFindings } from "./catalogue.js";
export { axisToEdge, heldAgainst, placeOn, reachAtDepth } from "./canIt.js";
export type { CanContext } from "./canIt.js";
export { diggerPlace } from "./diggerPlace.js";
export type { DiggerPlace } from "./diggerPlace.js";
export { catalogueCranes, chartRow, liftRules, lineClearance } from "./cranes.js";
export type { ChartRow, Crane, LineClearance } from "./cranes.js";
export { firstPlaces, placesBeside } from "./besideHole.js";
export type { HoleBeside } from "./besideHole.js";
export { checkLift } from "./lift.js";
export type { LiftCrane, LiftResult, LineRoom, StandLift, TankLift } from "./liftTypes.js";
export { padAreaNeeded } from "./liftGround.js";
export { insideRings } from "./standing.js";
export type { GroundAt } from "./standing.js";
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
export { tasksOf } from "./tasks.js";
export type { TaskHours } from "./tasks.js";
export { daysSettings } from "./daysSettings.js";
export { hiredThings, hireOnce, hiresOf, termsAt } from "./hires.js";
export type { Hire, HiredThing } from "./hires.js";
export { coverWith, hireStays, keptLonger } from "./hireCover.js";
export type { HireCover, HireNeed, HirePlan, HireStay, HireTerms } from "./hireCover.js";
export { listedDays } from "./dayList.js";
export type { ListedDay } from "./dayList.js";
export { schedule, scheduleOnce, siteDays } from "./schedule.js";
export type { MachinesCosted, MachinesResult } from "./result.js";
export { handDigging, isBuried } from "./handDigging.js";
export type { HandDug } from "./handDigging.js";
export type { JobDays } from "./job.js";
export type { DayPattern, HoursPick } from "./schedule.js";
export { hireCatalogue } from "./hireCatalogue.js";
export type { HireCatalogue, HireRow } from "./hireCatalogue.js";
export type {
  DaysSettings,
  Resource,
  Schedule,
  SiteDay,
  Task,
  TaskKind,
  TimedJob,
  TimedTask,
  UseDay,
} from "./dayTypes.js";
export { chosenPrice } from "./prices.js";
export type { ChosenPrice } from "./prices.js";
export { knownMaterial, ownEarth } from "./ownEarth.js";
export { exactly, hoursAt, mapRange, multiplyRanges, sumRanges } from "./range.js";
export type {
  Candidate,
  MaterialHours,
  Range,
  Reason,
  Rental,
  RentalCover,
  WorkHours,
} from "./types.js";
