import { boreArea, frictionSlope, GRAVITY, type FrictionLaw } from "./friction.js";
import { orificeFlow } from "./orifice.js";
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
export type Source = { by: "head"; head: number } | { by: "pump"; water: number; curve: PumpCurve };

export interface NetworkSolution {
  /**
   * `no-flow`: no hole lies low enough for the source; `off-curve`: more flows than the pump's curve
   * tells of, and the answer rests on its last slope; `not-converged`: `why` says how far off.
   */
  outcome: "solved" | "no-flow" | "off-curve" | "not-converged";
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

/** m: heads agree to this share of the heads at work. */
const CLOSE = 1e-12;
const MOST_STEPS = 200;
/** m of head under which a hole counts as shut for the step's stiffness (not for the answer). */
const SLIGHT = 1e-9;

/**
 * Flow and head everywhere in a branched network of any shape.
 *
 * The unknowns are the holes' discharges; flow in a link is what leaves below it, so mass balances
 * by construction, and what is solved is energy: elevation + losses on the way + the hole's own head
 * = the source's head. That is the slope of a convex function of the discharges (Cherry, Millar
 * 1951: a network's content), bounded at nothing, since a hole does not suck. Newton's step on it is
 * a network of resistors of the same shape, eliminated from the leaves to the source in one pass;
 * where a whole step overshoots it is cut until it does not. Throws on a malformed tree.
 */
export function solveNetwork(
  nodes: readonly NetworkNode[],
  source: Source,
  start?: NetworkSolution,
): NetworkSolution {
  return new Solver(nodes, source).solve(start);
}

class Solver {
  private readonly count: number;
  private readonly discharge: Float64Array;
  private readonly flows: Float64Array;
  /** Energy line at each node less the source's when nothing is lost: minus all losses so far. */
  private readonly lost: Float64Array;
  private readonly stiff: Float64Array;
  private readonly step: Float64Array;
  /** Change of loss down to each node under the step, m. */
  private readonly change: Float64Array;
  private readonly begun: Float64Array;
  private readonly moved: Float64Array;
  /** By node: 1/(C A √2g)², so that a hole's head is this × q²; 0 for a node without a hole. */
  private readonly hole: Float64Array;
  /** By node: what is off in the energy of its hole, m, positive when it should give less. */
  private readonly off: Float64Array;
  private readonly gives: Float64Array;
  private readonly yields: Float64Array;
  private head = 0;

  constructor(
    private readonly nodes: readonly NetworkNode[],
    private readonly source: Source,
  ) {
    const count = nodes.length;
    this.count = count;
    const array = (): Float64Array => new Float64Array(count);
    this.discharge = array();
    this.flows = array();
    this.lost = array();
    this.stiff = array();
    this.step = array();
    this.change = array();
    this.begun = array();
    this.moved = array();
    this.hole = array();
    this.off = array();
    this.gives = array();
    this.yields = array();
    nodes.forEach((node, i) => {
      checkNode(node, i);
      const outlet = node.outlet;
      if (outlet?.by === "orifice") {
        this.hole[i] = 1 / orificeFlow(outlet.diameter, 1, outlet.coefficient) ** 2;
      } else if (outlet?.by === "fixed") this.discharge[i] = outlet.flow;
    });
  }

  solve(start: NetworkSolution | undefined): NetworkSolution {
    this.begin(start);
    let worst = this.evaluate(this.discharge);
    let iterations = 0;
    const scale = Math.max(
      1e-3,
      ...this.nodes.map((node) => Math.abs(this.top() - node.elevation)),
    );
    while (worst > CLOSE * scale && iterations < MOST_STEPS) {
      this.direct();
      if (!this.advance()) break;
      worst = this.evaluate(this.discharge);
      iterations += 1;
    }
    return this.answer(worst, worst <= 1e3 * CLOSE * scale, iterations);
  }

  /** The highest energy line that the source can give, m. */
  private top(): number {
    return this.source.by === "head"
      ? this.source.head
      : this.source.water + this.source.curve.shutOff;
  }

  /** Starts from another solution of the same tree, else from holes fed without loss. */
  private begin(start: NetworkSolution | undefined): void {
    const { discharge, hole, count } = this;
    for (let i = 0; i < count; i += 1) {
      if (hole[i] === 0) continue;
      const free = Math.max(0, this.top() - this.nodes[i]!.elevation);
      const known = start?.discharge[i] ?? 0;
      discharge[i] = known > 0 ? known : Math.sqrt(free / hole[i]!);
    }
  }

