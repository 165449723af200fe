import { minorLoss } from "./fittings.js";
import { headFor } from "./heads.js";
import { Network, solveNetwork } from "./network.js";
import type { NetworkNode, NetworkSolution, Source } from "./networkTypes.js";

/** A branch that a valve serves: its node in the network, and the share of the flow it should get. */
export interface ValveAsk {
  /** Index of the node whose link holds the valve. */
  node: number;
  /** Against the other branches' shares, above 0. */
  share: number;
  /** K of the valve fully open, already in the link's `k`. */
  open: number;
}

export interface ValveSettings {
  /** K of each valve, in the order asked; one of them is fully open. */
  k: readonly number[];
  solution: NetworkSolution;
}

const ROUNDS = 40;

/**
 * Valve coefficients that give each branch its share of whatever the source then delivers, the one
 * that needs most head fully open. Each round finds the head that every branch wants for its share
 * of the flow now delivered, and throttles the others by the difference; it ends when shares agree
 * to 1e-6. Null when that does not come about (a branch lies above what the source can lift to).
 * All branches must hang from one node.
 */
export function valveSettings(
  nodes: readonly NetworkNode[],
  source: Source,
  valves: readonly ValveAsk[],
): ValveSettings | null {
  const parts = valves.map((valve) => new Network(branchOf(nodes, valve.node)));
  const sum = valves.reduce((total, valve) => total + valve.share, 0);
  const k = valves.map((valve) => valve.open);
  let solution = solveNetwork(nodes, source);
  for (let round = 0; round < ROUNDS; round += 1) {
    const flows = valves.map((valve) => solution.flows[valve.node]!);
    const total = flows.reduce((all, flow) => all + flow, 0);
    if (!(total > 0)) return null;
    const wanted = valves.map((valve) => (valve.share / sum) * total);
    const even = flows.every((flow, i) => Math.abs(flow - wanted[i]!) <= 1e-6 * total);
    if (even) return { k, solution };
    const heads = parts.map((part, i) => headFor(part, wanted[i]!));
    const highest = Math.max(...heads);
    valves.forEach((valve, i) => {
      const inside = nodes[valve.node]?.link?.inside;
      if (inside === undefined) throw new Error(`valve: got node ${valve.node} without a link`);
      k[i] = valve.open + (highest - heads[i]!) / minorLoss(1, wanted[i]!, inside);
    });
    solution = solveNetwork(withValves(nodes, valves, k), source, solution);
  }
  return null;
}

/** The same network with each valve's K in place of its open one. */
export function withValves(
  nodes: readonly NetworkNode[],
  valves: readonly ValveAsk[],
  k: readonly number[],
): NetworkNode[] {
  const changed = nodes.slice();
  valves.forEach((valve, i) => {
    const node = changed[valve.node]!;
    if (node.link === undefined) return;
    changed[valve.node] = {
      ...node,
      link: { ...node.link, k: node.link.k - valve.open + k[i]! },
    };
  });
  return changed;
}

/** A branch on its own, from the node that its link hangs from. */
function branchOf(nodes: readonly NetworkNode[], top: number): NetworkNode[] {
  const at = nodes[top]!;
  const place = new Map([[at.parent, 0]]);
  const root = nodes[at.parent]!;
  const part: NetworkNode[] = [{ id: root.id, parent: -1, elevation: root.elevation }];
  for (let i = top; i < nodes.length; i += 1) {
    const node = nodes[i]!;
    const parent = i === top ? 0 : place.get(node.parent);
    if (parent === undefined || (i !== top && node.parent === at.parent)) continue;
    place.set(i, part.length);
    part.push({ ...node, parent });
  }
  return part;
}

/** How even discharges are. */
export interface Evenness {
  least: number;
  most: number;
  /** (most − least) ÷ most: 0 when all are alike. */
  spread: number;
}

/** Evenness of the flows of some holes or branches, m³/s; none at all counts as even. */
export function evenness(flows: readonly number[]): Evenness {
  const least = flows.length === 0 ? 0 : Math.min(...flows);
  const most = flows.length === 0 ? 0 : Math.max(...flows);
  return { least, most, spread: most > 0 ? (most - least) / most : 0 };
}
