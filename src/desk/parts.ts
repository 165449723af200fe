import type { Estimate } from "../estimate/index.js";

/** Parts of an estimate by name, as the leaves show them. */
export type ByMaterial = Estimate["cut"];
export type Runoff = Estimate["runoff"][number];
export type PipeCheck = Estimate["flow"]["pipes"][number];
export type Mend = PipeCheck["mends"][number];
export type StaticLift = Estimate["flow"]["lifts"][number];
export type PressureResult = Estimate["flow"]["pressure"][number];
export type HighestTank = Estimate["flow"]["highest"][number];
export type TankJoint = Estimate["flow"]["joints"][number];
export type OutletJoint = Estimate["flow"]["outlets"][number];
export type FlotationResult = Estimate["flow"]["flotation"][number];
export type Sizing = Estimate["flow"]["sizing"];
export type CostLine = Estimate["cost"]["lines"][number];
/** Low, likely and high of one figure. */
export type Range = Estimate["cost"]["total"];
export type Machines = Estimate["machines"];
export type Candidate = Estimate["machines"]["candidates"][number];
export type RentalCover = Estimate["machines"]["rental"]["cover"];
export type Lifted = NonNullable<Estimate["lift"]>;
export type TankLift = Lifted["tanks"][number];
export type StandLift = TankLift["stands"][number];
