export { nameOfMaterial } from "./earthNames.js";
export { PAPERS } from "./paper.js";
export type { Page, PaperId, PlanWindow, SheetContent, SheetJob, SheetMaker } from "./paper.js";
