import type { PipeRun } from "../dig/index.js";
import { chamberOf, doseOf } from "./dosing.js";
import {
  evenness,
  headForPressure,
  Network,
  boreArea,
  systemCurve,
  valveOpening,
  valveSettings,
  type NetworkSolution,
} from "../hydraulics/index.js";
import type { PressureSystem, Quantity, Scheme } from "../site/index.js";
import {
  drainBackOf,
  riserOf,
  flowOf,
  headOf,
  liftOf,
  speeds,
  volumeOf,
  wantedOf,
} from "./pressureFigures.js";
import {
  holesIn,
  pressureNetwork,
  type PressureNetwork,
  type PressureParts,
} from "./pressureNetwork.js";
import type { BranchResult, LinePlace, PressureResult, PumpResult } from "./pressureTypes.js";
import { curveOf, pumpResult } from "./pumps.js";
import { flowRule } from "./rules.js";
import { lowWaterOf } from "./staticLift.js";

/** What of a pressure system the scheme lacks, in words for a finding. */
export interface Missing {
  system: PressureSystem;
  missing: string;
}

/** Holes that are solved while a person waits; more are hardly meant. */
const MOST_HOLES = 3000;

/** The parts of a system as dug, or what is missing. */
export function partsOf(
  system: PressureSystem,
  runs: readonly PipeRun[],
  scheme: Scheme,
): PressureParts | Missing {
  const tank = scheme.works.find((work) => work.id === system.tank);
  if (tank?.kind !== "tank") return { system, missing: `no tank is called “${system.tank}”` };
  const main: PipeRun[] = [];
  for (const id of system.main) {
    const run = runs.find((each) => each.id === id && each.service === "pressure");
    if (run === undefined) return { system, missing: `no pressure pipe is called “${id}”` };
    if (!run.stations.every((station) => Number.isFinite(station.invert))) {
      return { system, missing: `${run.name} runs beyond the survey, so its height is not known` };
    }
    main.push(run);
  }
  const end = main.at(-1)?.stations.at(-1);
  if (end === undefined) return { system, missing: "its main has no pipe" };
  const branches = system.branches.map((branch) => {
    const bed = scheme.works.find((work) => work.id === branch.bed) ?? null;
    const base = bed?.kind === "bed" ? bed.base : bed?.kind === "pad" ? bed.top : end.ground;
    return { branch, bed, elevation: base + branch.height };
  });
  const lost = branches.find(({ branch, bed }) => branch.bed !== undefined && bed === null);
  if (lost !== undefined) {
    return { system, missing: `${lost.branch.name} serves “${lost.branch.bed}”, which is gone` };
  }
  const floating = branches.find(({ elevation }) => !Number.isFinite(elevation));
  if (floating !== undefined) {
    return { system, missing: `the height of ${floating.branch.name} is not known` };
  }
  const holes = system.branches.reduce(
    (sum, branch) => sum + branch.laterals.count * holesIn(branch),
    0,
  );
  if (holes > MOST_HOLES) {
    return {
      system,
      missing: `it has ${holes} holes, and at most ${MOST_HOLES} can be worked out`,
    };
  }
  if (holes === 0) return { system, missing: "its laterals have no holes" };
  const lowWater =
    system.dose.off === undefined
      ? lowWaterOf(tank).elevation
      : chamberOf(system, tank).floor + system.dose.off;
  return { system, tank, main, branches, lowWater };
}

