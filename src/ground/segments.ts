/** Directed straight lines in plan, kept as plain numbers: there may be thousands in an outline. */

/** Numbers kept for each line. */
const ENDS = 4;

/** Lines from x, y to x, y, local m; line i's ends are `ends[4 i]` to `ends[4 i + 3]`. */
export class Segments {
  count = 0;
  /** Replaced when it grows: read it again after adding. */
  ends = new Float64Array(ENDS * 64);

  /** Forgets all lines, keeping the memory. */
  clear(): void {
    this.count = 0;
  }

  /** Adds the line from (ax, ay) to (bx, by), local m. */
  add(ax: number, ay: number, bx: number, by: number): void {
    const at = ENDS * this.count++;
    if (at + ENDS > this.ends.length) {
      const grown = new Float64Array(2 * this.ends.length);
      grown.set(this.ends);
      this.ends = grown;
    }
    const { ends } = this;
    ends[at] = ax;
    ends[at + 1] = ay;
    ends[at + 2] = bx;
    ends[at + 3] = by;
  }
}
