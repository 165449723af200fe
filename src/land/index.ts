/** What a scheme does to the land: bare ground, erosion barriers, work where floods come. */
export { checkLand } from "./checkLand.js";
export type { LandResult } from "./checkLand.js";
export { disturbedGround } from "./disturbed.js";
