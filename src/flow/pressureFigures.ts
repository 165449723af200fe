import {
  boreArea,
  pipeVolume,
  PVC_STIFFNESS,
  surgeHead,
  waveSpeed,
  type NetworkSolution,
} from "../hydraulics/index.js";
import type { PressureSystem, Quantity } from "../site/index.js";
import type { PressureNetwork, PressureParts, PressurePipe } from "./pressureNetwork.js";
import type { PressureResult, PumpResult } from "./pressureTypes.js";

export function liftOf(made: PressureNetwork, { lowWater, branches }: PressureParts): Quantity {
  const pipe = Math.max(...made.nodes.slice(1, made.fork + 1).map((node) => node.elevation));
  const laterals = Math.max(...branches.map(({ elevation }) => elevation));
  return {
    value: Math.max(pipe, laterals) - lowWater,
    unit: "m",
    formula: "the higher of the main's highest place and the highest laterals − low water",
    inputs: [
      { name: "main's highest place", value: pipe, unit: "m" },
      { name: "highest laterals", value: laterals, unit: "m" },
      { name: "low water", value: lowWater, unit: "m" },
    ],
    source: "geometry",
  };
}

/** The pipe in the tank, from the pump to the main. */
export function riserOf(made: PressureNetwork): PressureResult["riser"] {
  const riser = made.pipes.find(({ of }) => of === "riser");
  if (riser === undefined) throw new Error("pressure network: got no riser, expected one");
  return { inside: riser.inside, length: riser.length };
}

const FLOW_FORMULA =
  "where the pump's curve meets lift + friction (Hazen–Williams or Darcy–Weisbach) + the holes' own head, C A √(2 g h), solved at every hole";

export function flowOf(solved: NetworkSolution, pump: PumpResult | undefined): Quantity {
  const inputs = [{ name: "head at the pump", value: solved.sourceHead, unit: "m" }];
  const source = pump?.source ?? "no pump";
  return { value: solved.sourceFlow, unit: "m³/s", formula: FLOW_FORMULA, inputs, source };
}

export function headOf(
  solved: NetworkSolution,
  lowWater: number,
  pump: PumpResult | undefined,
): Quantity {
  return {
    value: solved.sourceHead - lowWater,
    unit: "m",
    formula: "energy line at the pump − low water",
    inputs: [
      { name: "energy line at the pump", value: solved.sourceHead, unit: "m" },
      { name: "low water", value: lowWater, unit: "m" },
    ],
    source: pump?.source ?? "no pump",
  };
}

export function wantedOf(
  wanted: NetworkSolution,
  head: number,
  lowWater: number,
  distal: number,
): PressureResult["wanted"] {
  const inputs = [{ name: "head wanted at the last hole", value: distal, unit: "m" }];
  const source =
    "US EPA 625/1-80-012 (1980), section 7: total head = lift + friction + head at the last hole";
  return {
    flow: {
      value: wanted.sourceFlow,
      unit: "m³/s",
      formula: "what all holes give when the one with least pressure has the head wanted",
      inputs,
      source,
    },
    head: {
      value: head - lowWater,
      unit: "m",
      formula: "the head over low water that pushes the wanted flow",
      inputs,
      source,
    },
  };
}

export function speeds(
  made: PressureNetwork,
  { main }: PressureParts,
  solved: NetworkSolution,
): Pick<PressureResult, "velocity" | "surge"> {
  const narrow = main.reduce((a, b) => (b.inside < a.inside ? b : a));
  const value = solved.flows[made.fork]! / boreArea(narrow.inside);
  const wall = (narrow.outside - narrow.inside) / 2;
  const wave = waveSpeed(narrow.inside, wall, PVC_STIFFNESS);
  const inside = { name: "bore of the narrowest pipe", value: narrow.inside, unit: "m" };
  return {
    velocity: {
      value,
      unit: "m/s",
      formula: "flow ÷ area of the bore",
      inputs: [{ name: "flow", value: solved.flows[made.fork]!, unit: "m³/s" }, inside],
      source: "geometry",
    },
    surge: {
      value: surgeHead(wave, value),
      unit: "m",
      formula: "wave speed × velocity ÷ g, when the flow is stopped at once",
      inputs: [
        { name: "wave speed", value: wave, unit: "m/s" },
        { name: "velocity", value, unit: "m/s" },
      ],
      source: "Joukowsky (1898); wave speed after Korteweg (1878), rigid PVC (modulus recalled)",
    },
  };
}

export function drainBackOf(made: PressureNetwork, system: PressureSystem): Quantity {
  const held = system.checkValve === true;
  const pipes = held ? [] : made.pipes.filter(({ of }) => of !== "laterals");
  return {
    value: pipeVolume(pipes),
    unit: "m³",
    formula: held
      ? "none: a check valve holds the main full"
      : "volume of the riser in the tank, the main, the branches and their rise to the laterals, all of which run back",
    inputs: pipeInputs(pipes),
    source: "geometry",
  };
}

export function volumeOf(made: PressureNetwork): Quantity {
  return {
    value: pipeVolume(made.pipes),
    unit: "m³",
    formula:
      "bore area × length, summed over the riser in the tank, the main, the branches and their rise, manifolds and laterals",
    inputs: pipeInputs(made.pipes),
    source: "geometry",
  };
}

/** The parts of the way as a working names them. */
const PART_NAMES: Readonly<Record<PressurePipe, string>> = {
  riser: "riser in the tank",
  main: "main, along the pipe",
  branch: "branches",
  rise: "branches' rise from the main's end to the laterals",
  laterals: "manifolds and laterals",
};

/** Length and bore of each kind of pipe, pieces of one kind and bore together. */
function pipeInputs(pipes: PressureNetwork["pipes"]): Quantity["inputs"] {
  const together: { of: PressurePipe; inside: number; length: number }[] = [];
  for (const { of, inside, length } of pipes) {
    const same = together.find((one) => one.of === of && one.inside === inside);
    if (same === undefined) together.push({ of, inside, length });
    else same.length += length;
  }
  return together.flatMap(({ of, inside, length }) => [
    { name: `${PART_NAMES[of]}, long`, value: length, unit: "m" },
    { name: `${PART_NAMES[of]}, bore`, value: inside, unit: "m" },
  ]);
}
