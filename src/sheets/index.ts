export { nameOfMaterial } from "./earthNames.js";
export { fromEach, loadingUnit, loadingWords, onEach, percolation } from "./loading.js";
export { coveredArea, unpricedAmount, unpricedName, unpricedWords } from "./unpricedNames.js";
export { countOf, perOf } from "./per.js";
export type { Per } from "./per.js";
export { PAPERS } from "./paper.js";
export type {
  Face,
  Mark,
  Page,
  PaperId,
  SheetContent,
  SheetJob,
  SheetMaker,
  Spot,
  TextMark,
  Pen,
} from "./paper.js";
export { FACES, readFaces } from "./faces.js";
export type { FontBytes } from "./faces.js";
export { sheetDrawer, sheetSet, sheetsOf, usualPaper } from "./sheetsOf.js";
export type { SheetSet } from "./sheetsOf.js";
export { scaleInWords, scaleRatio } from "./scale.js";
export { svgOf } from "./svg.js";
export type { SvgOptions } from "./svg.js";
export { pdfOf } from "./pdf.js";
export type { PdfOptions } from "./pdf.js";
export { PLAN_SCALES } from "./plan/scales.js";
export { limitStyle } from "./plan/limitStyles.js";
export { kindName } from "./plan/drawLimits.js";
export { lineObstacles, placeLabels } from "./place.js";
export { layer } from "./strokes.js";
export { textWidth, wrapText } from "./textWidth.js";
