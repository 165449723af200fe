/**
 * Thousands of random branched networks, from printed seeds: each is solved or says why not, mass
 * balances at every node, and more head, wider pipes or another order of branches do what they must.
 */
import { describe, expect, it } from "vitest";
import {
  headFor,
  isCurveProblem,
  orificeFlow,
  pumpCurve,
  solveNetwork,
  valveSettings,
  type NetworkNode,
  type NetworkSolution,
  type Source,
} from "../../src/hydraulics/index.js";
import { seeded, type Seeded } from "../fixtures/seeded.js";

const NETWORKS = 4000;
const FIRST_SEED = 20261;

function randomNodes(random: Seeded): NetworkNode[] {
  const nodes: NetworkNode[] = [{ id: "source", parent: -1, elevation: 0 }];
  const count = random.whole(1, 60);
  for (let i = 1; i <= count; i += 1) {
    const node: NetworkNode = {
      id: `${i}`,
      parent: random.whole(0, i - 1),
      elevation: random.between(0, 12) * random.next(),
    };
    if (random.next() > 0.05) node.link = randomLink(random);
    const what = random.next();
    if (what < 0.6) {
      node.outlet = { by: "orifice", diameter: random.between(0.002, 0.013), coefficient: 0.61 };
    } else if (what < 0.63) node.outlet = { by: "fixed", flow: random.between(0, 1e-4) };
    nodes.push(node);
  }
  return nodes;
}

function randomLink(random: Seeded): NonNullable<NetworkNode["link"]> {
  return {
    inside: random.between(0.02, 0.1),
    length: random.next() < 0.1 ? 0 : random.between(0, 40),
    k: random.next() < 0.5 ? 0 : random.between(0, 20),
    law:
      random.next() < 0.3
        ? { by: "darcy", roughness: random.between(0, 1e-4), viscosity: 1.3e-6 }
        : { by: "hazen-williams", c: random.between(100, 150) },
  };
}

function randomSource(random: Seeded): Source {
  if (random.next() < 0.5) return { by: "head", head: random.between(-1, 15) };
  const shutOff = random.between(3, 20);
  const curve = pumpCurve([
    { flow: 0, head: shutOff },
    { flow: 0.001, head: shutOff * random.between(0.6, 0.95) },
    { flow: 0.004, head: shutOff * random.between(0.1, 0.5) },
  ]);
  if (isCurveProblem(curve)) throw new Error(curve.text);
  return { by: "pump", water: random.between(-3, 0), curve };
}

/** The worst gap at any node between what comes in and what goes on or out, over the whole flow. */
function imbalance(nodes: readonly NetworkNode[], solved: NetworkSolution): number {
  const left = solved.flows.slice();
  nodes.forEach((node, i) => {
    left[i]! -= solved.discharge[i]!;
    if (node.parent >= 0) left[node.parent]! -= solved.flows[i]!;
  });
  return Math.max(...left.map(Math.abs)) / Math.max(solved.sourceFlow, 1e-9);
}

describe(`random networks, seeds ${FIRST_SEED} to ${FIRST_SEED + NETWORKS - 1}`, () => {
  it("all are solved or say why not, with mass and energy in balance to 1e-9", () => {
    const seen: Record<string, number> = {};
    for (let seed = FIRST_SEED; seed < FIRST_SEED + NETWORKS; seed += 1) {
      const random = seeded(seed);
      const nodes = randomNodes(random);
      const source = randomSource(random);
      const solved = solveNetwork(nodes, source);
      seen[solved.outcome] = (seen[solved.outcome] ?? 0) + 1;
      if (solved.outcome !== "solved") expect(solved.why, `seed ${seed}`).not.toBe("");
      expect(solved.outcome, `seed ${seed}: ${solved.why}`).not.toBe("not-converged");
      expect(imbalance(nodes, solved), `seed ${seed}`).toBeLessThan(1e-9);
      nodes.forEach(({ outlet }, i) => {
        if (outlet?.by !== "orifice") return;
        const asked = orificeFlow(outlet.diameter, solved.pressure[i]!, outlet.coefficient);
        expect(Math.abs(asked - solved.discharge[i]!), `seed ${seed}`).toBeLessThan(
          1e-9 * Math.max(solved.sourceFlow, 1e-3),
        );
      });
    }
    console.log("networks:", seen);
    expect(seen["solved"]).toBeGreaterThan(NETWORKS / 2);
    expect(seen["no-flow"]).toBeGreaterThan(0);
    expect(seen["off-curve"]).toBeGreaterThan(0);
  });

  it("asked for the flow that a head gives, give that head back", () => {
    let tried = 0;
    let atOnce = 0;
    for (let seed = FIRST_SEED; seed < FIRST_SEED + NETWORKS; seed += 1) {
      const random = seeded(seed);
      const nodes = randomNodes(random);
      const head = random.between(1, 15);
      const given = solveNetwork(nodes, { by: "head", head });
      if (given.outcome !== "solved" || given.discharge.every((q) => q < 1e-6)) continue;
      const fixed = nodes.some((node) => node.outlet?.by === "fixed");
      if (fixed || !nodes.some((node) => node.outlet?.by === "orifice")) continue;
      tried += 1;
      const asked = solveNetwork(nodes, { by: "flow", flow: given.sourceFlow });
      if (asked.outcome === "solved") atOnce += 1;
      const found = headFor(nodes, given.sourceFlow);
      expect(Math.abs(found - head), `seed ${seed}`).toBeLessThan(1e-5);
    }
    expect(tried).toBeGreaterThan(NETWORKS / 4);
    // The search between bounds is for the rest.
    console.log(`networks by flow: ${atOnce} of ${tried} at once`);
    expect(atOnce).toBeGreaterThan(0.98 * tried);
  });

  it("more head never gives less flow, nor a narrower pipe more", () => {
    for (let seed = FIRST_SEED; seed < FIRST_SEED + 400; seed += 1) {
      const random = seeded(seed);
      const nodes = randomNodes(random);
      const head = random.between(0, 12);
      const base = solveNetwork(nodes, { by: "head", head }).sourceFlow;
      const more = solveNetwork(nodes, { by: "head", head: head + 1 }).sourceFlow;
      expect(more, `seed ${seed}`).toBeGreaterThanOrEqual(base - 1e-12);
      const which = random.whole(1, nodes.length - 1);
      const narrow = nodes.map((node, i) =>
        i === which && node.link !== undefined
          ? { ...node, link: { ...node.link, inside: node.link.inside * 0.7 } }
          : node,
      );
      const less = solveNetwork(narrow, { by: "head", head }).sourceFlow;
      expect(less, `seed ${seed}`).toBeLessThanOrEqual(base + 1e-12);
    }
  });

  it("the order of branches does not matter", () => {
    for (let seed = FIRST_SEED; seed < FIRST_SEED + 400; seed += 1) {
      const random = seeded(seed);
      const nodes = randomNodes(random);
      const source = randomSource(random);
      const { order, again } = reordered(nodes, random);
      const one = solveNetwork(nodes, source);
      const other = solveNetwork(again, source);
      expect(Math.abs(one.sourceFlow - other.sourceFlow), `seed ${seed}`).toBeLessThan(1e-11);
      order.forEach((was, now) => {
        expect(Math.abs(one.heads[was]! - other.heads[now]!), `seed ${seed}`).toBeLessThan(1e-7);
      });
    }
  });
});

