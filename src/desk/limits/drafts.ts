import { create } from "zustand";
import { LIMIT_KINDS } from "../../site/index.js";
import type { EarthOutline, GeoProblem, SurveyUnit } from "../../survey/index.js";

/** A file of outlines that is open, and the kind chosen for each. */
export interface EarthDraft {
  file: string;
  outlines: readonly EarthOutline[];
  problems: readonly GeoProblem[];
  /** Kind of limit for each; empty to leave it out. */
  kinds: readonly string[];
}

interface Drafts {
  /** Sides of a lot as typed; no unit chosen: that of the site. */
  courses: string;
  unit: SurveyUnit | null;
  start: readonly [number, number];
  balance: boolean;
  earth: EarthDraft | null;
  /** Where the file's first place lies in the site, m. */
  earthAt: readonly [number, number];
  /** A table of setbacks as pasted. */
  rows: string;
  /** Kind of the limit that is placed next. */
  kind: string;
}

/** What is typed and not yet taken into the site; it stays while leaves are turned. */
export const useLimitDrafts = create<Drafts>()(() => ({
  courses: "",
  unit: null,
  start: [0, 0],
  balance: false,
  earth: null,
  earthAt: [0, 0],
  rows: "",
  kind: LIMIT_KINDS[0].id,
}));
