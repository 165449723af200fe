import type { Job } from "../../fixtures/job.js";

/** A finding's code, a job on which it is raised, and the like of it on which it is not. */
export type Pair = readonly [code: string, raises: Job, silent: Job];
