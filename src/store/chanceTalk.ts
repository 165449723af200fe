/** What the page and a worker that simulates say to each other. */
import type { ChanceRuns, ChanceShape } from "../chance/index.js";
import type { Site } from "../site/index.js";
import type { PointColumns } from "./groundTalk.js";

export interface ChanceAsk {
  /** Without its points: these come in columns. */
  site: Site;
  columns: PointColumns;
  schemeId: string;
  /** The first run, and how many in a row; they are told in pieces. */
  first: number;
  count: number;
}

export type ChanceAnswer =
  { shape: ChanceShape } | { runs: ChanceRuns } | { done: true } | { fault: string };
