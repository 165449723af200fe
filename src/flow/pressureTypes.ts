import type { DosePlan } from "../hydraulics/index.js";
import type { Quantity } from "../site/index.js";

/** A pump against a system. Flows m³/s, heads m, power W, energy kWh. */
export interface PumpResult {
  id: string;
  name: string;
  /** `runs`; `no-flow`: below its shut-off head; `off-curve`: past its last point; `no-curve`. */
  outcome: "runs" | "no-flow" | "off-curve" | "no-curve";
  why: string;
  flow: number;
  head: number;
  /** W from the supply; null where its curve does not say or does not reach. */
  power: number | null;
  /** Whether the last hole gets the head wanted. */
  meets: boolean;
  /** kWh in a year; null where power or the day's flow is not known. */
  energy: number | null;
  /** Its curve, sampled from no flow to its last point. */
  curve: readonly { flow: number; head: number }[];
  source: string;
}

/** One way to a bed at the operating point. */
export interface BranchResult {
  id: string;
  name: string;
  /** Work that it serves, if the scheme has it. */
  bed: string | null;
  /** Elevation of its laterals, m, and how far that is above or below the main's end. */
  elevation: number;
  rise: number;
  holes: number;
  flow: number;
  /** Share of the whole flow: wanted and got. */
  shareWanted: number;
  share: number;
  /** Pressure at its holes, m. */
  least: number;
  most: number;
  /** (most − least) ÷ most of the holes' flows. */
  spread: number;
  /** Opening of its valve as set, and the one that gives its share; null without a valve. */
  valve: { open: number; wanted: number | null } | null;
}

/** A place along the way of the water, for a diagram. */
export interface LinePlace {
  name: string;
  /** m along the pipes from the pump. */
  along: number;
  /** Elevation of the pipe and of the energy line, m. */
  elevation: number;
  energy: number;
}

/** A pressure system, solved. Flows m³/s, heads m. */
export interface PressureResult {
  id: string;
  name: string;
  tank: string;
  /** Ids of the main's pipes, in order. */
  main: readonly string[];
  /** The pump in use. */
  pump: string;
  /** Elevations, m: the chamber's floor and cover, and the water where the pump stops and starts. */
  water: { floor: number; cover: number; low: number; high: number | null };
  /** Pipe in the tank from the pump to the main, m. */
  riser: { inside: number; length: number };
  lift: Quantity;
  flow: Quantity;
  head: Quantity;
  /** At the level where the pump starts: null where that is not known. */
  atHighWater: { flow: number; head: number } | null;
  /** What gives the last hole the head wanted. */
  wanted: { flow: Quantity; head: Quantity };
  /** Head lost or used at the operating point, m, pump to the last hole. */
  parts: { lift: number; main: number; beyond: number; last: number };
  velocity: Quantity;
  surge: Quantity;
  line: readonly LinePlace[];
  branches: readonly BranchResult[];
  /** (most − least) ÷ most of the branches' flows for their shares. */
  bedSpread: number;
  pumps: readonly PumpResult[];
  /** Id of the pump that meets the wanted flow with least power; null where none does. */
  best: string | null;
  /** What the system asks at low and at high water, m of head over that water. */
  system: readonly { flow: number; low: number; high: number | null }[];
  /** m³ in main, riser and branches that runs back, and in all pipes. */
  drainBack: Quantity;
  pipeVolume: Quantity;
  dose: DoseResult | null;
}

/** The dose and the float levels. */
export interface DoseResult {
  volume: Quantity;
  runTime: Quantity | null;
  plan: DosePlan;
  /** s between starts, on the day's mean flow; of one pump when two take turns. */
  between: number;
}

/** One tank against uplift. */
export interface FlotationResult {
  tank: string;
  name: string;
  /** Weight ÷ uplift; infinite (given as null) where the water does not reach it. */
  factor: number | null;
  wanted: number;
  /** The same before the tank is covered: it and its anchor alone ÷ uplift. */
  bare: number | null;
  uplift: Quantity;
  weight: Quantity;
  /** Each alone cures it: m of cover more, kg of anchor more. */
  coverMore: number;
  anchorMore: number;
  /** True where the water is that which the probes met, since the scheme sets none or a lower one. */
  met?: boolean;
  /** m below the ground, as met and as set, where the scheme sets a lower one than was met. */
  over?: { met: number; set: number };
}
