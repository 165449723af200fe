/** Volumes by depth: how much lies between one depth and the next below (or above) a surface. */
import type { CellStore } from "./store.js";

/**
 * Collects columns of linear depth and tells the volume in every band of a given step, exactly.
 * The volume deeper than d is the integral of max(0, depth − d), which is linear in d wherever a
 * column is deeper than d all over: such columns cost nothing more than two sums.
 */
export class Bands {
  /** By mark k (depth k × step): volume deeper, from columns that the mark passes through. */
  private readonly crossed: number[] = [];
  /** By the last mark that lies above a column's least depth: Σ area × mean depth and Σ area. */
  private readonly volume: number[] = [];
  private readonly area: number[] = [];
  private deepest = 0;

  /** `step`: m. */
  constructor(private readonly step: number) {}

  /** Adds the column of a cell between two rows of the store's values, `bottom` and `top`. */
  add(store: CellStore, cell: number, bottom: number, top: number): void {
    const corners = store.cornersOf(cell);
    const { values } = store;
    const x = store.row(cell, 0);
    const y = x + corners;
    for (let i = 1; i + 1 < corners; i++) {
      const twice =
        (values[x + i]! - values[x]!) * (values[y + i + 1]! - values[y]!) -
        (values[x + i + 1]! - values[x]!) * (values[y + i]! - values[y]!);
      this.addTriangle(
        twice / 2,
        values[top]! - values[bottom]!,
        values[top + i]! - values[bottom + i]!,
        values[top + i + 1]! - values[bottom + i + 1]!,
      );
    }
  }

  private addTriangle(area: number, d0: number, d1: number, d2: number): void {
    const least = Math.min(d0, d1, d2);
    const most = Math.max(d0, d1, d2);
    if (most > this.deepest) this.deepest = most;
    const passed = Math.max(0, Math.floor(least / this.step));
    this.volume[passed] = (this.volume[passed] ?? 0) + (area * (d0 + d1 + d2)) / 3;
    this.area[passed] = (this.area[passed] ?? 0) + area;
    for (let k = passed + 1; k * this.step < most; k++) {
      const depth = k * this.step;
      const deeper = area * positivePart(d0 - depth, d1 - depth, d2 - depth);
      this.crossed[k] = (this.crossed[k] ?? 0) + deeper;
    }
  }

  /** The bands from the surface on, m and m³. */
  list(): { from: number; to: number; volume: number }[] {
    const { step } = this;
    const count = Math.ceil(this.deepest / step - 1e-9);
    const deeper: number[] = [];
    let [volume, area] = [0, 0];
    for (let k = count; k >= 0; k--) {
      volume += this.volume[k] ?? 0;
      area += this.area[k] ?? 0;
      deeper[k] = volume - area * k * step + (this.crossed[k] ?? 0);
    }
    return Array.from({ length: count }, (_, k) => ({
      from: k * step,
      to: (k + 1) * step,
      volume: deeper[k]! - deeper[k + 1]!,
    }));
  }
}

/** Mean over a triangle of the positive part of a linear value given at its corners. */
function positivePart(f0: number, f1: number, f2: number): number {
  const low = Math.min(f0, f1, f2);
  const high = Math.max(f0, f1, f2);
  if (low >= 0) return (f0 + f1 + f2) / 3;
  if (high <= 0) return 0;
  const middle = f0 + f1 + f2 - low - high;
  if (middle <= 0) return high ** 3 / (3 * (high - low) * (high - middle));
  return (f0 + f1 + f2) / 3 - low ** 3 / (3 * (low - middle) * (low - high));
}
