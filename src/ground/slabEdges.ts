/** Outlines of a layer that was cut into slabs: slabs side by side are joined. */

/** Metres along the line from its start, and elevation (local m here). */
export type SectionPlace = readonly [station: number, elevation: number];

/** Elevations nearer than this are one, and stretches shorter than this are none, m. */
export const SAME = 1e-9;

/** A four-sided piece of a layer between two stations, given by their numbers. */
export interface Slab {
  from: number;
  to: number;
  low: readonly [number, number];
  high: readonly [number, number];
}

/** Edges of slabs between nodes (a station and one of the elevations there), the slab at left. */
export class SlabEdges {
  /** Per station the elevations of corners there, ascending once sorted. */
  private readonly heights: number[][];
  /** Per station the upright sides of slabs: to the station (+1) and from it (−1). */
  private readonly uprights: { low: number; high: number; way: 1 | -1 }[][];
  private readonly leaving = new Map<number, number[]>();
  private sorted = false;

  constructor(private readonly stations: readonly number[]) {
    this.heights = stations.map(() => []);
    this.uprights = stations.map(() => []);
  }

  note({ from, to, low, high }: Slab): void {
    this.heights[from]!.push(low[0], high[0]);
    this.heights[to]!.push(low[1], high[1]);
  }

  addTopAndBottom({ from, to, low, high }: Slab): void {
    if (!this.sorted) this.sortHeights();
    const corners = [
      this.node(from, low[0]),
      this.node(to, low[1]),
      this.node(to, high[1]),
      this.node(from, high[0]),
    ] as const;
    this.addEdge(corners[0], corners[1]);
    this.addEdge(corners[2], corners[3]);
    this.uprights[to]!.push({ low: corners[1], high: corners[2], way: 1 });
    this.uprights[from]!.push({ low: corners[0], high: corners[3], way: -1 });
  }

  /** Upright sides, less what the slabs to both sides of a station share. */
  addUprights(): void {
    for (const sides of this.uprights) {
      const nodes = [...new Set(sides.flatMap(({ low, high }) => [low, high]))].sort(
        (a, b) => a - b,
      );
      for (let i = 1; i < nodes.length; i++) {
        const [low, high] = [nodes[i - 1]!, nodes[i]!];
        const covering = sides.filter((side) => side.low <= low && side.high >= high);
        const way = covering.reduce((sum, side) => sum + side.way, 0);
        if (way > 0) this.addEdge(low, high);
        if (way < 0) this.addEdge(high, low);
      }
    }
  }

  /** The edges as closed rings; where rings touch at a node, they stay apart. */
  rings(): SectionPlace[][] {
    const out: SectionPlace[][] = [];
    for (const [start, ends] of this.leaving) {
      while (ends.length > 0) {
        const ring: number[] = [start];
        let before = start;
        let at = ends.pop()!;
        while (at !== start || !this.closes(before, at, ring)) {
          ring.push(at);
          const next = this.takeNext(before, at);
          before = at;
          at = next;
        }
        out.push(...simpleRings(ring.map((node) => this.place(node))));
      }
    }
    return out;
  }

  /** Back at its start a ring closes, unless a tighter way on is still there. */
  private closes(before: number, at: number, ring: readonly number[]): boolean {
    const ends = this.leaving.get(at)!;
    if (ends.length === 0) return true;
    const best = this.tightest(before, at, [...ends, ring[1] ?? before]);
    return best === ends.length;
  }

  private takeNext(before: number, at: number): number {
    const ends = this.leaving.get(at);
    if (!ends || ends.length === 0) {
      throw new Error(`got an open outline at station ${this.place(at)[0]}, expected a closed one`);
    }
    return ends.splice(this.tightest(before, at, ends), 1)[0]!;
  }

  /** Index of the way on that keeps the least of the layer on the left. */
  private tightest(before: number, at: number, ends: readonly number[]): number {
    if (ends.length === 1) return 0;
    const [x, y] = this.place(at);
    const [bx, by] = this.place(before);
    const back = Math.atan2(by - y, bx - x);
    let best = 0;
    let least = Infinity;
    ends.forEach((end, i) => {
      const [ex, ey] = this.place(end);
      // Clockwise from the way back.
      const turn = (back - Math.atan2(ey - y, ex - x) + 4 * Math.PI) % (2 * Math.PI);
      const angle = turn < 1e-12 ? 2 * Math.PI : turn;
      if (angle < least) [best, least] = [i, angle];
    });
    return best;
  }

  private addEdge(from: number, to: number): void {
    if (from === to) return;
    // There and back again is no edge.
    const back = this.leaving.get(to) ?? [];
    const known = back.indexOf(from);
    if (known >= 0) {
      back.splice(known, 1);
      return;
    }
    const ends = this.leaving.get(from);
    if (ends) ends.push(to);
    else this.leaving.set(from, [to]);
  }

  private sortHeights(): void {
    this.sorted = true;
    this.heights.forEach((all, station) => {
      all.sort((a, b) => a - b);
      this.heights[station] = all.filter((z, i) => i === 0 || z - all[i - 1]! > SAME);
    });
  }

  /** One number for a station and the elevation there that is nearest to a given one. */
  private node(station: number, height: number): number {
    const heights = this.heights[station]!;
    let [low, high] = [0, heights.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (heights[middle]! <= height) low = middle;
      else high = middle - 1;
    }
    return station * MOST_HEIGHTS + low;
  }

  private place(node: number): SectionPlace {
    const station = Math.floor(node / MOST_HEIGHTS);
    return [this.stations[station]!, this.heights[station]![node % MOST_HEIGHTS]!];
  }
}

/** No station has more elevations than this. */
const MOST_HEIGHTS = 2 ** 20;

/** A ring without corners that lie straight between their neighbours; none if nothing is left. */
function simpleRings(ring: readonly SectionPlace[]): SectionPlace[][] {
  const out: SectionPlace[] = [];
  const count = ring.length;
  ring.forEach((place, i) => {
    const before = out[out.length - 1] ?? ring[count - 1]!;
    if (!isStraight(before, place, ring[(i + 1) % count]!)) out.push(place);
  });
  return out.length >= 3 ? [out] : [];
}

/** True when the middle one of three places lies straight between the others. */
export function isStraight(a: SectionPlace, b: SectionPlace, c: SectionPlace): boolean {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [c[0] - b[0], c[1] - b[1]];
  const length = Math.hypot(c[0] - a[0], c[1] - a[1]);
  return Math.abs(ux * vy - uy * vx) <= 1e-10 * length && ux * vx + uy * vy > 0;
}
