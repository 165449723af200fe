export { checkFlow } from "./checkFlow.js";
export type { FlowGround } from "./checkFlow.js";
export type { Sizing } from "./design.js";
export type { Carries, Crossing } from "./drains.js";
export type { HighestTank } from "./highestTank.js";
export { joinedEnds } from "./joinedEnds.js";
export type { JoinedEnd } from "./joinedEnds.js";
export { levelToMeet } from "./levelToMeet.js";
export { holesIn } from "./pressureNetwork.js";
export type {
  BranchResult,
  DoseResult,
  FlotationResult,
  LinePlace,
  PressureResult,
  PumpResult,
} from "./pressureTypes.js";
export { pumpRows } from "./pumps.js";
export type { PumpRow } from "./pumps.js";
export type { Rule } from "./rule.js";
export { flowRule, flowRules } from "./rules.js";
export type { FlowRule } from "./rules.js";
export { fallRules, leastCoverFor, leastFallFor, mostFallFor } from "./fallRules.js";
export type { FallRule } from "./fallRules.js";
export { partingsOf } from "./partings.js";
export type { Parting } from "./partings.js";
export { planDistance, rectangleInPlan } from "./planDistance.js";
export type { PlanShape } from "./planDistance.js";
export { FLOW_SETTINGS } from "./settings.js";
export type { MoundSize } from "./sizingMound.js";
export { tankAt } from "./tankAt.js";
export { tankWater } from "./tankWater.js";
export type { TankWater } from "./tankWater.js";
export { boreSize, soldSize, wordingFor } from "./wording.js";
export type { Wording } from "./wording.js";
export type {
  EndMove,
  FlowResult,
  Mend,
  OutletJoint,
  PipeCheck,
  PipeVerdict,
  StaticLift,
  TankJoint,
} from "./types.js";