  /** Works out flows, losses and what is off for these discharges; the worst of it, m. */
  private evaluate(discharge: Float64Array): number {
    const { nodes, flows, lost, stiff, off, hole, count } = this;
    flows.set(discharge);
    for (let i = count - 1; i > 0; i -= 1) flows[nodes[i]!.parent]! += flows[i]!;
    this.head = this.sourceHead(flows[0]!);
    for (let i = 0; i < count; i += 1) {
      const { link, parent } = nodes[i]!;
      const before = parent < 0 ? 0 : lost[parent]!;
      if (link === undefined) {
        lost[i] = before;
        stiff[i] = 0;
      } else {
        const flow = flows[i]!;
        const friction =
          link.length === 0 ? 0 : frictionSlope(link.law, flow, link.inside) * link.length;
        const minor =
          link.k === 0 ? 0 : (link.k * (flow / boreArea(link.inside)) ** 2) / (2 * GRAVITY);
        lost[i] = before + friction + minor;
        stiff[i] = flow > 0 ? stiffness(link, friction, minor, flow) : 0;
      }
    }
    let worst = 0;
    for (let i = 0; i < count; i += 1) {
      if (hole[i] === 0) continue;
      const q = discharge[i]!;
      off[i] = nodes[i]!.elevation + lost[i]! + hole[i]! * q * q - this.head;
      if (q > 0 || off[i]! < 0) worst = Math.max(worst, Math.abs(off[i]!));
    }
    return worst;
  }

  private sourceHead(flow: number): number {
    const { source } = this;
    return source.by === "head" ? source.head : source.water + source.curve.headAt(flow);
  }

  /**
   * Newton's step. With D the change of flow in a link and u the change of loss down to a node,
   * u = u(upstream) + stiffness × D, and each hole's change is −(off + u) ÷ its own stiffness. So the
   * change of flow into a part is gives − yields × u upstream of it: leaves first, then back down.
   */
  private direct(): void {
    const { nodes, hole, off, stiff, step, gives, yields, discharge, count } = this;
    gives.fill(0);
    yields.fill(0);
    for (let i = count - 1; i >= 0; i -= 1) {
      if (hole[i]! > 0 && (discharge[i]! > 0 || off[i]! < 0)) {
        const own = 2 * Math.max(hole[i]! * discharge[i]!, Math.sqrt(hole[i]! * SLIGHT));
        gives[i]! -= off[i]! / own;
        yields[i]! += 1 / own;
      }
      const slack = i === 0 ? this.sourceStiffness() : stiff[i]!;
      const divide = 1 + yields[i]! * slack;
      gives[i]! /= divide;
      yields[i]! /= divide;
      const parent = nodes[i]!.parent;
      if (parent >= 0) {
        gives[parent]! += gives[i]!;
        yields[parent]! += yields[i]!;
      }
    }
    this.descend(step);
  }

  private descend(step: Float64Array): void {
    const { nodes, hole, off, stiff, gives, yields, discharge, change, count } = this;
    for (let i = 0; i < count; i += 1) {
      const parent = nodes[i]!.parent;
      const before = parent < 0 ? 0 : change[parent]!;
      const into = gives[i]! - yields[i]! * before;
      change[i] = before + (parent < 0 ? this.sourceStiffness() : stiff[i]!) * into;
      step[i] = 0;
      if (hole[i]! > 0 && (discharge[i]! > 0 || off[i]! < 0)) {
        const own = 2 * Math.max(hole[i]! * discharge[i]!, Math.sqrt(hole[i]! * SLIGHT));
        step[i] = -(off[i]! + change[i]!) / own;
      }
    }
  }

  private sourceStiffness(): number {
    return this.source.by === "head" ? 0 : -this.source.curve.slopeAt(this.flows[0]!);
  }

  /**
   * Goes along the step, cut at nothing, as far as the content still falls: at the far end its slope
   * along the way must not have turned up by as much as it went down. False when no part of it helps.
   */
  private advance(): boolean {
    const { discharge, step, begun, hole, count } = this;
    begun.set(discharge);
    const down = this.slopeAlong(step, 1);
    for (let part = 1; part > 1e-12; part /= 2) {
      for (let i = 0; i < count; i += 1) {
        if (hole[i]! > 0) discharge[i] = Math.max(0, begun[i]! + part * step[i]!);
      }
      this.evaluate(discharge);
      for (let i = 0; i < count; i += 1) this.moved[i] = discharge[i]! - begun[i]!;
      if (this.slopeAlong(this.moved, part) <= 0.9 * Math.abs(down)) return down !== 0;
    }
    discharge.set(begun);
    this.evaluate(discharge);
    return false;
  }

  /** Slope of the content along a way, by part of the step, at the flows last worked out. */
  private slopeAlong(way: Float64Array, part: number): number {
    let slope = 0;
    for (let i = 0; i < this.count; i += 1) slope += this.off[i]! * way[i]!;
    return slope / part;
  }

