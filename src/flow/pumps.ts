import catalogue from "../../shared/catalogue/pumps.json" with { type: "json" };
import {
  leastPressure,
  pumpCurve,
  yearlyEnergy,
  type CurveProblem,
  type Network,
  type NetworkSolution,
  type PumpCurve,
} from "../hydraulics/index.js";
import type { Pump } from "../site/index.js";
import type { PumpResult } from "./pressureTypes.js";

/** A generic pump of the catalogue. */
export interface PumpRow {
  id: string;
  name: string;
  curve: readonly { flow: number; head: number; power: number }[];
  source: string;
}

/** Generic pumps that a person can pick, all typical and without a source. */
export function pumpRows(): readonly PumpRow[] {
  return catalogue.pumps;
}

/** A pump's curve: its own points, else the catalogue's of its id; a problem where neither serves. */
export function curveOf(pump: Pump): PumpCurve | CurveProblem {
  const points = pump.curve ?? catalogue.pumps.find((row) => row.id === pump.id)?.curve;
  if (points !== undefined) return pumpCurve(points);
  return {
    row: null,
    text: "has no curve, and the catalogue has no pump of its name",
    mend: "give its points, or choose one of the catalogue's",
  };
}

/** Samples of a drawn curve. */
const SAMPLES = 32;

/** A pump against a network, pumping from water at `lowWater`, m. */
export function pumpResult(
  pump: Pump,
  network: Network,
  ask: { lowWater: number; distal: number; daily: number | null },
): PumpResult {
  const curve = curveOf(pump);
  const row = catalogue.pumps.find((each) => each.id === pump.id);
  const source =
    pump.source ?? (pump.curve === undefined ? row?.source : undefined) ?? "as entered";
  const plain = { id: pump.id, name: pump.name, source };
  if ("mend" in curve) {
    const at = curve.row === null ? "" : `point ${curve.row + 1} `;
    const nothing = { flow: 0, head: 0, power: null, meets: false, energy: null, curve: [] };
    return { ...plain, ...nothing, outcome: "no-curve", why: `${at}${curve.text}: ${curve.mend}` };
  }
  const solved = network.solve({ by: "pump", water: ask.lowWater, curve });
  const power = solved.sourceFlow > 0 ? curve.powerAt(solved.sourceFlow) : null;
  return {
    ...plain,
    outcome: outcomeOf(solved),
    why: solved.why,
    flow: solved.sourceFlow,
    head: solved.sourceHead - ask.lowWater,
    power,
    meets: leastPressure(network.nodes, solved) >= ask.distal - 1e-6,
    energy:
      power === null || ask.daily === null
        ? null
        : yearlyEnergy(power, ask.daily, solved.sourceFlow),
    curve: Array.from({ length: SAMPLES + 1 }, (_, i) => {
      const flow = (curve.most * i) / SAMPLES;
      return { flow, head: curve.headAt(flow) };
    }),
  };
}

function outcomeOf({ outcome, why }: NetworkSolution): PumpResult["outcome"] {
  if (outcome === "solved") return "runs";
  if (outcome === "not-converged") throw new Error(`pressure network: ${why}`);
  return outcome === "short-of-head" ? "no-flow" : outcome;
}
