export { nameOfMaterial } from "./earthNames.js";
export { PAPERS } from "./paper.js";
export type { Page, PaperId, PlanWindow, SheetContent, SheetJob, SheetMaker } from "./paper.js";
export { FACES, readFaces } from "./faces.js";
export type { FontBytes } from "./faces.js";
export { sheetsOf } from "./sheetsOf.js";
export { svgOf } from "./svg.js";
export type { SvgOptions } from "./svg.js";
