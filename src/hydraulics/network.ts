import { boreArea, frictionSlope, GRAVITY, type FrictionLaw } from "./friction.js";
import { orificeFlow } from "./orifice.js";
import type { Link, NetworkNode, NetworkSolution, Source } from "./networkTypes.js";

/** Heads agree to this share of the heads at work. */
const CLOSE = 1e-12;
const MOST_STEPS = 200;
/** m of head under which a hole counts as shut for the step's stiffness (not for the answer). */
const SLIGHT = 1e-9;

/** Flow and head everywhere in a branched network of any shape; see `Network`. */
export function solveNetwork(
  nodes: readonly NetworkNode[],
  source: Source,
  start?: NetworkSolution,
): NetworkSolution {
  return new Network(nodes).solve(source, start);
}

/**
 * A branched network, made ready to be solved for one source after another.
 *
 * The unknowns are the holes' discharges; flow in a link is what leaves below it, so mass balances
 * by construction, and what is solved is energy: elevation + losses on the way + the hole's own head
 * = the source's head. That is the slope of a convex function of the discharges (Cherry, Millar
 * 1951: a network's content), bounded at nothing, since a hole does not suck. Newton's step on it is
 * a network of resistors of the same shape, eliminated from the leaves to the source in one pass;
 * where a whole step overshoots it is cut until it does not. Where the flow is given, the source's
 * head is one more unknown, found in the same pass. Throws on a malformed tree.
 */
export class Network {
  /** Elevation of the lowest outlet, m; NaN without one. */
  readonly lowest: number;
  private readonly count: number;
  private readonly parents: Int32Array;
  private readonly elevations: Float64Array;
  /** By link: loss = friction × flow^1.852 (Hazen–Williams) + minor × flow²; Darcy apart. */
  private readonly friction: Float64Array;
  private readonly minor: Float64Array;
  private readonly darcy: readonly (Link | undefined)[];
  /** By node: 1/(C A √2g)², so that a hole's head is this × q²; 0 for a node without a hole. */
  private readonly hole: Float64Array;
  private readonly discharge: Float64Array;
  private readonly flows: Float64Array;
  /** Losses from the source to each node, m. */
  private readonly lost: Float64Array;
  /** d(loss)/d(flow) of each link, m per m³/s. */
  private readonly stiff: Float64Array;
  /** By node: what is off in the energy of its hole, m, positive when it should give less. */
  private readonly off: Float64Array;
  private readonly gives: Float64Array;
  private readonly yields: Float64Array;
  private readonly step: Float64Array;
  /** Change of loss down to each node under the step, m. */
  private readonly change: Float64Array;
  private readonly begun: Float64Array;
  private readonly moved: Float64Array;
  private source: Source = { by: "head", head: 0 };
  private head = 0;
  /** Change of the source's head that the step comes with where the flow is given, m. */
  private lift = 0;

  constructor(readonly nodes: readonly NetworkNode[]) {
    const count = nodes.length;
    const array = (): Float64Array => new Float64Array(count);
    this.count = count;
    this.parents = Int32Array.from(nodes, (node) => node.parent);
    this.elevations = Float64Array.from(nodes, (node) => node.elevation);
    this.friction = array();
    this.minor = array();
    this.darcy = nodes.map(({ link }) => (link?.law.by === "darcy" ? link : undefined));
    this.hole = array();
    [this.discharge, this.flows, this.lost, this.stiff] = [array(), array(), array(), array()];
    [this.off, this.gives, this.yields] = [array(), array(), array()];
    [this.step, this.change, this.begun, this.moved] = [array(), array(), array(), array()];
    nodes.forEach((node, i) => {
      checkNode(node, i);
      this.takeIn(node, i);
    });
    const outlets = nodes.filter((node) => node.outlet !== undefined);
    this.lowest = outlets.length === 0 ? NaN : Math.min(...outlets.map((node) => node.elevation));
  }

  private takeIn({ link, outlet }: NetworkNode, i: number): void {
    if (link !== undefined) {
      this.minor[i] = link.k / (2 * GRAVITY * boreArea(link.inside) ** 2);
      // frictionSlope at 1 m³/s is the law's own factor.
      if (link.law.by === "hazen-williams") {
        this.friction[i] = frictionSlope(link.law, 1, link.inside) * link.length;
      }
    }
    if (outlet?.by === "orifice") {
      this.hole[i] = 1 / orificeFlow(outlet.diameter, 1, outlet.coefficient) ** 2;
    }
  }

  /** Solves for a source; another solution of the same network, if near, makes it quicker. */
  solve(source: Source, start?: NetworkSolution): NetworkSolution {
    this.source = source;
    this.head = source.by === "head" ? source.head : 0;
    this.begin(start);
    let worst = this.evaluate();
    if (source.by === "flow") worst = this.centre();
    let iterations = 0;
    const scale = Math.max(1e-3, this.reach());
    while (worst > CLOSE * scale && iterations < MOST_STEPS) {
      this.direct();
      if (!this.advance()) break;
      worst = this.evaluate();
      iterations += 1;
    }
    return this.answer(worst, worst <= 1e3 * CLOSE * scale, iterations);
  }

