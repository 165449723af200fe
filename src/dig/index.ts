export { cutsBeside } from "./beside.js";
export type { CutBeside } from "./beside.js";
export { areasOf, besideLine, inAreas, overlapOf, sizeOfAreas, unionOf } from "./planAreas.js";
export type { Areas } from "./planAreas.js";
export { dugColumns } from "./columns.js";
export type { DugColumn } from "./columns.js";
export { digScheme, ledgerGap } from "./dig.js";
export type { Dug } from "./dig.js";
export { digToStage, stageOf } from "./stage.js";
export type { StageDig, StageWork } from "./stage.js";
export type { Haul } from "./haul.js";
export { balanceEarth } from "./earth.js";
export { pipeLength } from "./pipeLength.js";
export { meanBuriedArea } from "./pipeVolume.js";
export { footprint } from "./reachCheck.js";
export { localWork, rectangle } from "./place.js";
export type { Extent } from "./work.js";
export type {
  ByMaterial,
  DigResult,
  Earth,
  PipeRun,
  PipeStation,
  WorkQuantities,
} from "./types.js";