/** The same tree listed in another order, parents still first; `order[new]` is the old index. */
function reordered(
  nodes: readonly NetworkNode[],
  random: Seeded,
): { order: number[]; again: NetworkNode[] } {
  const order: number[] = [0];
  let waiting = random.shuffled(nodes.flatMap((node, i) => (node.parent === 0 ? [i] : [])));
  while (waiting.length > 0) {
    const next = waiting.pop()!;
    order.push(next);
    const below = nodes.flatMap((node, i) => (node.parent === next ? [i] : []));
    waiting = random.shuffled([...waiting, ...below]);
  }
  const place = new Map(order.map((was, now) => [was, now]));
  const again = order.map((was) => {
    const node = nodes[was]!;
    return { ...node, parent: node.parent < 0 ? -1 : place.get(node.parent)! };
  });
  return { order, again };
}

describe("valves", () => {
  it("give each branch its share, one of them fully open", () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const random = seeded(seed);
      const nodes: NetworkNode[] = [
        { id: "pump", parent: -1, elevation: 0 },
        { id: "fork", parent: 0, elevation: 2, link: randomLink(random) },
      ];
      const valves = Array.from({ length: random.whole(2, 4) }, () => {
        const node = nodes.length;
        const elevation = random.between(2, 4);
        nodes.push({
          id: `valve ${node}`,
          parent: 1,
          elevation,
          link: { ...randomLink(random), k: 3 },
        });
        for (let hole = 0; hole < 5; hole += 1) {
          nodes.push({
            id: `hole ${nodes.length}`,
            parent: node,
            elevation,
            outlet: { by: "orifice", diameter: random.between(0.004, 0.007), coefficient: 0.61 },
          });
        }
        return { node, share: random.between(0.5, 2), open: 1 };
      });
      const set = valveSettings(nodes, { by: "head", head: 12 }, valves);
      if (set === null) throw new Error(`seed ${seed}: got no settings, expected some`);
      const shares = valves.reduce((sum, valve) => sum + valve.share, 0);
      valves.forEach((valve) => {
        const got = set.solution.flows[valve.node]! / set.solution.sourceFlow;
        expect(got, `seed ${seed}`).toBeCloseTo(valve.share / shares, 5);
      });
      expect(Math.min(...set.k)).toBeCloseTo(1, 9);
    }
  });
  it("are not found where a branch cannot be reached", () => {
    const hole = { by: "orifice", diameter: 0.005, coefficient: 0.61 } as const;
    const law = { by: "hazen-williams", c: 150 } as const;
    const link = { inside: 0.04, length: 5, law, k: 1 };
    const nodes: NetworkNode[] = [
      { id: "source", parent: -1, elevation: 0 },
      { id: "low", parent: 0, elevation: 1, link, outlet: hole },
      { id: "high", parent: 0, elevation: 9, link, outlet: hole },
    ];
    const valves = [
      { node: 1, share: 1, open: 1 },
      { node: 2, share: 1, open: 1 },
    ];
    expect(valveSettings(nodes, { by: "head", head: 4 }, valves)).toBeNull();
  });
});