  /** The highest energy line that the source can give, m. */
  private top(): number {
    const { source } = this;
    if (source.by === "flow") return this.head;
    return source.by === "head" ? source.head : source.water + source.curve.shutOff;
  }

  /** The largest height that heads are reckoned over, m. */
  private reach(): number {
    let most = 0;
    for (const z of this.elevations) most = Math.max(most, Math.abs(this.top() - z));
    return most;
  }

  /** Starts from another solution of the same tree, else from holes fed without loss. */
  private begin(start: NetworkSolution | undefined): void {
    const { discharge, hole, elevations, nodes, count } = this;
    const given = this.source.by === "flow";
    for (let i = 0; i < count; i += 1) {
      const outlet = nodes[i]!.outlet;
      if (outlet?.by === "fixed") discharge[i] = outlet.flow;
      if (hole[i] === 0) continue;
      const free = given ? 1 : Math.max(0, this.top() - elevations[i]!);
      const known = start?.discharge[i] ?? 0;
      discharge[i] = known > 0 ? known : Math.sqrt(free / hole[i]!);
    }
    this.share();
  }

  /** Where the flow is given: the holes' discharges in proportion, so that all of it leaves. */
  private share(): void {
    const { source, discharge, hole, count } = this;
    if (source.by !== "flow") return;
    let [free, fixed] = [0, 0];
    for (let i = 0; i < count; i += 1) {
      if (hole[i]! > 0) free += discharge[i]!;
      else fixed += discharge[i]!;
    }
    const factor = free > 0 ? Math.max(0, source.flow - fixed) / free : 0;
    for (let i = 0; i < count; i += 1) if (hole[i]! > 0) discharge[i]! *= factor;
  }

  /** A first head where the flow is given: that which all holes want between them. */
  private centre(): number {
    let [sum, open] = [0, 0];
    for (let i = 0; i < this.count; i += 1) {
      if (this.discharge[i]! > 0 && this.hole[i]! > 0) {
        sum += this.off[i]!;
        open += 1;
      }
    }
    if (open > 0) this.head += sum / open;
    return this.evaluate();
  }

  /** Works out flows, losses and what is off for these discharges; the worst of it, m. */
  private evaluate(): number {
    this.addUp();
    this.lose();
    const { off, hole, discharge, elevations, lost, count } = this;
    let worst = 0;
    for (let i = 0; i < count; i += 1) {
      if (hole[i] === 0) continue;
      const q = discharge[i]!;
      off[i] = elevations[i]! + lost[i]! + hole[i]! * q * q - this.head;
      if (q > 0 || off[i]! < 0) worst = Math.max(worst, Math.abs(off[i]!));
    }
    return worst;
  }

  private addUp(): void {
    const { flows, parents, source } = this;
    flows.set(this.discharge);
    for (let i = this.count - 1; i > 0; i -= 1) flows[parents[i]!]! += flows[i]!;
    if (source.by === "head") this.head = source.head;
    else if (source.by === "pump") this.head = source.water + source.curve.headAt(flows[0]!);
  }

  private lose(): void {
    const { flows, parents, lost, stiff, friction, minor, count } = this;
    lost[0] = 0;
    stiff[0] = 0;
    for (let i = 1; i < count; i += 1) {
      const flow = flows[i]!;
      const rubbed = friction[i]! > 0 ? friction[i]! * flow ** 1.852 : 0;
      const turned = minor[i]! * flow * flow;
      lost[i] = lost[parents[i]!]! + rubbed + turned;
      stiff[i] = flow > 0 ? (1.852 * rubbed + 2 * turned) / flow : 0;
      if (this.darcy[i] !== undefined) this.loseByDarcy(i, this.darcy[i]!, flow);
    }
  }

  private loseByDarcy(i: number, link: Link, flow: number): void {
    const loss = frictionSlope(link.law, flow, link.inside) * link.length;
    this.lost[i]! += loss;
    if (flow > 0) this.stiff[i]! += (powerOf(link.law, flow, link.inside) * loss) / flow;
  }

