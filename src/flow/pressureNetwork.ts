import type { PipeRun } from "../dig/index.js";
import type { Branch, PressureSystem, Tank, Work } from "../site/index.js";
import {
  fittingLength,
  ORIFICE_COEFFICIENT,
  valveCoefficient,
  waterViscosity,
  type FrictionLaw,
  type Link,
  type NetworkNode,
} from "../hydraulics/index.js";

/** What a pressure system's network is made from, read from the works as dug. */
export interface PressureParts {
  system: PressureSystem;
  tank: Tank;
  /** The main's pipes, in order from the tank. */
  main: readonly PipeRun[];
  branches: readonly { branch: Branch; bed: Work | null; elevation: number }[];
  /** Elevation of the water when the pump stops, m. */
  lowWater: number;
}

/** Which part of the way a pipe is; `rise`: of a branch, from the main's end up to its laterals. */
export type PressurePipe = "riser" | "main" | "branch" | "rise" | "laterals";

/** The network, and which of its nodes are what. Node 0 is the pump. */
export interface PressureNetwork {
  nodes: NetworkNode[];
  law: FrictionLaw;
  /** Node at the main's start and at its end, where the branches part. */
  start: number;
  fork: number;
  /**
   * Node of each branch's manifold, whose link holds its valve; K of the valve fully open; m of pipe
   * from the main's end up to the laterals.
   */
  branches: { node: number; open: number; rise: number; holes: number[] }[];
  /** Every pipe with its bore and length, m, for the volume that it holds. */
  pipes: { of: PressurePipe; inside: number; length: number }[];
}

/** Hazen–Williams C of plastic pipe where the file does not say (recalled: 140 to 150). */
const USUAL_C = 140;
const USUAL_CELSIUS = 10;

/** The network of a system: riser, main with a node at each of its stations, branches, every hole. */
export function pressureNetwork(parts: PressureParts): PressureNetwork {
  const law = lawOf(parts.system);
  const made: PressureNetwork = {
    nodes: [{ id: "pump", parent: -1, elevation: parts.lowWater }],
    law,
    start: 0,
    fork: 0,
    branches: [],
    pipes: [],
  };
  layMain(made, parts);
  for (const { branch, elevation } of parts.branches) layBranch(made, branch, elevation);
  return made;
}

function lawOf({ friction }: PressureSystem): FrictionLaw {
  if (friction?.by !== "darcy") return { by: "hazen-williams", c: friction?.c ?? USUAL_C };
  const viscosity = waterViscosity(friction.celsius ?? USUAL_CELSIUS);
  return { by: "darcy", roughness: friction.roughness, viscosity };
}

/** Adds a node at the end of a pipe and gives its index. */
function extend(made: PressureNetwork, parent: number, node: Omit<NetworkNode, "parent">): number {
  made.nodes.push({ ...node, parent });
  return made.nodes.length - 1;
}

function layMain(made: PressureNetwork, { system, main, lowWater }: PressureParts): void {
  const first = main[0];
  if (first === undefined) return;
  const top = centreOf(first, 0);
  const inside = system.riser?.inside ?? first.inside;
  const length = system.riser?.length ?? Math.max(0, top - lowWater);
  const link: Link = { inside, length, law: made.law, k: 0 };
  made.pipes.push({ of: "riser", inside, length });
  made.start = extend(made, 0, { id: "start of the main", elevation: top, link });
  let at = made.start;
  // Fittings lose as much as so much more pipe; it is put where the main starts.
  let extra = fittingsLength(system.fittings, first.inside);
  for (const run of main) {
    run.stations.forEach((station, i) => {
      const before = run.stations[i - 1];
      if (before === undefined) return;
      const length = Math.hypot(station.station - before.station, station.invert - before.invert);
      made.pipes.push({ of: "main", inside: run.inside, length });
      at = extend(made, at, {
        id: `${run.id} ${i}`,
        elevation: centreOf(run, i),
        link: { inside: run.inside, length: length + extra, law: made.law, k: 0 },
      });
      extra = 0;
    });
  }
  made.fork = at;
}

function centreOf(run: PipeRun, station: number): number {
  return (run.stations[station]?.invert ?? NaN) + run.inside / 2;
}

/** m of straight pipe that the fittings stand for; kinds that the catalogue lacks count nothing. */
function fittingsLength(fittings: PressureSystem["fittings"], inside: number): number {
  return (fittings ?? []).reduce(
    (sum, { id, count }) => sum + count * (fittingLength(id, inside) ?? 0),
    0,
  );
}

function layBranch(made: PressureNetwork, branch: Branch, elevation: number): void {
  const rise = Math.abs(elevation - (made.nodes[made.fork]?.elevation ?? elevation));
  const length = branch.length + rise;
  made.pipes.push({ of: "branch", inside: branch.inside, length: branch.length });
  made.pipes.push({ of: "rise", inside: branch.inside, length: rise });
  const open = branch.valve?.loss ?? 0;
  const link: Link = {
    inside: branch.inside,
    length: length + fittingsLength(branch.fittings, branch.inside),
    law: made.law,
    k: branch.valve === undefined ? 0 : valveCoefficient(open, branch.valve.open),
  };
  const node = extend(made, made.fork, { id: branch.id, elevation, link });
  made.branches.push({ node, open, rise, holes: [] });
  layLaterals(made, branch, node, elevation);
}

/**
 * Laterals hang from the manifold one after the other, from its end or to both sides of its middle
 * (an odd one hangs where it is fed).
 */
function layLaterals(made: PressureNetwork, branch: Branch, from: number, elevation: number): void {
  const { count, apart, feed, manifold } = branch.laterals;
  const side = (laterals: number, first: number): void => {
    let at = from;
    for (let i = 0; i < laterals; i += 1) {
      const length = i === 0 ? first : apart;
      if (length > 0) made.pipes.push({ of: "laterals", inside: manifold.inside, length });
      const link: Link = { inside: manifold.inside, length, law: made.law, k: 0 };
      at = extend(made, at, { id: `${branch.id} manifold`, elevation, link });
      layLateral(made, branch, at, elevation);
    }
  };
  if (feed === "end") side(count, 0);
  else if (count % 2 === 0) {
    side(count / 2, apart / 2);
    side(count / 2, apart / 2);
  } else {
    layLateral(made, branch, from, elevation);
    side((count - 1) / 2, apart);
    side((count - 1) / 2, apart);
  }
}

function layLateral(made: PressureNetwork, branch: Branch, from: number, elevation: number): void {
  const { inside, length, holes } = branch.laterals;
  made.pipes.push({ of: "laterals", inside, length });
  let at = from;
  for (let i = 0; i < holesIn(branch); i += 1) {
    at = extend(made, at, {
      id: `${branch.id} hole`,
      elevation,
      link: { inside, length: i === 0 ? holes.first : holes.apart, law: made.law, k: 0 },
      outlet: { by: "orifice", diameter: holes.diameter, coefficient: ORIFICE_COEFFICIENT },
    });
    made.branches.at(-1)?.holes.push(at);
  }
}

/** Holes in one lateral: the first, and one each `apart` as long as it lies on the pipe. */
export function holesIn({ laterals: { length, holes } }: Branch): number {
  if (holes.first > length) return 0;
  return Math.floor((length - holes.first) / holes.apart + 1e-9) + 1;
}
