/** Volumes moved, by layer, with their first moments: how much, and where its middle is. */
import type { CellLayer } from "./cell.js";
import type { CellStore } from "./store.js";
import { Sum } from "./sum.js";

/** A place in the ground, local m. */
export type Point = readonly [number, number, number];

/** Numbers kept for each layer: volume and its compensation, then the moments. */
const FIELDS = 5;

/**
 * Volumes (m³) and moments (m⁴) by layer number. The volume's sum keeps its low bits (Neumaier),
 * so that a ledger of many thousand small prisms balances to the last digits.
 */
export class Tally {
  private sums = new Float64Array(8 * FIELDS);

  constructor(private readonly store: CellStore) {}

  /** Adds a volume of a layer and its moments about the local origin. */
  add(layer: number, volume: number, mx: number, my: number, mz: number): void {
    const k = layer * FIELDS;
    if (k >= this.sums.length) this.grow(k);
    const { sums } = this;
    const total = sums[k]!;
    const next = total + volume;
    sums[k + 1] =
      sums[k + 1]! +
      (Math.abs(total) >= Math.abs(volume) ? total - next + volume : volume - next + total);
    sums[k] = next;
    sums[k + 2] = sums[k + 2]! + mx;
    sums[k + 3] = sums[k + 3]! + my;
    sums[k + 4] = sums[k + 4]! + mz;
  }

  private grow(k: number): void {
    const grown = new Float64Array(2 * (k + FIELDS));
    grown.set(this.sums);
    this.sums = grown;
  }

  /**
   * Adds the prism of a cell between two of its rows (where they start in the store's values).
   * Exact: volume and moments of linear heights over each triangle of a fan.
   */
  addPrism(layer: number, cell: number, bottom: number, top: number): void {
    const { store } = this;
    const { values } = store;
    const corners = store.cornersOf(cell);
    const x = store.row(cell, 0);
    const y = x + corners;
    const x0 = values[x]!;
    const y0 = values[y]!;
    const d0 = values[top]! - values[bottom]!;
    const m0 = values[top]! + values[bottom]!;
    let volume = 0;
    let mx = 0;
    let my = 0;
    let mz = 0;
    for (let i = 1; i + 1 < corners; i++) {
      const x1 = values[x + i]!;
      const y1 = values[y + i]!;
      const x2 = values[x + i + 1]!;
      const y2 = values[y + i + 1]!;
      const d1 = values[top + i]! - values[bottom + i]!;
      const m1 = values[top + i]! + values[bottom + i]!;
      const d2 = values[top + i + 1]! - values[bottom + i + 1]!;
      const m2 = values[top + i + 1]! + values[bottom + i + 1]!;
      const twice = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
      const sum = d0 + d1 + d2;
      volume += twice * sum;
      mx += twice * ((x0 + x1 + x2) * sum + x0 * d0 + x1 * d1 + x2 * d2);
      my += twice * ((y0 + y1 + y2) * sum + y0 * d0 + y1 * d1 + y2 * d2);
      mz += twice * ((m0 + m1 + m2) * sum + m0 * d0 + m1 * d1 + m2 * d2);
    }
    this.add(layer, volume / 6, mx / 24, my / 24, mz / 48);
  }

  /** Volume of every layer together, m³. */
  get volume(): number {
    const sum = new Sum();
    for (let k = 0; k < this.sums.length; k += FIELDS) {
      sum.add(this.sums[k]!);
      sum.add(this.sums[k + 1]!);
    }
    return sum.value;
  }

  /** Volumes by material id, m³, of some layers, leaving out what is nothing but rounding. */
  record(of: (layer: CellLayer) => boolean = () => true): Record<string, number> {
    const sums = new Map<string, Sum>();
    this.store.stacks.layers.forEach((layer, number) => {
      const k = number * FIELDS;
      if (k >= this.sums.length || this.sums[k] === 0 || !of(layer)) return;
      const sum = sums.get(layer.material) ?? new Sum();
      sum.add(this.sums[k]!);
      sum.add(this.sums[k + 1]!);
      sums.set(layer.material, sum);
    });
    const least = this.nothing;
    const out: Record<string, number> = {};
    for (const [material, sum] of sums) if (sum.value > least) out[material] = sum.value;
    return out;
  }

  /** A volume no greater than this is rounding: 1e-18 of the cube of the site's size. */
  private get nothing(): number {
    return 1e-18 * (1e12 * this.store.rounding) ** 3;
  }

  /** Centre of mass of it all as if of one density, local m; null when there is nothing. */
  centre(): Point | null {
    const { volume } = this;
    if (volume <= this.nothing) return null;
    let [x, y, z] = [0, 0, 0];
    for (let k = 0; k < this.sums.length; k += FIELDS) {
      x += this.sums[k + 2]!;
      y += this.sums[k + 3]!;
      z += this.sums[k + 4]!;
    }
    return [x / volume, y / volume, z / volume];
  }
}
