export { fileName } from "./job.js";
export type { HandoverFile, HandoverJob, HandoverMaker, MakeOptions, Progress } from "./job.js";
