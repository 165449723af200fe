/**
 * A sheet before it is SVG or PDF: marks on paper. Lengths in mm, origin at the paper's upper left
 * corner, x right, y down. Writers know marks only; whoever draws knows no format.
 */
import type { Estimate } from "../estimate/index.js";
import type { Site } from "../site/index.js";

/** [x, y] in mm on paper. */
export type Spot = readonly [number, number];

/** Widths in mm. Black is printable on anything; the tones stay apart in black and white. */
export interface Pen {
  width: number;
  /** "#rrggbb". */
  color: string;
  /** On and off lengths in mm, such as [2, 1]; absent for a whole line. */
  dash?: readonly number[];
}

/** Parallel strokes or dots across an area; several of them cross. `turn` in degrees from +x. */
export type Hatch =
  | { kind: "lines"; turn: number; gap: number; pen: Pen }
  | { kind: "dots"; gap: number; size: number; color: string };

/** How an area is laid out: a flat tone (or none), and hatches over it. */
export interface Fill {
  color?: string;
  hatches?: readonly Hatch[];
}

/** Public Sans in two weights, Zilla Slab in one for headings. */
export type Face = "text" | "strong" | "heading";

export interface PathMark {
  kind: "path";
  /** One line or several; as an area, holes by the even-odd rule. */
  lines: readonly (readonly Spot[])[];
  closed: boolean;
  pen?: Pen;
  fill?: Fill;
}

export interface CircleMark {
  kind: "circle";
  at: Spot;
  radius: number;
  pen?: Pen;
  fill?: Fill;
}

export interface TextMark {
  kind: "text";
  /** Of the text's base line, at its `anchor`. */
  at: Spot;
  text: string;
  face: Face;
  /** Height of the letters' body, mm (1 pt = 0.3528 mm). */
  size: number;
  anchor: "start" | "middle" | "end";
  /** Degrees clockwise as seen on paper; absent for level. */
  turn?: number;
  color?: string;
  /** Figures of one width, for columns of a table. */
  tabular?: boolean;
  /** Paper is laid under the letters, so that lines do not cross them. */
  halo?: boolean;
}

/** Marks that belong together under a name of the trade, such as "Contours"; perhaps cut off at a box. */
export interface GroupMark {
  kind: "group";
  /** The layer's name, as it stands in the SVG. */
  layer: string;
  /** What lies outside is cut off: left, top, width, height in mm. */
  clip?: readonly [number, number, number, number];
  marks: readonly Mark[];
}

export type Mark = PathMark | CircleMark | TextMark | GroupMark;

export const PAPERS = {
  letter: { name: "Letter", width: 279.4, height: 215.9 },
  tabloid: { name: "Tabloid", width: 431.8, height: 279.4 },
  a4: { name: "A4", width: 297, height: 210 },
  a3: { name: "A3", width: 420, height: 297 },
} as const;

export type PaperId = keyof typeof PAPERS;

/** What the sheets are drawn from. */
export interface SheetJob {
  site: Site;
  schemeId: string;
  estimate: Estimate;
  /** The day that stands on the sheets, ISO 8601 (such as "2026-11-27"). */
  date: string;
  paper: PaperId;
}

/** One line of a sheet's legend: a small sample drawn in a box of 10 × 4 mm, and its name. */
export interface LegendRow {
  sample: readonly Mark[];
  name: string;
}

/** The box that a drawing may fill: what is left of the paper inside frame, title block and legend. */
export interface Room {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** One sheet's own content; frame, title block, legend, north arrow and scale bar are put around it. */
export interface SheetContent {
  /** Stable, such as "layout" or "section:tank-1". */
  id: string;
  /**
   * What it shows, one by one, such as "section:tank-1:along": the same on every paper, while ids are
   * counted. By these a sheet is left out. Absent for its id alone.
   */
  of?: readonly string[];
  title: string;
  /** n of 1 : n; null for a drawing that is not to scale, "text" for a sheet that holds no drawing. */
  scale: number | "text" | null;
  /** What else is to be said of the scale, such as "heights drawn 5 times"; absent for nothing. */
  scaleNote?: string;
  /** What a plan shows, by which it can be moved; absent for what is no plan. */
  window?: PlanWindow;
  /** True for a plan of which a person's window leaves something off the paper. */
  partial?: boolean;
  /** Degrees clockwise by which north is turned from up; null where there is no north (a section). */
  north: number | null;
  marks: readonly Mark[];
  legend: readonly LegendRow[];
}

/** What a plan shows: what is at its middle (m, site) and n of 1 : n. */
export interface PlanWindow {
  middle: readonly [number, number];
  scale: number;
}

/** The room that a sheet has beside this legend, which takes more or less of the paper. */
export type RoomOf = (legend: readonly LegendRow[]) => Room;

/**
 * Draws one kind of sheet; several contents are several sheets, none means that the site has no such
 * thing. Marks stay inside the room that `room` gives for the legend that the content has. What a person
 * leaves out (`without`, see `of`) never shares a sheet with what is printed.
 */
export type SheetMaker = (
  job: SheetJob,
  room: RoomOf,
  windows: Readonly<Record<string, PlanWindow>>,
  without: ReadonlySet<string>,
) => readonly SheetContent[];

/** A whole sheet of paper, frame and all, as the writers take it. */
export interface Page {
  /** The content's id. */
  id: string;
  title: string;
  /** Its place in the whole set, from 1. */
  number: number;
  /** n of 1 : n; null for a sheet that is not to scale. */
  scale: number | null;
  /** What a plan shows; null for what is no plan. */
  window: PlanWindow | null;
  /** Of the paper, mm. */
  width: number;
  height: number;
  marks: readonly Mark[];
}
