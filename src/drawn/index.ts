export { dugName, materialName, sumOf } from "./amounts.js";
export { ColumnHeads } from "./ColumnHeads.js";
export { download, downloadBlob } from "./download.js";
export { EarthPatterns, patternId } from "./EarthPatterns.js";
export { Mark } from "./Mark.js";
export { SectionSheet } from "./SectionSheet.js";
export type { SectionSheetProps } from "./SectionSheet.js";
export { useMedia } from "./useMedia.js";
export { StageSlider } from "./StageSlider.js";
