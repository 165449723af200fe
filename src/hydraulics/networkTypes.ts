import type { FrictionLaw } from "./friction.js";
import type { PumpCurve } from "./pumpCurve.js";

/** A full pipe with its fittings and valves. */
export interface Link {
  /** m. */
  inside: number;
  length: number;
  law: FrictionLaw;
  /** Sum of loss coefficients on the velocity head, valves too; 0 for none. */
  k: number;
}

/** Where water leaves: a hole into air, or a flow that is simply taken (m³/s). */
export type Outlet =
  { by: "orifice"; diameter: number; coefficient: number } | { by: "fixed"; flow: number };

/** One place of a branched network. The first node is the source's and has no link. */
export interface NetworkNode {
  id: string;
  /** Index of the node upstream, less than the node's own; −1 for the source. */
  parent: number;
  /** m, of the pipe's centre or the hole. */
  elevation: number;
  /** The pipe from the node upstream to here; absent: none, and no loss. */
  link?: Link;
  outlet?: Outlet;
}

/** What feeds the first node: a fixed energy line (elevation, m), or a pump in water at a level. */
export type Source =
  | { by: "head"; head: number }
  | { by: "pump"; water: number; curve: PumpCurve }
  /** Whatever head it takes to push this flow, m³/s, through the holes. */
  | { by: "flow"; flow: number };

export interface NetworkSolution {
  /**
   * `no-flow`: no outlet, or none lies low enough for the source; `short-of-head`: a flow that is
   * simply taken lies above the energy line; `off-curve`: more flows than the pump's curve tells of,
   * and the answer rests on its last slope; `not-converged`: `why` says how far off.
   */
  outcome: "solved" | "no-flow" | "short-of-head" | "off-curve" | "not-converged";
  why: string;
  /** m³/s in all, and the elevation of the energy line at the first node, m. */
  sourceFlow: number;
  sourceHead: number;
  /** By node: elevation of the energy line, and it less the node's elevation, m. */
  heads: Float64Array;
  pressure: Float64Array;
  /** By node, m³/s: in the link to it, and out of its outlet. */
  flows: Float64Array;
  discharge: Float64Array;
  /** Largest gap between what a hole gives and what its pressure asks, m³/s. */
  imbalance: number;
  iterations: number;
}
