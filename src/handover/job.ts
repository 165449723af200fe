/** What everything that is handed over is made from, and what comes out. */
import type { Estimate } from "../estimate/index.js";
import type { FontBytes } from "../sheets/index.js";
import type { Site } from "../site/index.js";
import type { HandoverChoices } from "./choices.js";
import type { Raster } from "./pictures/raster.js";

export interface HandoverJob {
  site: Site;
  schemeId: string;
  estimate: Estimate;
  /** When it is made, ISO 8601 with the hour ("2026-11-27T14:05:00Z"): it stands in what is made. */
  madeAt: string;
}

/** One file to hand over. */
export interface HandoverFile {
  /** Such as "alder-flat-pumped-order-list.csv": see `fileName`. */
  name: string;
  /** Media type. */
  type: string;
  data: string | Uint8Array<ArrayBuffer>;
}

/** Told as work goes on: parts done, of how many. A maker that awaits between parts can be cancelled. */
export type Progress = (done: number, of: number) => void;

export interface MakeOptions {
  progress?: Progress;
  /** Checked between parts; an aborted maker throws the signal's reason. */
  signal?: AbortSignal;
  choices?: HandoverChoices;
  /** Reads the sheets' fonts: from the disk or from the page's own address. */
  fonts?: () => Promise<FontBytes>;
  /** Brings the template of the page of one file; the page cannot be made without. */
  pageTemplate?: () => Promise<string>;
  /** Brings what turns SVG into px; no pictures can be made without. */
  raster?: () => Promise<Raster>;
  /** Where Bankyard is served: what a link begins with. */
  address?: string;
}

/** Makes one kind of hand-over. Pure but for its options; runs in a worker, the page and Node alike. */
export type HandoverMaker = (
  job: HandoverJob,
  options?: MakeOptions,
) => Promise<readonly HandoverFile[]>;

/** Letters that a file name may safely hold on any system. */
function plainWord(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
}

/** "alder-flat-pumped-order-list.csv" of the site's name, the scheme's id, "order list" and "csv". */
export function fileName(job: HandoverJob, what: string, ending: string): string {
  const site = plainWord(job.site.name);
  const words = [site === "" ? "site" : site, plainWord(job.schemeId), plainWord(what)];
  return `${words.filter((word) => word !== "").join("-")}.${ending}`;
}