  private answer(worst: number, close: boolean, iterations: number): NetworkSolution {
    const { nodes, lost, flows, discharge, head, count } = this;
    const heads = new Float64Array(count);
    const pressure = new Float64Array(count);
    let imbalance = 0;
    nodes.forEach((node, i) => {
      heads[i] = head - lost[i]!;
      pressure[i] = heads[i] - node.elevation;
      const { outlet } = node;
      if (outlet?.by !== "orifice") return;
      const asked = orificeFlow(outlet.diameter, pressure[i], outlet.coefficient);
      imbalance = Math.max(imbalance, Math.abs(asked - discharge[i]!));
    });
    const { outcome, why } = this.verdict(worst, close);
    return {
      outcome,
      why,
      sourceFlow: flows[0]!,
      sourceHead: head,
      heads,
      pressure,
      flows: flows.slice(),
      discharge: discharge.slice(),
      imbalance,
      iterations,
    };
  }

  private verdict(worst: number, close: boolean): Pick<NetworkSolution, "outcome" | "why"> {
    const flow = this.flows[0]!;
    if (!close) return { outcome: "not-converged", why: `heads are still ${worst} m apart` };
    if (!(flow > 0)) {
      return { outcome: "no-flow", why: "every outlet lies above the head that the source gives" };
    }
    if (this.source.by === "pump" && flow > this.source.curve.most) {
      const why = "more flows than the pump's curve gives, so its last slope was carried on";
      return { outcome: "off-curve", why };
    }
    return { outcome: "solved", why: "" };
  }
}

/** d(loss)/d(flow) of a link, m per m³/s, from the losses at hand. */
function stiffness(link: Link, friction: number, minor: number, flow: number): number {
  const own =
    link.law.by === "hazen-williams" ? 1.852 * friction : darcyPower(link, flow) * friction;
  return (own + 2 * minor) / flow;
}

/** The power of flow that friction follows hereabouts under Darcy's law: 1 laminar to 2 rough. */
function darcyPower(link: Link, flow: number): number {
  const near = frictionSlope(link.law, flow * 1.0001, link.inside);
  const here = frictionSlope(link.law, flow, link.inside);
  return here > 0 ? Math.log(near / here) / Math.log(1.0001) : 1;
}

function checkNode(node: NetworkNode, i: number): void {
  const fits = i === 0 ? node.parent === -1 : node.parent >= 0 && node.parent < i;
  if (!fits) {
    throw new Error(
      `network: got parent ${node.parent} at node ${i} (${node.id}), expected ${i === 0 ? "-1 at the source" : "an earlier node"}`,
    );
  }
  if (i === 0 && node.link !== undefined) {
    throw new Error("network: got a link to the source, expected none");
  }
}

/** The flow that each of these heads at the first node pushes through: the system's curve. */
export function systemCurve(
  nodes: readonly NetworkNode[],
  heads: readonly number[],
): { flow: number; head: number }[] {
  let before: NetworkSolution | undefined;
  return heads.map((head) => {
    before = solveNetwork(nodes, { by: "head", head }, before);
    return { flow: before.sourceFlow, head };
  });
}

/**
 * The head at the first node, an elevation in m, that pushes `flow` (m³/s) through the holes below.
 * Flow grows as about the root of head, so its square is what the search goes by.
 */
export function headFor(nodes: readonly NetworkNode[], flow: number): number {
  return headWhere(nodes, (solution) => solution.sourceFlow ** 2, flow ** 2);
}

/** The head at the first node at which the hole with least pressure has `pressure`, m. */
export function headForPressure(nodes: readonly NetworkNode[], pressure: number): number {
  return headWhere(nodes, (solution) => leastPressure(nodes, solution), pressure);
}

/** Least pressure at any hole, m; infinite where there is none. */
export function leastPressure(nodes: readonly NetworkNode[], solution: NetworkSolution): number {
  let least = Infinity;
  nodes.forEach((node, i) => {
    if (node.outlet?.by === "orifice") least = Math.min(least, solution.pressure[i]!);
  });
  return least;
}

/**
 * The head at the first node at which a measure of the solution, which must grow with head, comes to
 * `wanted`: regula falsi between bounds, every third step a halving, to 1e-10 m.
 */
function headWhere(
  nodes: readonly NetworkNode[],
  measure: (solution: NetworkSolution) => number,
  wanted: number,
): number {
  const holes = nodes.filter((node) => node.outlet?.by === "orifice");
  let low = Math.min(...holes.map((node) => node.elevation));
  let solution: NetworkSolution | undefined;
  const at = (head: number): number => {
    solution = solveNetwork(nodes, { by: "head", head }, solution);
    return measure(solution);
  };
  let below = at(low);
  if (!(wanted > below)) return low;
  let reach = 1;
  while (at(low + reach) < wanted && reach < 1e6) reach *= 2;
  let high = low + reach;
  let above = at(high);
  for (let step = 0; step < 90 && high - low > 1e-10; step += 1) {
    const share = (wanted - below) / (above - below);
    const guess = step % 3 === 2 ? (low + high) / 2 : low + share * (high - low);
    const got = at(guess);
    if (Math.abs(got - wanted) < 1e-12 * Math.abs(wanted)) return guess;
    if (got < wanted) [low, below] = [guess, got];
    else [high, above] = [guess, got];
  }
  return (low + high) / 2;
}