/** Solves a system: every pump, every branch, the dose. `daily` is the design flow, m³/s, or null. */
export function solvePressure(
  parts: PressureParts,
  scheme: Scheme,
  daily: Quantity | null,
): PressureResult {
  const made = pressureNetwork(parts);
  const network = new Network(made.nodes);
  const { system, tank, lowWater } = parts;
  const holes = parts.branches.map(({ branch }) => branch.laterals.holes.diameter);
  const distal = distalHead(system, holes, scheme);
  const source = headForPressure(network, distal);
  const wanted = network.solve({ by: "head", head: source });
  const drainBack = drainBackOf(made, system);
  const pumped = daily === null ? null : pumpedFlow(system, daily.value, drainBack.value);
  const pumps = system.pumps.map((pump) =>
    pumpResult(pump, network, { lowWater, distal, daily: pumped }),
  );
  const used = system.pumps.find((pump) => pump.id === system.pump) ?? system.pumps[0];
  const result = pumps.find((pump) => pump.id === used?.id);
  const curve = used === undefined ? null : curveOf(used);
  const solved =
    curve === null || "mend" in curve
      ? wanted
      : network.solve({ by: "pump", water: lowWater, curve });
  const chamber = chamberOf(system, tank);
  const dose = daily === null ? null : doseOf(parts, chamber, daily, drainBack.value, solved);
  const start = dose?.plan.on ?? null;
  const high = start === null ? null : chamber.floor + start;
  return {
    id: system.id,
    name: system.name,
    tank: tank.id,
    main: parts.main.map((run) => run.id),
    pump: used?.id ?? "",
    water: { floor: chamber.floor, cover: chamber.floor + chamber.height, low: lowWater, high },
    riser: riserOf(made),
    lift: liftOf(made, parts),
    flow: flowOf(solved, result),
    head: headOf(solved, lowWater, result),
    atHighWater: atWater(network, curve, high),
    wanted: wantedOf(wanted, source, lowWater, distal),
    parts: headParts(made, solved, lowWater),
    ...speeds(made, parts, solved),
    line: lineOf(made, solved),
    branches: branchResults(made, parts, solved, curve),
    bedSpread: bedSpread(made, parts, solved),
    pumps,
    best: bestPump(pumps),
    system: systemOf(network, pumps, wanted, lowWater, high),
    drainBack,
    pipeVolume: volumeOf(made),
    dose,
  };
}

const DAY = 86_400;

/** m³/s over the day that the pump moves: what comes in, and after every dose what ran back. */
function pumpedFlow({ dose }: PressureSystem, daily: number, drainBack: number): number {
  const doses = dose.volume === undefined ? dose.perDay : (daily * DAY) / dose.volume;
  return daily + (doses * drainBack) / DAY;
}

/** Head wanted at the last hole, m: the system's own, else the rule for its smallest hole. */
function distalHead(system: PressureSystem, holes: readonly number[], scheme: Scheme): number {
  if (system.distalHead !== undefined) return system.distalHead;
  const small = Math.min(...holes) < SMALL_HOLE;
  return flowRule(small ? "distal-small" : "distal-large", scheme).value;
}

/** 3/16 in less a hair: the rule's limit between small and large holes. */
const SMALL_HOLE = (3 / 16) * 0.0254 - 1e-6;

function atWater(
  network: Network,
  curve: ReturnType<typeof curveOf> | null,
  water: number | null,
): PressureResult["atHighWater"] {
  if (water === null || curve === null || "mend" in curve) return null;
  const solved = network.solve({ by: "pump", water, curve });
  return { flow: solved.sourceFlow, head: solved.sourceHead - water };
}

function headParts(
  made: PressureNetwork,
  solved: NetworkSolution,
  lowWater: number,
): PressureResult["parts"] {
  let worst = made.fork;
  let least = Infinity;
  made.nodes.forEach((node, i) => {
    if (node.outlet !== undefined && solved.pressure[i]! < least)
      [worst, least] = [i, solved.pressure[i]!];
  });
  const [source, fork, last] = [solved.sourceHead, solved.heads[made.fork]!, solved.heads[worst]!];
  const elevation = made.nodes[worst]?.elevation ?? lowWater;
  return {
    lift: elevation - lowWater,
    main: source - fork,
    beyond: fork - last,
    last: last - elevation,
  };
}

/** Pump, the main's stations, and each branch's manifold and last hole. */
function lineOf(made: PressureNetwork, solved: NetworkSolution): LinePlace[] {
  const along = new Float64Array(made.nodes.length);
  made.nodes.forEach((node, i) => {
    if (node.parent >= 0) along[i] = along[node.parent]! + (node.link?.length ?? 0);
  });
  const place = (i: number, name: string): LinePlace => ({
    name,
    along: along[i]!,
    elevation: made.nodes[i]!.elevation,
    energy: solved.heads[i]!,
  });
  const main = Array.from({ length: made.fork + 1 }, (_, i) =>
    place(i, i === 0 ? "pump" : i === made.fork ? "end of the main" : ""),
  );
  const branches = made.branches.flatMap(({ node, holes }) => {
    const last = holes.at(-1);
    const manifold = place(node, made.nodes[node]!.id);
    return last === undefined ? [manifold] : [manifold, place(last, "last hole")];
  });
  return [...main, ...branches];
}

