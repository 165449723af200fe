/** What is left of a straight line when stretches of it are taken away. */
import type { Segments } from "./segments.js";

/** Stretches of one line, as shares of its length from its start. */
export class Stretches {
  count = 0;
  private readonly from: number[] = [];
  private readonly to: number[] = [];

  /** Begins a new line, of which nothing is left yet. */
  clear(): void {
    this.count = 0;
  }

  /** Adds a stretch. */
  add(from: number, to: number): void {
    this.from[this.count] = from;
    this.to[this.count] = to;
    this.count++;
  }

  /** Takes away what lies between two shares. */
  remove(low: number, high: number): void {
    const { from, to } = this;
    // What is put at the end, or brought from there, has been looked at or lies clear of the two.
    for (let i = this.count - 1; i >= 0; i--) {
      const start = from[i]!;
      const end = to[i]!;
      if (high <= start || low >= end) continue;
      if (low > start) {
        to[i] = low;
        if (high < end) this.add(high, end);
      } else if (high < end) from[i] = high;
      else {
        this.count--;
        from[i] = from[this.count]!;
        to[i] = to[this.count]!;
      }
    }
  }

  /** Adds to `into` the stretches longer than `near`, m, of the line from (px, py) to (qx, qy). */
  addTo(into: Segments, px: number, py: number, qx: number, qy: number, near: number): void {
    const dx = qx - px;
    const dy = qy - py;
    const length = Math.sqrt(dx * dx + dy * dy);
    for (let i = 0; i < this.count; i++) {
      const from = this.from[i]!;
      const to = this.to[i]!;
      if ((to - from) * length <= near) continue;
      // A whole line keeps its own ends to the last bit.
      const ax = from === 0 ? px : px + from * dx;
      const ay = from === 0 ? py : py + from * dy;
      const bx = to === 1 ? qx : px + to * dx;
      const by = to === 1 ? qy : py + to * dy;
      into.add(ax, ay, bx, by);
    }
  }
}
