/** A square lattice of places, only as much of it as some columns need. Local m. */

interface At {
  x: number;
  y: number;
}

export interface Lattice {
  nodes: readonly At[];
  /** The corners of the square about a place, and the share that each has in a value there. */
  cornersOf: (place: At) => { node: number; share: number }[];
}

/** Most nodes of a lattice: a draw costs the square of them. */
const MOST_NODES = 200;

/** The finest lattice under some places, no finer than `spacing` m, that has few enough nodes. */
export function latticeUnder(places: readonly At[], spacing: number): Lattice {
  for (let step = spacing; ; step *= 1.25) {
    const made = latticeOf(places, step);
    if (made.nodes.length <= MOST_NODES) return made;
  }
}

function latticeOf(places: readonly At[], step: number): Lattice {
  const numbers = new Map<string, number>();
  const nodes: At[] = [];
  const nodeAt = (i: number, j: number): number => {
    const key = `${i} ${j}`;
    let node = numbers.get(key);
    if (node === undefined) {
      node = nodes.length;
      numbers.set(key, node);
      nodes.push({ x: i * step, y: j * step });
    }
    return node;
  };
  const cornersOf = ({ x, y }: At): { node: number; share: number }[] => {
    const [i, j] = [Math.floor(x / step), Math.floor(y / step)];
    const [u, v] = [x / step - i, y / step - j];
    return [
      { node: nodeAt(i, j), share: (1 - u) * (1 - v) },
      { node: nodeAt(i + 1, j), share: u * (1 - v) },
      { node: nodeAt(i, j + 1), share: (1 - u) * v },
      { node: nodeAt(i + 1, j + 1), share: u * v },
    ];
  };
  for (const place of places) cornersOf(place);
  return { nodes, cornersOf };
}
