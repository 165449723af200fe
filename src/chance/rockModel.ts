/** What the works would cut of each material if the layers lay otherwise than the probes say. */
import { dugColumns, type DigResult, type DugColumn } from "../dig/index.js";
import { thicknessAt, type BaseGround } from "../ground/index.js";
import { guessedLayers, type Scheme, type Site } from "../site/index.js";
import { DoubtField, type Doubt } from "./doubtField.js";
import { latticeUnder, type Lattice } from "./lattice.js";
import type { Random } from "./random.js";

/** Columns sampled for each work. */
const COLUMNS = 200;
/** m: default reach of one probe. Our choice, no source; a setting of the site. */
export const DEFAULT_RANGE = 20;
/** Default least deviation of a thickness, as a share of its mean. Our choice, no source. */
export const DEFAULT_SHARE = 0.3;

/** How each layer but the last may differ, from the top down; null where nothing is known of it. */
export function doubtsOf({ ground }: Site): (Doubt | null)[] {
  const range = ground.doubt?.range ?? DEFAULT_RANGE;
  const share = ground.doubt?.share ?? DEFAULT_SHARE;
  return ground.layers.slice(0, -1).map(({ name }, layer) => {
    const measured = ground.probes.filter((probe) => !guessedLayers(probe).includes(name));
    const told = measured.length > 0 ? measured : ground.probes;
    const found = told.map((probe) => probe.thickness[layer]!);
    const mean = found.reduce((sum, each) => sum + each, 0) / found.length;
    const squares = found.reduce((sum, each) => sum + (each - mean) ** 2, 0);
    const seen = found.length > 2 ? Math.sqrt(squares / (found.length - 1)) : 0;
    const sd = Math.max(seen, share * mean);
    return sd > 0 ? { sd, range } : null;
  });
}

/** A place where the doubt is asked for, local m. */
interface At {
  x: number;
  y: number;
}

/** One column with its layers, ready to be shifted. */
interface Column extends DugColumn {
  thickness: readonly number[];
  /** The four corners of the lattice about it, and their shares. */
  corners: readonly { node: number; share: number }[];
}

/** The natural ground of a dig under doubt. */
export class RockModel {
  /** For each layer but the last: its doubt at the lattice's nodes, then at `watched`. m. */
  readonly doubts: Float64Array[];
  private readonly fields: (DoubtField | null)[];
  private readonly columns: readonly Column[];
  private readonly lattice: Lattice;
  private readonly materials: readonly string[];
  /** Each of them once: two layers may be of one material. */
  private readonly distinct: readonly string[];
  private readonly asFound: Float64Array;
  /** Whether a work has columns. */
  private readonly isSampled: readonly boolean[];

  /** `watched` are further places (local m) whose doubt is drawn along with the rest. */
  constructor(
    site: Site,
    scheme: Scheme,
    private readonly base: BaseGround,
    private readonly dig: DigResult,
    watchedFor: (columns: readonly At[]) => readonly At[],
  ) {
    const dug = dugColumns(site, scheme, base, dig, COLUMNS);
    const doubts = doubtsOf(site);
    this.lattice = latticeUnder(dug, (site.ground.doubt?.range ?? DEFAULT_RANGE) / 8);
    this.columns = dug.map((column) => ({
      ...column,
      thickness: thicknessAt(base.regions, column.x, column.y),
      corners: this.lattice.cornersOf(column),
    }));
    this.materials = site.ground.layers.map((layer) => layer.material);
    this.distinct = [...new Set(this.materials)];
    this.isSampled = dig.works.map((_, work) => dug.some((column) => column.work === work));
    const places = [...this.lattice.nodes, ...watchedFor(dug)];
    this.fields = doubts.map((doubt, layer) =>
      doubt === null ? null : new DoubtField(doubt, seenIn(site, layer, base), places),
    );
    this.doubts = doubts.map(() => new Float64Array(places.length));
    this.asFound = this.volumes();
  }

  /** Where the watched places begin in each of `doubts`. */
  get firstWatched(): number {
    return this.lattice.nodes.length;
  }

  /** Draws the doubt of every layer. */
  draw(random: Random): void {
    this.fields.forEach((field, layer) => field?.draw(random, this.doubts[layer]!));
  }

  /**
   * The works with what each would cut of every material under the doubt that was drawn. The exact
   * volumes as found are changed by what the columns change; a work takes out as much as before,
   * since its hole keeps its shape.
   */
  works(): DigResult["works"] {
    const now = this.volumes();
    const { length: layers } = this.materials;
    return this.dig.works.map((work, i) => {
      if (!this.isSampled[i]) return work;
      const cut: Record<string, number> = { ...work.cut };
      for (let layer = 0; layer < layers; layer++) {
        const material = this.materials[layer]!;
        const at = i * layers + layer;
        cut[material] = (cut[material] ?? 0) + now[at]! - this.asFound[at]!;
      }
      let [wanted, got] = [0, 0];
      for (const material of this.distinct) {
        cut[material] = Math.max(0, cut[material]!);
        wanted += work.cut[material] ?? 0;
        got += cut[material];
      }
      for (const material of this.distinct) cut[material] = (cut[material]! * wanted) / (got || 1);
      return { ...work, cut };
    });
  }

  /** m³ of every layer that the columns of each work hold, under the present doubt: work by work. */
  private volumes(): Float64Array {
    const { length: layers } = this.materials;
    const volumes = new Float64Array(this.dig.works.length * layers);
    for (const column of this.columns) {
      let top = column.found;
      for (let layer = 0; layer < layers; layer++) {
        const bottom = layer === layers - 1 ? -Infinity : top - this.thickness(column, layer);
        const dug = Math.min(top, column.top) - Math.max(bottom, column.bottom);
        if (dug > 0) volumes[column.work * layers + layer]! += dug * column.area;
        if (bottom <= column.bottom) break;
        top = bottom;
      }
    }
    return volumes;
  }

  private thickness({ thickness, corners }: Column, layer: number): number {
    const doubt = this.doubts[layer]!;
    let shift = 0;
    for (const { node, share } of corners) shift += share * doubt[node]!;
    return Math.max(0, thickness[layer]! + shift);
  }
}

/**
 * What the probes say of one layer: nothing where one stopped in a layer above, nor where its depth
 * is a guess that waits to be measured.
 */
function seenIn(site: Site, layer: number, { tin }: BaseGround) {
  return site.ground.probes.flatMap((probe) => {
    const stoppedIn = site.ground.layers.findIndex(({ id }) => id === probe.stoppedIn);
    if (stoppedIn >= 0 && stoppedIn < layer) return [];
    if (guessedLayers(probe).includes(site.ground.layers[layer]!.name)) return [];
    const [x, y] = [probe.x - tin.origin[0], probe.y - tin.origin[1]];
    return [{ x, y, atLeast: stoppedIn === layer }];
  });
}
