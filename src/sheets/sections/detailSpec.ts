/** One detail before it is drawn: what is cut open, and what is told of it. SI. */
import type { Section } from "../../estimate/index.js";
import type { Mark } from "../paper.js";
import type { Callout } from "./callouts.js";
import type { Span } from "./dimensionRows.js";
import type { View } from "./view.js";

export interface DetailSpec {
  /** What it is of, the same on every paper: "detail:bed:bed-1". */
  subject: string;
  title: string;
  /** A line under the title, besides the scale. */
  said: string;
  /** m. */
  from: number;
  to: number;
  low: number;
  high: number;
  /** The ground cut open there, and as dug; null for a detail that shows none. */
  finished: Section | null;
  dug: Section | null;
  /** What else is drawn over the ground. */
  paint: (view: View) => readonly Mark[];
  callouts: readonly Callout[];
  beside: readonly Span[];
  across: readonly (readonly Span[])[];
}
