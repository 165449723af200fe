import type { PipeStation } from "../dig/index.js";
import type { Quantity } from "../site/index.js";
import type { Sizing } from "./design.js";
import type { Carries, Crossing } from "./drains.js";
import type { HighestTank } from "./highestTank.js";
import type { FlotationResult, PressureResult } from "./pressureTypes.js";
import type { Rule } from "./rule.js";

/**
 * What the worst thing about a pipe is, worst first: `uphill` falls the wrong way or is level,
 * `too flat` falls less than its size needs, `ends at nothing` and `starts at nothing` lie in bare
 * earth where they should join something, `misses its tank` is too high or low for its inlet or
 * outlet, `misses its outlet` is above or below the building's, `shallow` has too little ground over it, `too steep` falls more than the usual most;
 * `runs` when none of these was found. Pressure pipes and conduits are only ever `shallow` or `runs`.
 */
export type PipeVerdict =
  | "runs"
  | "uphill"
  | "too flat"
  | "ends at nothing"
  | "starts at nothing"
  | "misses its tank"
  | "misses its outlet"
  | "shallow"
  | "too steep";

/** How far the ends of a pipe move, m, positive up; the pipe between them tilts. */
export interface EndMove {
  start: number;
  end: number;
}

/** One change that mends a pipe and lets every other check of it hold that can hold. */
export interface Mend {
  /**
   * `lower-end`, `raise-end`: far end; `raise-start`, `lower-start`: near end; `lay-deeper`,
   * `lay-higher`: the whole pipe; `both-ends`: each end by its own amount, where no single change
   * is enough; `even-grade`: one straight grade instead of one that follows the ground; `shorten`:
   * same drop over less length; `move-tank`: the tank up or down, with the far end or to it;
   * `reach-tank`: the path's loose end on to a tank. At most one of a kind for a pipe.
   */
  kind:
    | "lower-end"
    | "raise-end"
    | "raise-start"
    | "lower-start"
    | "lay-deeper"
    | "lay-higher"
    | "both-ends"
    | "even-grade"
    | "shorten"
    | "move-tank"
    | "reach-tank";
  /** m, always positive, by how much: the larger of two moves. */
  by: number;
  /** The change in words, in the site's own units, no capital and no full stop. */
  text: string;
  /** How the ends move, where they do and the path stays. */
  move?: EndMove;
  /** The tank whose underside moves, m, positive up. */
  tank?: { id: string; up: number };
}

/** A pipe against the rules for its size. */
export interface PipeCheck {
  id: string;
  name: string;
  /** Id of the trench that it lies in. */
  trench: string;
  service: "gravity" | "pressure" | "conduit";
  /** m, inside diameter. */
  inside: number;
  /** m in plan. */
  length: number;
  /** drop ÷ length, positive downhill; 0 for a pipe without length. */
  fall: number;
  /** m, start invert less end invert. */
  drop: number;
  /**
   * The stretch that falls least, stations in m: the whole pipe when its grade is even, a part of it
   * when it is laid by cover. The least fall is asked of every stretch.
   */
  flattest: { fall: number; from: number; to: number };
  /** Whether it spreads the water in a trench of the field: no least or most fall, no speed. */
  field: boolean;
  /** Least fall for its size; null for pressure pipes, conduits and a field's pipes. */
  leastFall: Rule | null;
  /** Most fall; null for pressure pipes, conduits and a field's pipes. */
  mostFall: Rule | null;
  /** m of ground wanted over the pipe. */
  leastCover: Rule;
  /** m of ground over the top outside of the pipe, as the dig gives it (not finite if unknown). */
  cover: { least: number; most: number };
  verdict: PipeVerdict;
  /** Each mends what the verdict names and breaks no other check; empty when it runs, or when no change of the kinds known here does that. */
  mends: readonly Mend[];
  /** What a gravity pipe that falls carries; null for others, and for a field's pipes. */
  carries: Carries | null;
  /** Turns of its path, and where it crosses other pipes. */
  bends: readonly { station: number; angle: number }[];
  crossings: readonly Crossing[];
  /** Share of what its trench cuts that is rock, 0 to 1; null where that is not known. */
  rock: number | null;
  /** Path, ground and invert, as laid. */
  stations: readonly PipeStation[];
}

/** A gravity pipe's end at a tank whose invert on that side is known. */
export interface TankJoint {
  pipe: string;
  tank: string;
  /** `inlet`: the pipe's far end enters here; `outlet`: its near end leaves from here. */
  side: "inlet" | "outlet";
  /** Elevations, m. */
  pipeInvert: number;
  tankInvert: number;
  /** m, pipe invert less tank invert: positive when the pipe's end is the higher. */
  off: number;
}

/** A gravity pipe's near end at an outlet of a building. */
export interface OutletJoint {
  pipe: string;
  /** Ids of the building and its outlet, and what a person calls the two: "Drain outlet of House". */
  building: string;
  outlet: string;
  name: string;
  /** The pipe's near end leaves from here. */
  side: "outlet";
  /** Elevations, m. */
  pipeInvert: number;
  outletInvert: number;
  /** m, pipe invert less outlet invert: positive when the pipe's end is the higher. */
  off: number;
}

/** What a pump must raise water by at rest, for one pressure pipe. */
export interface StaticLift {
  pipe: string;
  name: string;
  /** Id of the tank that it starts from. */
  tank: string;
  /** Elevation of the water when the pump stops, m. */
  lowWater: number;
  /** Elevation of the far end's invert, m. */
  outlet: number;
  /** Elevation of the highest invert along the path, m. */
  highest: number;
  /** m: the higher of `outlet` and `highest`, less `lowWater`; negative when it all lies below. */
  lift: Quantity;
}

/** The pipes of one scheme, checked. In the order of the works and of the pipes in them. */
export interface FlowResult {
  pipes: readonly PipeCheck[];
  joints: readonly TankJoint[];
  /** Drains at the outlets of buildings. */
  outlets: readonly OutletJoint[];
  lifts: readonly StaticLift[];
  /** Every tank that a drain enters, as high as its drains allow. */
  highest: readonly HighestTank[];
  /** Pressure systems that could be solved, in the order of the file. */
  pressure: readonly PressureResult[];
  flotation: readonly FlotationResult[];
  sizing: Sizing;
}
