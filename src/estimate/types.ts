import type { Checklist } from "../permit/index.js";
import type { HoleReport, SetbackKept } from "../safety/index.js";
import type { WorkRunoff } from "../runoff/index.js";
import type { CostResult } from "../cost/index.js";
import type { ByMaterial, Earth, Haul, WorkQuantities } from "../dig/index.js";
import type { FlowResult } from "../flow/index.js";
import type { LandResult } from "../land/index.js";
import type { LiftResult, MachinesResult } from "../machines/index.js";
import type { Finding } from "../site/index.js";

/** What `estimate` returns and the command line prints: the contract's object. SI throughout. */
export interface Estimate {
  format: "bankyard-estimate";
  version: 1;
  /** The site's name. */
  site: string;
  /** The scheme's id. */
  scheme: string;
  /** All works together, m³ bank by material id. */
  cut: ByMaterial;
  works: readonly WorkQuantities[];
  earth: Earth;
  /** Which cut's earth goes to which fill or pile with the least carriage, m³ bank and m. */
  haul: readonly Haul[];
  pipes: readonly {
    id: string;
    /** m in plan. */
    length: number;
    /** drop ÷ length, positive downhill. */
    fall: number;
    drop: number;
    cover: { least: number; most: number };
  }[];
  flow: FlowResult;
  machines: MachinesResult;
  /** The crane lift of each tank; null when the scheme names no crane. */
  lift: LiftResult | null;
  /** What of the ground's own water each work meets. */
  runoff: readonly WorkRunoff[];
  /** What is laid bare, and the erosion barrier below it. */
  land: LandResult;
  /** Every distance to be kept from what limits the site, as asked and as it is. */
  setbacks: readonly SetbackKept[];
  /** What an office asks to see on the plan, and how it stands. */
  permit: Checklist;
  /** Each hole: what its layers want of its walls and what is drawn, its water, its ways out. */
  holes: readonly HoleReport[];
  cost: CostResult;
  findings: readonly Finding[];
  /** The standing cautions: always there, each ending with its source. */
  cautions: readonly string[];
}

/** How far the job has come, for the scene. At each stage every work has come as far. */
export type Stage = "found" | "stripped" | "dug" | "bedded" | "set" | "zone" | "backfilled";

/** Triangles of the ground at one stage, ready for a GPU. */
export interface GroundMesh {
  /** Site coordinates of the local origin, m: site = origin + position. */
  origin: readonly [number, number, number];
  /** x, y, z per vertex, m from `origin`; triangles are consecutive triples of vertices. */
  positions: Float32Array;
  /** Unit normal per vertex (flat: the same for the three vertices of a wall or a dug face). */
  normals: Float32Array;
  /** Material ids that `materialOf` points into; may hold "native" (backfilled own earth). */
  materials: readonly string[];
  /** Index into `materials`, one per vertex. */
  materialOf: Uint8Array;
  /** What the triangle is, one per vertex: see `FACE`. */
  faceOf: Uint8Array;
  /** Crisp edges (daylight lines, floor edges, wall corners): x, y, z pairs of segment ends. */
  edges: Float32Array;
}

/** Kinds of triangle in a `GroundMesh`. */
export const FACE = {
  /** The surface as found: draw as grass. */
  found: 0,
  /** A face that a work has dug: floor or wall. */
  dug: 1,
  /** The surface of something put in: bedding, pipe zone, course, fill, backfill. */
  filled: 2,
  /** The vertical side of the block of ground at the edge of the survey. */
  block: 3,
} as const;

/** One contour line of the ground as found. */
export interface ContourLine {
  /** m. */
  elevation: number;
  /** True for every fifth. */
  heavy: boolean;
  closed: boolean;
  /** x, y pairs in site coordinates, m. */
  line: readonly (readonly [number, number])[];
}
