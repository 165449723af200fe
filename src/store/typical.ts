import type { Site } from "../site/index.js";
import { words } from "../words/index.js";
import { sizesToPlace } from "./sizes.js";

/** What a field starts from, SI, and who says so. */
export interface Typical {
  value: number;
  source: string;
}

/** Fields of the works that start from a typical size. */
export type TypicalKey =
  | "overdig"
  | "bedding"
  | "pipeBedding"
  | "zone"
  | "trench"
  | "fieldTrench"
  | "fieldUnder"
  | "fieldOver"
  | "cover"
  | "bench"
  | "beyond"
  | "putBack"
  | "storey"
  | "bedWall"
  | "holeWall"
  | "trenchWall"
  | "fillRun"
  | "drainFall";

/** What holds in this field of a work that was just placed. Every one is common practice, no source. */
export function typicalOf(site: Site, key: TypicalKey): Typical {
  const sizes = sizesToPlace(site);
  const wall = key === "holeWall" || key === "trenchWall";
  return {
    value: key === "bedWall" ? sizes.bed.wall : sizes[key],
    source: wall ? words.forms.wallStart : words.forms.noSource,
  };
}
