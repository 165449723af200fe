/** What the page and the worker that makes files say to each other. */
import type { HandoverChoices, HandoverFile } from "../handover/index.js";
import type { Site } from "../site/index.js";
import type { PointColumns } from "./groundTalk.js";

/** A sheet of the set, as it is looked at before it is printed. */
export interface SheetSeen {
  id: string;
  /** What it shows, by which it is left out: see `printSheet`. */
  of: readonly string[];
  title: string;
  /** Of the whole set, from 1; null for one that is left out. */
  number: number | null;
  /** Whether it is in the set whatever else is chosen. */
  always: boolean;
  /** n of 1 : n; null when not to scale. */
  scale: number | null;
  /** What a plan shows now, so that it can be moved; null for what is no plan. */
  window: { middle: readonly [number, number]; scale: number } | null;
  /** mm of the paper. */
  width: number;
  height: number;
  svg: string;
}

export interface HandoverWant {
  /** Kinds of hand-over by id. */
  files: readonly string[];
  choices: HandoverChoices;
  /** More files than this come as one zip. */
  mostApart: number;
}

export interface HandoverAsk {
  /** Without its points: these come in columns. */
  site: Site;
  columns: PointColumns;
  schemeId: string;
  madeAt: string;
  /** The page's own address, where its files are found. */
  base: string;
  /** Kinds of hand-over to make by id, or the sheets to look at. */
  want: HandoverWant | "sheets";
}

/** To a worker that has drawn the sheets: what a person has now chosen among them. */
export interface SheetsAsk {
  chosen: Site["sheets"] | null;
}

export type HandoverAnswer =
  /** Done so far of a kind's parts. */
  | { kind: string; share: number }
  | { files: readonly HandoverFile[] }
  | { sheets: readonly SheetSeen[] }
  | { fault: string };
