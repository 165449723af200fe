/** A pump with 200 holes on its laterals: one solve of the network. */
import {
  isCurveProblem,
  Network,
  pumpCurve,
  type NetworkNode,
} from "../../src/hydraulics/index.js";
import { median, type Row } from "./timing.js";

const LATERALS = 8;
const HOLES = 25;

function nodesOf(): NetworkNode[] {
  const law = { by: "hazen-williams", c: 150 } as const;
  const nodes: NetworkNode[] = [
    { id: "pump", parent: -1, elevation: 0 },
    { id: "main", parent: 0, elevation: 4, link: { inside: 0.0525, length: 40, law, k: 6 } },
  ];
  for (let lateral = 0; lateral < LATERALS; lateral += 1) {
    let at = 1;
    for (let hole = 0; hole < HOLES; hole += 1) {
      nodes.push({
        id: `hole ${lateral} ${hole}`,
        parent: at,
        elevation: 4,
        link: { inside: 0.035, length: 0.75, law, k: 0 },
        outlet: { by: "orifice", diameter: 0.0047625, coefficient: 0.61 },
      });
      at = nodes.length - 1;
    }
  }
  return nodes;
}

/** Made ready and solved anew each time, pump and all. */
export function solveOf200(): Row {
  const curve = pumpCurve([
    { flow: 0, head: 14 },
    { flow: 0.003, head: 11 },
    { flow: 0.007, head: 4 },
  ]);
  if (isCurveProblem(curve)) throw new Error(curve.text);
  const nodes = nodesOf();
  const median_ms = median(200, 40, () => {
    const solved = new Network(nodes).solve({ by: "pump", water: 0, curve });
    if (solved.outcome !== "solved") throw new Error(`network-200: got ${solved.outcome}`);
  });
  return { name: "network-200", median_ms };
}