  /**
   * Newton's step. With D the change of flow in a link and u the change of loss down to a node,
   * u = u(upstream) + stiffness × D, and each hole's change is −(off + u) ÷ its own stiffness. So the
   * change of flow into a part is gives − yields × u upstream of it: leaves first, then back down.
   */
  private direct(): void {
    const { parents, stiff, gives, yields, count } = this;
    gives.fill(0);
    yields.fill(0);
    for (let i = count - 1; i >= 0; i -= 1) {
      const own = this.holeStiffness(i);
      if (own > 0) {
        gives[i]! -= this.off[i]! / own;
        yields[i]! += 1 / own;
      }
      const divide = 1 + yields[i]! * (i === 0 ? this.sourceStiffness() : stiff[i]!);
      gives[i]! /= divide;
      yields[i]! /= divide;
      if (i === 0) break;
      gives[parents[i]!]! += gives[i]!;
      yields[parents[i]!]! += yields[i]!;
    }
    this.descend();
  }

  private descend(): void {
    const { source, parents, stiff, gives, yields, change, step, off, count } = this;
    const wanted = source.by === "flow" ? source.flow - this.flows[0]! - gives[0]! : 0;
    this.lift = yields[0]! > 0 ? wanted / yields[0]! : 0;
    for (let i = 0; i < count; i += 1) {
      const before = i === 0 ? -this.lift : change[parents[i]!]!;
      const into = gives[i]! - yields[i]! * before;
      change[i] = before + (i === 0 ? this.sourceStiffness() : stiff[i]!) * into;
      const own = this.holeStiffness(i);
      step[i] = own > 0 ? -(off[i]! + change[i]!) / own : 0;
    }
  }

  /** d(head)/d(flow) of a hole that takes part in the step, m per m³/s; 0 for one that does not. */
  private holeStiffness(i: number): number {
    const hole = this.hole[i]!;
    const q = this.discharge[i]!;
    if (hole === 0 || (q === 0 && this.off[i]! >= 0)) return 0;
    return 2 * Math.max(hole * q, Math.sqrt(hole * SLIGHT));
  }

  private sourceStiffness(): number {
    return this.source.by === "pump" ? -this.source.curve.slopeAt(this.flows[0]!) : 0;
  }

  /**
   * Goes along the step, cut at nothing, as far as the content still falls: at the far end its slope
   * along the way must not have turned up by as much as it went down. False when no part of it helps.
   */
  private advance(): boolean {
    const { discharge, step, begun, moved, hole, count } = this;
    begun.set(discharge);
    const head = this.head;
    const down = this.slopeAlong(step, 1);
    for (let part = 1; part > 1e-12; part /= 2) {
      for (let i = 0; i < count; i += 1) {
        if (hole[i]! > 0) discharge[i] = Math.max(0, begun[i]! + part * step[i]!);
      }
      if (this.source.by === "flow") this.head = head + part * this.lift;
      this.evaluate();
      for (let i = 0; i < count; i += 1) moved[i] = discharge[i]! - begun[i]!;
      if (this.slopeAlong(moved, part) <= 0.9 * Math.abs(down)) return down !== 0;
    }
    discharge.set(begun);
    this.head = head;
    this.evaluate();
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
    for (let i = 0; i < count; i += 1) {
      heads[i] = head - lost[i]!;
      pressure[i] = heads[i]! - this.elevations[i]!;
      const outlet = nodes[i]!.outlet;
      if (outlet?.by !== "orifice") continue;
      const asked = orificeFlow(outlet.diameter, pressure[i]!, outlet.coefficient);
      imbalance = Math.max(imbalance, Math.abs(asked - discharge[i]!));
    }
    return {
      ...this.verdict(worst, close, pressure),
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

  private verdict(
    worst: number,
    close: boolean,
    pressure: Float64Array,
  ): Pick<NetworkSolution, "outcome" | "why"> {
    const { nodes, source } = this;
    const flow = this.flows[0]!;
    if (!close) return { outcome: "not-converged", why: `heads are still ${worst} m apart` };
    if (Number.isNaN(this.lowest)) return { outcome: "no-flow", why: "it has no outlet" };
    if (!(flow > 0)) {
      return { outcome: "no-flow", why: "every outlet lies above the head that the source gives" };
    }
    if (source.by === "flow" && Math.abs(flow - source.flow) > 1e-6 * source.flow) {
      return {
        outcome: "not-converged",
        why: `${flow} m³/s leaves, and ${source.flow} was asked for`,
      };
    }
    const dry = nodes.find((node, i) => node.outlet?.by === "fixed" && pressure[i]! < 0);
    if (dry !== undefined) {
      const why = `what is taken at ${dry.id} lies above the head that is left there`;
      return { outcome: "short-of-head", why };
    }
    if (source.by === "pump" && flow > source.curve.most) {
      const why = "more flows than the pump's curve gives, so its last slope was carried on";
      return { outcome: "off-curve", why };
    }
    return { outcome: "solved", why: "" };
  }
}

/** The power of flow that friction follows hereabouts under Darcy's law: 1 laminar to 2 rough. */
function powerOf(law: FrictionLaw, flow: number, inside: number): number {
  const near = frictionSlope(law, flow * 1.0001, inside);
  const here = frictionSlope(law, flow, inside);
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
