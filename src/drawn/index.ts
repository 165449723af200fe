export { EarthPatterns, patternId } from "./EarthPatterns.js";
export { heightOn, ticks } from "./fit.js";
export type { Tick } from "./fit.js";
export { SectionSheet } from "./SectionSheet.js";
export { StageSlider } from "./StageSlider.js";
