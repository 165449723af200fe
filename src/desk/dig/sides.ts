import type { PlanPoint } from "../../site/index.js";
import { words } from "../../words/index.js";

/** One side of a hole, in the order of the file's `sides`: its name, and a word that tells it apart. */
export interface Side {
  name: string;
  aside: string;
}

/** Seen when looking along the bearing from the centre. */
export const TANK_SIDES: readonly Side[] = [
  words.digLeaf.front,
  words.digLeaf.right,
  words.digLeaf.back,
  words.digLeaf.left,
].map((where) => ({
  name: words.digLeaf.wall(where),
  aside: words.digLeaf.runRise,
}));

/** Seen when looking along the path. */
export const TRENCH_SIDES: readonly Side[] = [words.digLeaf.left, words.digLeaf.right].map(
  (where) => ({
    name: words.digLeaf.wall(where),
    aside: words.digLeaf.runRise,
  }),
);

const WINDS = [
  words.digLeaf.north,
  words.digLeaf.northEast,
  words.digLeaf.east,
  words.digLeaf.southEast,
  words.digLeaf.south,
  words.digLeaf.southWest,
  words.digLeaf.west,
  words.digLeaf.northWest,
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
    return { name: words.digLeaf.wall(WINDS[wind]!), aside: `${i + 1}–${next + 1}` };
  });
}
