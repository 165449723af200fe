import type { Estimate } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import type { Fill } from "../paper.js";
import type { CutData } from "./cutData.js";

/** What is asked of the drawing of one section. */
export interface CutAsk {
  site: Site;
  estimate: Estimate;
  data: CutData;
  fills: ReadonlyMap<string, Fill>;
  /** n of 1 : n, along and up alike. */
  scale: number;
  /** mm: its upper left corner. */
  left: number;
  top: number;
}
