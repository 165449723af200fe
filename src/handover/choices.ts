/** What a person may choose about a hand-over; every field may be absent, and has a default. */
import type { Stage } from "../estimate/index.js";
import type { ViewCamera } from "./pictures/lens.js";

/** How what is ordered is sold; lengths in m. */
export interface OrderChoices {
  /** Length of a whole pipe: of drains, of pressure pipes, of conduits. */
  pipeLength?: { gravity?: number; pressure?: number; conduit?: number };
  /** Length of a coil of polyethylene pipe. */
  coil?: number;
  /** A roll of filter fabric, and how far two strips of it lap. */
  fabric?: { width?: number; length?: number; lap?: number };
}

/** A place that is marked on the ground: a survey point, or a corner of a limit. */
export type MarkChoice = { point: string } | { limit: string; corner: number };

/** How a job is set out; lengths in m. */
export interface StakeChoices {
  /** Of the offset stakes, each side of a trench's centre line. Default 1 m, or 3 ft on a US site. */
  offset?: number;
  /** Between pipe stations. Default 3 m, or 10 ft on a US site. */
  interval?: number;
  /** The two marks that distances are taped from. Default: the pair whose arcs cross best. */
  marks?: readonly [MarkChoice, MarkChoice];
}

/** Which views are drawn, and from where. */
export interface ViewChoices {
  /** Default: dug and backfilled. */
  stages?: readonly Stage[];
  camera?: ViewCamera;
  /** Width over height of the picture, where the camera has a window of its own. */
  aspect?: number;
}

/** What a page or a link can be made without, for somebody else. */
export const LEFT_OUT = ["costs", "names"] as const;
export type LeftOut = (typeof LEFT_OUT)[number];

export type PictureKind = "still" | "turning" | "stages";

/** Which pictures are made, from where the ground shows best. */
export interface PictureChoices {
  /** Default: all. */
  what?: readonly PictureKind[];
  /** Of the stills. Default: dug and backfilled. */
  stages?: readonly Stage[];
  /** The stage that turns. Default: dug. */
  turned?: Stage;
}

/** What a person may choose about every kind of hand-over. A maker reads its own part. */
export interface HandoverChoices {
  orders?: OrderChoices;
  /** What the page of one file is made without. Default: nothing is left out. */
  page?: { without?: readonly LeftOut[] };
  stakes?: StakeChoices;
  /** Each sheet as an SVG as well as all in one PDF. */
  sheets?: { drawings?: boolean };
  views?: ViewChoices;
  pictures?: PictureChoices;
}
