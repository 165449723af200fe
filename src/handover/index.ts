export { fileName } from "./job.js";
export type { HandoverFile, HandoverJob, HandoverMaker, MakeOptions, Progress } from "./job.js";
export type { HandoverChoices, MarkChoice, OrderChoices, StakeChoices } from "./choices.js";
export { HANDOVER_KINDS } from "./makers.js";
export type { HandoverKind } from "./makers.js";
export { countOf, perOf } from "./per.js";
export type { Per } from "./per.js";
