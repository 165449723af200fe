export { checkFlow } from "./checkFlow.js";
export { fallRules, leastCoverFor, leastFallFor, mostFallFor } from "./fallRules.js";
export type { FallRule } from "./fallRules.js";
export { planDistance, rectangleInPlan } from "./planDistance.js";
export type { PlanShape } from "./planDistance.js";
export { FLOW_SETTINGS } from "./settings.js";
export { tankAt } from "./tankAt.js";
export { wordingFor } from "./wording.js";
export type { Wording } from "./wording.js";
export type {
  EndMove,
  FlowResult,
  Mend,
  PipeCheck,
  PipeVerdict,
  Rule,
  StaticLift,
  TankJoint,
} from "./types.js";
