/** What stands or lies on the line of the erosion barrier. Plan, m. */
import { rectangle, type Estimate } from "../../estimate/index.js";
import type { PlanPoint } from "../../site/index.js";
import { words } from "../../words/index.js";
import { crossingsInPlan } from "../sections/planCrossings.js";
import type { Stood } from "./drawMachines.js";
import { isWithin } from "./seats.js";

type Ring = readonly (readonly [number, number])[];
type Barrier = readonly (readonly [number, number, number])[];

/** Names of the diggers, crane stands and heaps that a barrier runs through, as they stand on the plan. */
export function onBarrier(
  { land, works }: Pick<Estimate, "land" | "works">,
  { diggers, cranes }: Stood,
): string[] {
  const texts = words.sheetsPlan.rules;
  const places: { name: string; rings: readonly Ring[] }[] = [
    ...cranes.map(({ at, stand, crane }) => ({
      name: texts.craneStand(stand.name),
      rings: [squareAbout(at, crane.outriggers ?? 0)],
    })),
    ...diggers.map(({ at, order, digger }) => ({
      name: texts.diggerAt(order),
      rings: [squareAbout(at, 2 * digger.tailSwing)],
    })),
    ...works.flatMap(({ name, heap }) =>
      heap === undefined || heap.volume <= 0 ? [] : [{ name, rings: heap.toe }],
    ),
  ];
  return places
    .filter(({ rings }) => land.barriers.some((line) => rings.some((ring) => meets(line, ring))))
    .map(({ name }) => name);
}

function squareAbout(at: PlanPoint, side: number): Ring {
  return side > 0 ? rectangle(at, 0, side, side) : [];
}

function meets(barrier: Barrier, ring: Ring): boolean {
  if (ring.length < 3) return false;
  const line = barrier.map(([x, y]): PlanPoint => [x, y]);
  const crossings = crossingsInPlan(line, [...ring, ring[0]!]);
  return crossings.length > 0 || line.some((place) => isWithin(ring, place));
}
