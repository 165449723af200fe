export { ditchAbove } from "./ditch.js";
export { drainageOf, drainageWith, inflowOf } from "./drainage.js";
export type { Drainage, Inflow } from "./drainage.js";
export { floodFrom } from "./pits.js";
export type { Flood } from "./pits.js";
export { Tracer } from "./trace.js";
export type { Hollow, Way, WayPoint } from "./trace.js";
export { checkRunoff, waterFrom } from "./checkRunoff.js";
export type { WorkRunoff } from "./checkRunoff.js";
