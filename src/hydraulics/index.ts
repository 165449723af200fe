/** The laws of pipes, pumps and tanks, with no site in them. SI; heads in m of water. */
export { depthOf, volumeBelow } from "./chamber.js";
export type { ChamberShape } from "./chamber.js";
export { pipeVolume, planDose } from "./dose.js";
export type { DoseAsk, DosePlan } from "./dose.js";
export {
  coefficientOf,
  fittingLength,
  fittingRows,
  minorLoss,
  valveCoefficient,
  valveOpening,
} from "./fittings.js";
export type { FittingRow } from "./fittings.js";
export { flotation, WATER_DENSITY } from "./flotation.js";
export type { Flotation, FlotationAsk } from "./flotation.js";
export {
  boreArea,
  darcyFactor,
  frictionSlope,
  GRAVITY,
  swameeJain,
  waterViscosity,
} from "./friction.js";
export type { FrictionLaw } from "./friction.js";
export { fullFlow, partFull } from "./manning.js";
export type { FullFlow, PartFlow } from "./manning.js";
export { headFor, headForPressure, leastPressure, systemCurve } from "./heads.js";
export { downslopeCorrection, moundFootprint, upslopeCorrection } from "./mound.js";
export type { Mound, MoundAsk } from "./mound.js";
export { Network, solveNetwork } from "./network.js";
export type { Link, NetworkNode, NetworkSolution, Outlet, Source } from "./networkTypes.js";
export { ORIFICE_COEFFICIENT, orificeFlow, orificeHead } from "./orifice.js";
export { isCurveProblem, operatingPoint, pumpCurve } from "./pumpCurve.js";
export type { CurveProblem, OperatingPoint, PumpCurve, PumpPoint } from "./pumpCurve.js";
export {
  designFlow,
  leastTank,
  loadingByClass,
  loadingByPercolation,
  sizingTables,
} from "./sizing.js";
export type { SizingTable, Sourced } from "./sizing.js";
export { PVC_STIFFNESS, surgeHead, waterPower, waveSpeed, yearlyEnergy } from "./surge.js";
export { evenness, valveSettings, withValves } from "./valves.js";
export type { Evenness, ValveAsk, ValveSettings } from "./valves.js";
