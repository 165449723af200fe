export { cautions } from "./cautions.js";
export { checkSafety } from "./checkSafety.js";
export { depthTriggers, layeredRuns, topWidth, wallClasses, wallClassSource } from "./wallRules.js";
export type { Trigger, WallClass } from "./wallRules.js";
