export { cautions } from "./cautions.js";
export { checkSafety } from "./checkSafety.js";
export { depthTriggers, layeredRuns, topWidth, wallClasses, wallClassSource } from "./wallRules.js";
export type { WallClass } from "./wallRules.js";
export { distanceBetween, publishedSetbacks, setbacksOf } from "./setbacks.js";
export { bodyShapes, limitShapes } from "./shapes.js";
export type { SetbackKept } from "./setbacks.js";
