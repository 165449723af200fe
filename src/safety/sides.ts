import type { Walls, Work } from "../site/index.js";

/** One side of a hole and the slope that it is drawn at, run per 1 of rise. */
export interface Side {
  name: string;
  run: number;
}

const TANK_SIDES = ["front", "right", "back", "left"] as const;
const TRENCH_SIDES = ["left", "right"] as const;

/**
 * The sides of a hole with walls of one plane each, whose slopes are their own where the file gives
 * them; a trench's ends only where a slope is asked for there. Undefined for walls drawn otherwise.
 */
export function sidesOf(work: Work): readonly Side[] | undefined {
  if (!("walls" in work) || work.walls.by !== "run") return undefined;
  const sides = wallSides(work, work.walls);
  return work.kind === "trench" ? [...sides, ...endsOf(work)] : sides;
}

function wallSides(work: Work, walls: Walls & { by: "run" }): Side[] {
  const own = walls.sides;
  if (own === undefined) return [{ name: "", run: walls.run }];
  return own.map((run, i) => ({ name: nameOf(work, i), run }));
}

function nameOf(work: Work, i: number): string {
  if (work.kind === "tank") return TANK_SIDES[i] ?? `side ${i + 1}`;
  if (work.kind === "trench") return TRENCH_SIDES[i] ?? `side ${i + 1}`;
  return `side ${i + 1}`;
}

function endsOf({ ends }: Work & { kind: "trench" }): Side[] {
  return [
    ...(ends?.start === undefined ? [] : [{ name: "start", run: ends.start }]),
    ...(ends?.end === undefined ? [] : [{ name: "end", run: ends.end }]),
  ];
}
