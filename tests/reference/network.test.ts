/**
 * The network against an independent solve: on a lateral and on a small tree, nested halving on the
 * far end's head, walking upstream with plain Hazen–Williams and √h, and no matrix anywhere.
 */
import { expect, it } from "vitest";
import {
  headFor,
  headForPressure,
  Network,
  solveNetwork,
  type NetworkNode,
} from "../../src/hydraulics/index.js";

const C = 150;
const COEFFICIENT = 0.61;

/** The law as published, in gpm, inches and ft per 100 ft. */
function lossOf(flow: number, inside: number, length: number): number {
  const gallons = flow / (3.785411784e-3 / 60);
  const inches = inside / 0.0254;
  return ((0.2083 * (100 / C) ** 1.852 * gallons ** 1.852) / inches ** 4.8655 / 100) * length;
}

function holeFlow(diameter: number, head: number): number {
  return head > 0 ? COEFFICIENT * (Math.PI / 4) * diameter ** 2 * Math.sqrt(2 * 9.80665 * head) : 0;
}

/** Head at the upstream end of a lateral whose last hole has this head, and its flow. */
function lateralFrom(last: number, holes: number, apart: number, inside: number, hole: number) {
  let [head, flow] = [last, 0];
  for (let i = holes; i > 0; i -= 1) {
    flow += holeFlow(hole, head);
    head += lossOf(flow, inside, apart);
  }
  return { head, flow };
}

function lateralNodes(holes: number, apart: number, inside: number, hole: number): NetworkNode[] {
  const nodes: NetworkNode[] = [{ id: "source", parent: -1, elevation: 0 }];
  for (let i = 0; i < holes; i += 1) {
    nodes.push({
      id: `hole ${i}`,
      parent: i,
      elevation: 0,
      link: { inside, length: apart, law: { by: "hazen-williams", c: C }, k: 0 },
      outlet: { by: "orifice", diameter: hole, coefficient: COEFFICIENT },
    });
  }
  return nodes;
}

for (const [holes, inside] of [
  [10, 0.035],
  [40, 0.035],
  [40, 0.02],
] as const) {
  it(`a lateral of ${holes} holes, bore ${inside} m: walked up from its far end`, () => {
    const walked = lateralFrom(0.6, holes, 0.75, inside, 0.005);
    const nodes = lateralNodes(holes, 0.75, inside, 0.005);
    const solved = solveNetwork(nodes, { by: "head", head: walked.head });
    expect(Math.abs(solved.sourceFlow / walked.flow - 1)).toBeLessThan(1e-7);
    expect(Math.abs(solved.pressure[holes]! / 0.6 - 1)).toBeLessThan(1e-7);
  });
}

it("two unlike branches from one pipe: nested halving", () => {
  const parts = [
    { elevation: 1, inside: 0.03, length: 20, hole: 0.012 },
    { elevation: 2.5, inside: 0.04, length: 8, hole: 0.015 },
  ];
  const root = 6;
  const solveFor = (low: number, high: number, rises: (x: number) => number): number => {
    for (let i = 0; i < 200; i += 1) {
      const middle = (low + high) / 2;
      if (rises(middle) < 0) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  const branch = (head: number, part: (typeof parts)[number]): number =>
    solveFor(0, 0.1, (q) => {
      const area = COEFFICIENT * (Math.PI / 4) * part.hole ** 2;
      const own = (q / area) ** 2 / (2 * 9.80665);
      return part.elevation + lossOf(q, part.inside, part.length) + own - head;
    });
  const both = (head: number): number => parts.reduce((sum, part) => sum + branch(head, part), 0);
  const fork = solveFor(3, root, (head) => head + lossOf(both(head), 0.05, 30) - root);
  const law = { by: "hazen-williams", c: C } as const;
  const nodes: NetworkNode[] = [
    { id: "source", parent: -1, elevation: 0 },
    { id: "fork", parent: 0, elevation: 1, link: { inside: 0.05, length: 30, law, k: 0 } },
    ...parts.map((part, i) => ({
      id: `${i}`,
      parent: 1,
      elevation: part.elevation,
      link: { inside: part.inside, length: part.length, law, k: 0 },
      outlet: { by: "orifice" as const, diameter: part.hole, coefficient: COEFFICIENT },
    })),
  ];
  const solved = solveNetwork(nodes, { by: "head", head: root });
  parts.forEach((part, i) => {
    expect(Math.abs(solved.discharge[i + 2]! / branch(fork, part) - 1)).toBeLessThan(1e-6);
  });
});

it("a flow that is asked for takes the head that gives it, on unlike branches and with a hole shut", () => {
  const law = { by: "hazen-williams", c: C } as const;
  const hole = { by: "orifice", diameter: 0.01, coefficient: COEFFICIENT } as const;
  const nodes: NetworkNode[] = [
    { id: "source", parent: -1, elevation: 0 },
    {
      id: "low",
      parent: 0,
      elevation: 1,
      outlet: hole,
      link: { inside: 0.03, length: 20, law, k: 3 },
    },
    {
      id: "mid",
      parent: 0,
      elevation: 2,
      outlet: hole,
      link: { inside: 0.02, length: 9, law, k: 0 },
    },
    {
      id: "high",
      parent: 1,
      elevation: 9,
      outlet: hole,
      link: { inside: 0.03, length: 5, law, k: 0 },
    },
  ];
  for (const flow of [1e-5, 2e-4, 6e-4, 2e-3]) {
    const asked = solveNetwork(nodes, { by: "flow", flow });
    const given = solveNetwork(nodes, { by: "head", head: asked.sourceHead });
    expect(asked.outcome).toBe("solved");
    expect(Math.abs(asked.sourceFlow / flow - 1)).toBeLessThan(1e-9);
    expect(Math.abs(given.sourceFlow / flow - 1)).toBeLessThan(1e-7);
  }
});

it("says when what is simply taken lies too high, and when there is no outlet", () => {
  const nodes: NetworkNode[] = [
    { id: "source", parent: -1, elevation: 0 },
    { id: "tap", parent: 0, elevation: 10, outlet: { by: "fixed", flow: 1e-4 } },
  ];
  expect(solveNetwork(nodes, { by: "head", head: 5 }).outcome).toBe("short-of-head");
  expect(solveNetwork(nodes, { by: "head", head: 11 }).outcome).toBe("solved");
  const bare = solveNetwork(nodes.slice(0, 1), { by: "head", head: 5 });
  expect(bare.outcome).toBe("no-flow");
  expect(bare.why).toContain("no outlet");
});

it("never gives an earlier answer's head for a flow that cannot be had", () => {
  const law = { by: "hazen-williams", c: C } as const;
  const tap = new Network([
    { id: "source", parent: -1, elevation: 0 },
    {
      id: "tap",
      parent: 0,
      elevation: 3,
      link: { inside: 0.04, length: 10, law, k: 0 },
      outlet: { by: "fixed", flow: 1e-3 },
    },
  ]);
  expect(tap.solve({ by: "head", head: 5 }).outcome).toBe("solved");
  expect(tap.solve({ by: "flow", flow: 2e-3 }).outcome).not.toBe("solved");
  expect(headFor(tap, 2e-3)).toBeNaN();
  expect(headForPressure(tap, 1)).toBeNaN();
});
