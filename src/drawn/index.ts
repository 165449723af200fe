export { EarthPatterns, patternId } from "./EarthPatterns.js";
export { SectionSheet } from "./SectionSheet.js";
export { StageSlider } from "./StageSlider.js";
