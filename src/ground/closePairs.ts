/** Pairs of places that lie close, among places sorted along a Hilbert curve. */
import { columnsPerUnit, hilbertKey, type Frame } from "./hilbert.js";

/** About so many places share a cell when they are spread evenly. */
const PER_CELL = 2;
/** With more in one cell, or more pairs than places, there are quicker ways than pair by pair. */
const MOST_IN_CELL = 64;

/**
 * Numbers of places not further apart than `reach` (m), two for each pair, each pair once; null when
 * the places lie so thick somewhere that listing pairs is no way to go about it. `keys` are those of
 * the places along the curve over `frame`, in the order of the places, which is theirs.
 *
 * Cells are squares of 2ᵏ columns and rows of the curve; the places of one follow each other.
 */
export function closePairs(
  frame: Frame,
  { x, y }: { x: Float64Array; y: Float64Array },
  keys: Uint32Array,
  reach: number,
): number[] | null {
  const columns = columnsPerUnit(frame);
  const fine = Math.max(0, Math.floor(16 - Math.log2(Math.max(1, keys.length / PER_CELL)) / 2));
  // A cell at least twice the reach across, so that only cells next to it can hold a near place.
  const wide = Math.ceil(Math.log2(Math.max(1, 2 * reach * columns)));
  const bits = Math.max(fine, wide);
  const starts = bits > 15 ? null : cellStarts(keys, 2 * bits);
  if (!starts) return null;
  const finder = new PairFinder(x, y, reach);
  const cells = new CellGrid(frame, 16 - bits, reach);
  for (let i = 0; i < keys.length; i++) {
    const cell = keys[i]! >>> (2 * bits);
    finder.compare(i, i + 1, starts[cell + 1]!);
    if (cells.isWithin(x[i]!, y[i]!)) continue;
    for (const other of cells.around(x[i]!, y[i]!)) {
      // Each pair once: from the cell that comes first.
      if (other > cell) finder.compare(i, starts[other]!, starts[other + 1]!);
    }
    if (finder.pairs.length > 2 * keys.length) return null;
  }
  return finder.pairs;
}

class PairFinder {
  readonly pairs: number[] = [];
  private readonly most: number;

  constructor(
    private readonly x: Float64Array,
    private readonly y: Float64Array,
    reach: number,
  ) {
    this.most = reach * reach;
  }

  /** Compares a place with a run of others. */
  compare(i: number, from: number, to: number): void {
    const { x, y } = this;
    for (let j = from; j < to; j++) {
      const dx = x[j]! - x[i]!;
      const dy = y[j]! - y[i]!;
      if (dx * dx + dy * dy <= this.most) this.pairs.push(i, j);
    }
  }
}

/** A frame cut into 2ᵏ by 2ᵏ cells, numbered along the curve. */
class CellGrid {
  private readonly scale: number;
  private readonly edge: number;

  constructor(
    private readonly frame: Frame,
    private readonly bits: number,
    reach: number,
  ) {
    this.scale = columnsPerUnit(frame) / 2 ** (16 - bits);
    this.edge = reach * this.scale;
  }

  /** True when all within reach of a place lies in the place's own cell. */
  isWithin(x: number, y: number): boolean {
    const { edge } = this;
    const east = (x - this.frame.west) * this.scale;
    const north = (y - this.frame.south) * this.scale;
    const partEast = east - (east | 0);
    const partNorth = north - (north | 0);
    return partEast >= edge && partEast + edge < 1 && partNorth >= edge && partNorth + edge < 1;
  }

  /** Numbers of the cells within reach of a place. */
  around(x: number, y: number): number[] {
    const { edge, bits } = this;
    const east = (x - this.frame.west) * this.scale;
    const north = (y - this.frame.south) * this.scale;
    const last = 2 ** bits - 1;
    const [right, up] = [Math.min(last, (east + edge) | 0), Math.min(last, (north + edge) | 0)];
    const cells: number[] = [];
    for (let row = Math.max(0, Math.floor(north - edge)); row <= up; row++) {
      for (let column = Math.max(0, Math.floor(east - edge)); column <= right; column++) {
        cells.push(hilbertKey(column << (16 - bits), row << (16 - bits)) >>> (32 - 2 * bits));
      }
    }
    return cells;
  }
}

/** Number of the first place in each cell, and after the last; null if a cell is too full. */
function cellStarts(keys: Uint32Array, shift: number): Uint32Array | null {
  const cells = 2 ** (32 - shift);
  const starts = new Uint32Array(cells + 1);
  for (let i = 0; i < keys.length; i++) starts[(keys[i]! >>> shift) + 1]!++;
  for (let cell = 0; cell < cells; cell++) {
    if (starts[cell + 1]! > MOST_IN_CELL) return null;
    starts[cell + 1]! += starts[cell]!;
  }
  return starts;
}
