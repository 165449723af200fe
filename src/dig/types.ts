import type { Finding, PlanPoint, Work } from "../site/index.js";
import type { Haul } from "./haul.js";

/** Volumes by material id, m³: for natural ground in the bank, for fill in place. */
export type ByMaterial = Readonly<Record<string, number>>;

/** Closed rings in plan: outer ones counter-clockwise, holes clockwise. */
export type Rings = readonly (readonly (readonly [number, number])[])[];

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
  /**
   * Rings in plan, outer ones counter-clockwise and holes clockwise: where the cut comes to
   * daylight, and the foot of its walls. Absent for a work that never cuts.
   */
  outlines?: { daylight: Rings; toe: Rings };
  /**
   * Rings in plan of where a pad's fill lies, before its course is laid: outside the pad their edge is
   * the foot of the fill. Absent where nothing is filled.
   */
  fillFoot?: Rings;
  /** Centre of mass of what was cut, and of what was put in, as if of one density; x, y, z, m. */
  cutCentre?: readonly [number, number, number];
  fillCentre?: readonly [number, number, number];
  /**
   * Volumes by depth, m³: what was cut `from` to `to` m below the ground just before this work, and
   * what was put in from so far to so far above what it was put on.
   */
  bands?: readonly { from: number; to: number; cut: number; fill: number }[];
  /** A pile's heap. */
  heap?: Heaped;
}

/** A heap of loose earth on the ground. */
export interface Heaped {
  /** m³ loose. */
  volume: number;
  /** m above the ground under its middle. */
  height: number;
  /** m² in plan. */
  area: number;
  /** Ring in plan where it meets the ground. */
  toe: Rings;
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
  /** The surplus by material, m³ in the bank; what was dug a second time under "native". */
  left: ByMaterial;
  /**
   * What strips have taken off, kept apart: m³ in the bank in all, of it put back, and left over,
   * that also loose. What is left over is part of the surplus. Absent when nothing is stripped.
   */
  topsoil?: { stripped: number; putBack: number; left: number; leftLoose: number };
}

export interface DigResult {
  /** All works together, m³ bank by material id. */
  cut: ByMaterial;
  works: readonly WorkQuantities[];
  earth: Earth;
  /** Which cut's earth goes to which fill or pile with the least carriage, m³ bank and m. */
  haul: readonly Haul[];
  pipes: readonly PipeRun[];
  findings: readonly Finding[];
}
