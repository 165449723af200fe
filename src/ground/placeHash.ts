/** Numbers for places in plan, the same for places that lie together. */

/** Squares of the hash are this many times the distance within which places are one. */
const SQUARE = 1024;

/**
 * Gives places numbers, 0 upwards; one that lies within `near` (m, in x and in y) of an earlier one
 * has that one's. Places are found by squares of a grid, so that nothing need be sorted.
 */
export class PlaceHash {
  count = 0;
  readonly x: Float64Array;
  readonly y: Float64Array;
  private readonly first: Int32Array;
  private readonly next: Int32Array;
  private readonly square: number;

  /** `most`: no more places than this will be asked for. */
  constructor(
    most: number,
    private readonly near: number,
  ) {
    this.x = new Float64Array(most);
    this.y = new Float64Array(most);
    this.next = new Int32Array(most);
    this.first = new Int32Array(2 ** Math.ceil(Math.log2(2 * most + 2))).fill(-1);
    this.square = SQUARE * near;
  }

  /** The number of a place, local m. */
  numberOf(x: number, y: number): number {
    const { near, square } = this;
    const east = Math.floor((x + near) / square);
    const north = Math.floor((y + near) / square);
    // Nearly always the one square that the place itself lies in.
    for (let i = Math.floor((x - near) / square); i <= east; i++) {
      for (let j = Math.floor((y - near) / square); j <= north; j++) {
        const known = this.find(this.bucket(i, j), x, y);
        if (known >= 0) return known;
      }
    }
    return this.put(x, y);
  }

  private find(bucket: number, x: number, y: number): number {
    for (let n = this.first[bucket]!; n >= 0; n = this.next[n]!) {
      if (Math.abs(this.x[n]! - x) <= this.near && Math.abs(this.y[n]! - y) <= this.near) return n;
    }
    return -1;
  }

  private put(x: number, y: number): number {
    const n = this.count++;
    const bucket = this.bucket(Math.floor(x / this.square), Math.floor(y / this.square));
    this.x[n] = x;
    this.y[n] = y;
    this.next[n] = this.first[bucket]!;
    this.first[bucket] = n;
    return n;
  }

  private bucket(i: number, j: number): number {
    const mixed = Math.imul(i, 73856093) ^ Math.imul(j, 19349663);
    return (mixed ^ (mixed >>> 15)) & (this.first.length - 1);
  }
}
