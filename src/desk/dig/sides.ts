import type { PlanPoint } from "../../site/index.js";

/** One side of a hole, in the order of the file's `sides`: its name, and a word that tells it apart. */
export interface Side {
  name: string;
  aside: string;
}

/** Seen when looking along the bearing from the centre. */
export const TANK_SIDES: readonly Side[] = ["Front", "Right", "Back", "Left"].map((where) => ({
  name: `${where} wall`,
  aside: "run : rise",
}));

/** Seen when looking along the path. */
export const TRENCH_SIDES: readonly Side[] = ["Left", "Right"].map((where) => ({
  name: `${where} wall`,
  aside: "run : rise",
}));

const WINDS = [
  "North",
  "North-east",
  "East",
  "South-east",
  "South",
  "South-west",
  "West",
  "North-west",
] as const;

/** Twice the area of an outline, positive when its corners run counter-clockwise. */
function turning(outline: readonly PlanPoint[]): number {
  const [ox, oy] = outline[0] ?? [0, 0];
  return outline.reduce((sum, [x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length]!;
    return sum + (x - ox) * (ny - oy) - (nx - ox) * (y - oy);
  }, 0);
}

/** The sides of a pad by the way that each lies, with the corners that it runs between. */
export function padSides(outline: readonly PlanPoint[]): Side[] {
  const outwards = turning(outline) > 0 ? 1 : -1;
  return outline.map(([x, y], i) => {
    const next = (i + 1) % outline.length;
    const [nx, ny] = outline[next]!;
    const bearing = Math.atan2(outwards * (ny - y), outwards * (x - nx));
    const wind = (Math.round(bearing / (Math.PI / 4)) + WINDS.length) % WINDS.length;
    return { name: `${WINDS[wind]!} wall`, aside: `${i + 1}–${next + 1}` };
  });
}
