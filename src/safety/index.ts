export { cautions } from "./cautions.js";
export { checkSafety } from "./checkSafety.js";
export { depthTriggers, layeredRuns, topWidth, wallClasses, wallClassSource } from "./wallRules.js";
export type { WallClass } from "./wallRules.js";
export { distanceBetween, publishedSetbacks, setbacksOf, setbackTables } from "./setbacks.js";
export { bodiesOf, bodyShapes, digsOf, limitShapes } from "./shapes.js";
export type { SetbackKept, SetbackTable } from "./setbacks.js";
export { nearestLimits, setbackBands } from "./bands.js";
export type { SetbackBand, SetbackLine } from "./bands.js";
