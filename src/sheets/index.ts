export { PAPERS } from "./paper.js";
export type { PaperId, PlanWindow, SheetContent, SheetJob, SheetMaker } from "./paper.js";
