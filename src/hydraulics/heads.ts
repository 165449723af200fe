import { Network } from "./network.js";
import type { NetworkNode, NetworkSolution } from "./networkTypes.js";

/** The flow that each of these heads at the first node pushes through: the system's curve. */
export function systemCurve(
  network: Network,
  heads: readonly number[],
): { flow: number; head: number }[] {
  let before: NetworkSolution | undefined;
  return heads.map((head) => {
    before = network.solve({ by: "head", head }, before);
    return { flow: before.sourceFlow, head };
  });
}

/**
 * The head at the first node, an elevation in m, that pushes `flow` (m³/s) through the holes; that
 * of the lowest outlet for no flow. One solve with the head as an unknown; in the rare network where
 * that does not settle (holes on the edge of shutting), a search between bounds.
 */
export function headFor(nodes: readonly NetworkNode[] | Network, flow: number): number {
  const network = nodes instanceof Network ? nodes : new Network(nodes);
  if (!(flow > 0)) return network.lowest;
  const solved = network.solve({ by: "flow", flow });
  if (solved.outcome !== "not-converged") return solved.sourceHead;
  // Flow grows as about the root of head, so its square is what the search goes by.
  return headWhere(network, (solution) => solution.sourceFlow ** 2, flow ** 2);
}

/** The head at the first node at which the hole with least pressure has `pressure`, m. */
export function headForPressure(network: Network, pressure: number): number {
  return headWhere(network, (solution) => leastPressure(network.nodes, solution), pressure);
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
 * `wanted`, NaN in a network without holes: secants between bounds that close in, every third step a halving.
 */
function headWhere(
  network: Network,
  measure: (solution: NetworkSolution) => number,
  wanted: number,
): number {
  let solution: NetworkSolution | undefined;
  const at = (head: number): number => {
    solution = network.solve({ by: "head", head }, solution);
    return measure(solution);
  };
  // Without a hole nothing grows with head, so there is none to find.
  if (!network.nodes.some((node) => node.outlet?.by === "orifice")) return NaN;
  let low = network.lowest;
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
    if (Math.abs(got - wanted) < 1e-10 * Math.abs(wanted)) return guess;
    if (got < wanted) [low, below] = [guess, got];
    else [high, above] = [guess, got];
  }
  return (low + high) / 2;
}
