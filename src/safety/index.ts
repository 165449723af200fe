export { cautions, deliveryCautions } from "./cautions.js";
export { checkSafety } from "./checkSafety.js";
export { checkStanding } from "./checkStanding.js";
export { depthTriggers, layeredRuns, topWidth, wallClasses, wallClassSource } from "./wallRules.js";
export type { WallClass } from "./wallRules.js";
export {
  distanceBetween,
  isKeptOffWater,
  publishedSetbacks,
  setbacksOf,
  setbackTables,
} from "./setbacks.js";
export { bodiesOf, bodyShapes, digsOf, limitShapes } from "./shapes.js";
export type { SetbackKept, SetbackTable } from "./setbacks.js";
export { nearestLimits, setbackBands, setbackLines } from "./bands.js";
export type { SetbackBand, SetbackLine } from "./bands.js";
export { setbackField, setbacksAsked } from "./bandField.js";
export type { SetbackField } from "./bandField.js";
export { checkLoads } from "./edges.js";
export type { EdgeLoad } from "./edges.js";
export type { HoleGround } from "./holeFloor.js";
export type { HoleLayer, HoleReport } from "./holes.js";
export type { Ladder } from "./ladders.js";
