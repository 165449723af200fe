/** Finds places near a place, while places are being added. */
import type { Frame } from "./hilbert.js";

/** Cells of the grid are this many reaches wide, so that a look-up seldom needs a second cell. */
const REACHES = 16;

/** No more columns or rows than this, so that they count in whole 32-bit numbers. */
const MOST_COLUMNS = 2 ** 30;

/**
 * Numbered places in cells a few times `reach` wide, by hash. Time and memory depend on their
 * number alone, not on how they are spread, so long as they are further apart than `reach`.
 */
export class PlaceGrid {
  private readonly heads: Int32Array;
  private readonly mask: number;
  private readonly scale: number;
  private next: Int32Array;

  /**
   * `x` and `y` (m, inside `frame`) are read by number and may grow; `count` is about how many
   * places will come. `reach` (m) must be above zero.
   */
  constructor(
    private readonly x: ArrayLike<number>,
    private readonly y: ArrayLike<number>,
    private readonly frame: Frame,
    private readonly reach: number,
    count: number,
  ) {
    const bits = Math.min(26, Math.max(4, Math.ceil(Math.log2(count + 1))));
    this.heads = new Int32Array(1 << bits).fill(-1);
    this.mask = this.heads.length - 1;
    this.next = new Int32Array(Math.max(16, count));
    this.scale = 1 / Math.max(REACHES * reach, frame.size / MOST_COLUMNS);
  }

  /** Adds the place with a number that is not in the grid yet. */
  add(place: number): void {
    if (place >= this.next.length) {
      const longer = new Int32Array(Math.max(2 * this.next.length, place + 1));
      longer.set(this.next);
      this.next = longer;
    }
    const column = ((this.x[place]! - this.frame.west) * this.scale) | 0;
    const row = ((this.y[place]! - this.frame.south) * this.scale) | 0;
    const slot = slotOf(column, row) & this.mask;
    this.next[place] = this.heads[slot]!;
    this.heads[slot] = place;
  }

  /** The lowest number of a place within reach of x, y (m, inside the frame), or -1. */
  near(x: number, y: number): number {
    const { scale, reach } = this;
    const [fromWest, fromSouth] = [x - this.frame.west, y - this.frame.south];
    const west = ((fromWest - reach) * scale) | 0;
    const east = ((fromWest + reach) * scale) | 0;
    const south = ((fromSouth - reach) * scale) | 0;
    const north = ((fromSouth + reach) * scale) | 0;
    let found = this.nearInCell(west, south, x, y);
    if (west === east && south === north) return found;
    for (let column = west; column <= east; column++) {
      for (let row = south; row <= north; row++) {
        const place = this.nearInCell(column, row, x, y);
        if (place >= 0 && (found < 0 || place < found)) found = place;
      }
    }
    return found;
  }

  private nearInCell(column: number, row: number, x: number, y: number): number {
    const most = this.reach * this.reach;
    let found = -1;
    let place = this.heads[slotOf(column, row) & this.mask]!;
    while (place >= 0) {
      const dx = this.x[place]! - x;
      const dy = this.y[place]! - y;
      if (dx * dx + dy * dy <= most && (found < 0 || place < found)) found = place;
      place = this.next[place]!;
    }
    return found;
  }
}

/** Spreads neighbouring cells over a table, by odd multipliers (Knuth's multiplicative hashing). */
function slotOf(column: number, row: number): number {
  const mixed = Math.imul(column, 0x9e3779b1) ^ Math.imul(row, 0x85ebca77);
  return mixed ^ (mixed >>> 15);
}