function branchResults(
  made: PressureNetwork,
  { system, branches }: PressureParts,
  solved: NetworkSolution,
  curve: ReturnType<typeof curveOf> | null,
): BranchResult[] {
  const shares = sharesOf(made, system);
  const settings = valvesWanted(made, system, curve);
  return branches.map(({ branch, bed, elevation }, i) => {
    const at = made.branches[i]!;
    const flows = at.holes.map((hole) => solved.discharge[hole]!);
    const pressures = at.holes.map((hole) => solved.pressure[hole]!);
    const k = settings?.[i];
    return {
      id: branch.id,
      name: branch.name,
      bed: bed?.id ?? null,
      elevation,
      rise: at.rise,
      holes: at.holes.length,
      flow: solved.flows[at.node]!,
      shareWanted: shares[i]!,
      share: solved.sourceFlow > 0 ? solved.flows[at.node]! / solved.sourceFlow : 0,
      least: Math.min(...pressures),
      most: Math.max(...pressures),
      spread: evenness(flows).spread,
      valve:
        branch.valve === undefined
          ? null
          : {
              open: branch.valve.open,
              wanted: k === undefined ? null : valveOpening(branch.valve.loss, k),
            },
    };
  });
}

/**
 * Each branch's wanted part of the flow: by the shares given, one without counting 1; where none is
 * given, by the area of its holes.
 */
function sharesOf(made: PressureNetwork, system: PressureSystem): number[] {
  const given = system.branches.some((branch) => branch.share !== undefined);
  const plain = system.branches.map((branch, i) => {
    if (given) return branch.share ?? 1;
    return boreArea(branch.laterals.holes.diameter) * (made.branches[i]?.holes.length ?? 0);
  });
  const sum = plain.reduce((total, share) => total + share, 0);
  return plain.map((share) => (sum > 0 ? share / sum : 0));
}

/** K of every valve that gives each branch its share; undefined without valves on all of several. */
function valvesWanted(
  made: PressureNetwork,
  system: PressureSystem,
  curve: ReturnType<typeof curveOf> | null,
): readonly number[] | undefined {
  const valves = system.branches.map((branch) => branch.valve);
  if (valves.length < 2 || valves.includes(undefined)) return undefined;
  if (curve === null || "mend" in curve) return undefined;
  const shares = sharesOf(made, system);
  const open = made.nodes.slice();
  made.branches.forEach(({ node, open: k }) => {
    const at = open[node]!;
    if (at.link !== undefined) open[node] = { ...at, link: { ...at.link, k } };
  });
  const asked = made.branches.map(({ node, open: k }, i) => ({ node, share: shares[i]!, open: k }));
  const water = made.nodes[0]!.elevation;
  return valveSettings(open, { by: "pump", water, curve }, asked)?.k;
}

function bedSpread(
  made: PressureNetwork,
  { system }: PressureParts,
  solved: NetworkSolution,
): number {
  const shares = sharesOf(made, system);
  const each = made.branches.map(({ node }, i) =>
    shares[i]! > 0 ? solved.flows[node]! / shares[i]! : 0,
  );
  return evenness(each).spread;
}

function bestPump(pumps: readonly PumpResult[]): string | null {
  const able = pumps.filter((pump) => pump.meets && pump.outcome === "runs");
  const cost = (pump: PumpResult): number => pump.power ?? Infinity;
  return able.sort((a, b) => cost(a) - cost(b))[0]?.id ?? null;
}

const SAMPLES = 16;

/** What the system asks, from no flow to past what any pump here gives. */
function systemOf(
  network: Network,
  pumps: readonly PumpResult[],
  wanted: NetworkSolution,
  lowWater: number,
  high: number | null,
): PressureResult["system"] {
  const base = network.lowest;
  const most = Math.max(wanted.sourceHead, ...pumps.map((pump) => lowWater + pump.head));
  const top = base + 1.6 * (most - base);
  const heads = Array.from(
    { length: SAMPLES + 1 },
    (_, i) => base + (top - base) * (i / SAMPLES) ** 2,
  );
  return systemCurve(network, heads).map(({ flow, head }) => ({
    flow,
    low: head - lowWater,
    high: high === null ? null : head - high,
  }));
}

/** Whether what `partsOf` gave is whole. */
export function isMissing(parts: PressureParts | Missing): parts is Missing {
  return "missing" in parts;
}
