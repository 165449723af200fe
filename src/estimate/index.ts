export { estimate, schemeOf, surveyProblem } from "./estimate.js";
export { contours, groundAt, groundSlopeAt, lotEdge, surveyTriangles } from "./lookup.js";
export { stageMesh } from "./stageMesh.js";
export { FACE } from "./types.js";
export type { ContourLine, Estimate, GroundMesh, Stage } from "./types.js";
export type { WorkQuantities } from "../dig/index.js";
export type { CostLine, CostResult } from "../cost/index.js";
export type { FlowResult, PipeCheck, StaticLift } from "../flow/index.js";
export type { MachinesResult, Range } from "../machines/index.js";
