import type { Finding, PlanPoint, Work } from "../site/index.js";

/** Volumes by material id, m³: for natural ground in the bank, for fill in place. */
export type ByMaterial = Readonly<Record<string, number>>;

/** What one work takes out and puts in. Field meanings are the contract's (site-file). */
export interface WorkQuantities {
  id: string;
  name: string;
  kind: Work["kind"];
  /** m³ bank that this work itself took out, by material id ("native" for earlier backfill). */
  cut: ByMaterial;
  /** m³ in place by material id; "native" is the site's own earth. */
  fill: ByMaterial;
  /** m³ of structure (tank, pipes) below the ground just before this work. */
  displaced: number;
  /** Lowest and highest elevation of the floor, m. */
  floor: { lowest: number; highest: number };
  /** Greatest vertical depth of cut below the ground just before this work, m. */
  deepest: number;
  /** Tallest ground above the floor's own edge (the uphill face of the hole), m; 0 if none. */
  tallestFace: number;
  /** m² in plan where this work cuts the ground. */
  daylight: number;
  /** m of each material between the ground and the floor at the deepest place, top down. */
  materialsMet: readonly string[];
}

/** One place along a pipe's path. */
export interface PipeStation {
  /** m along the path in plan from its start. */
  station: number;
  at: PlanPoint;
  /** Ground elevation just before this work, m; NaN beyond the survey. */
  ground: number;
  /** Lowest inside point of the pipe, m. */
  invert: number;
}

/** A pipe as laid: its geometry read from the trench and the ground. */
export interface PipeRun {
  id: string;
  name: string;
  /** Id of the trench that it lies in. */
  trench: string;
  service: "gravity" | "pressure" | "conduit";
  inside: number;
  outside: number;
  material: string;
  /** m in plan, from the path's start to its end. */
  length: number;
  /** drop ÷ length, positive when the end is lower. */
  fall: number;
  /** m, start invert less end invert. */
  drop: number;
  /** Ground above the top outside of the pipe, m. */
  cover: { least: number; most: number };
  /** In path order: both ends, every bend, and every place where the ground changes slope. */
  stations: readonly PipeStation[];
}

/** The site's earth as a whole, m³ and kg. Field meanings are the contract's (site-file). */
export interface Earth {
  bank: number;
  loose: number;
  reusedBank: number;
  surplusBank: number;
  surplusLoose: number;
  surplusMass: number;
  importCompacted: number;
}

export interface DigResult {
  /** All works together, m³ bank by material id. */
  cut: ByMaterial;
  works: readonly WorkQuantities[];
  earth: Earth;
  pipes: readonly PipeRun[];
  findings: readonly Finding[];
}
