/**
 * Stacks of layers as a tree that shares every common lower part: a stack is one number, putting a
 * layer on is one lookup and taking it off is one read. Cells by the ten thousand then carry their
 * layers without any array of their own.
 */
import type { CellLayer } from "./cell.js";

/** More different layers than this in one ground are refused (they key the tree's branches). */
const MOST_LAYERS = 1 << 20;
/** Numbers that may stand for what a layer was put on. */
const MOST_COVERED = 8;

export class Stacks {
  /** Every different layer met, by layer number. */
  readonly layers: CellLayer[] = [];
  /** For each stack but the empty one (0): its top layer's number. */
  readonly topOf: number[] = [-1];
  /** For each stack: the stack without its top. */
  readonly under: number[] = [-1];
  /** For each stack: how many layers it has. */
  readonly depth: number[] = [0];
  /** For each stack: what the surface was that its top was put on, as whoever put it on said. */
  readonly covered: number[] = [0];

  private readonly numbers = new Map<string, number>();
  private readonly branches = new Map<number, number>();
  private readonly listed = new Map<number, readonly CellLayer[]>();

  /** Forgets every layer and stack, so that numbers do not depend on what was dug before. */
  clear(): void {
    this.layers.length = 0;
    for (const list of [this.topOf, this.under, this.depth, this.covered]) list.length = 1;
    for (const known of [this.numbers, this.branches, this.listed]) known.clear();
  }

  /** Number of a layer; equal layers share one. */
  layerNumber(layer: CellLayer): number {
    const key = `${layer.by} ${layer.step} ${layer.structure} ${layer.material}`;
    let number = this.numbers.get(key);
    if (number === undefined) {
      number = this.layers.length;
      if (number >= MOST_LAYERS) throw new Error(`got ${number} layers, expected fewer`);
      this.layers.push(layer);
      this.numbers.set(key, number);
    }
    return number;
  }

  /** The stack with one more layer on top of a surface that is `covered` (0 to 7). */
  put(stack: number, layer: number, covered = 0): number {
    const key = (stack * MOST_LAYERS + layer) * MOST_COVERED + covered;
    let made = this.branches.get(key);
    if (made === undefined) {
      made = this.depth.length;
      this.topOf.push(layer);
      this.under.push(stack);
      this.depth.push(this.depth[stack]! + 1);
      this.covered.push(covered);
      this.branches.set(key, made);
    }
    return made;
  }

  /** The stack of these layers, from the bottom up. */
  of(layers: readonly CellLayer[]): number {
    return layers.reduce((stack, layer) => this.put(stack, this.layerNumber(layer)), 0);
  }

  /** Layers of a stack from the bottom up. */
  list(stack: number): readonly CellLayer[] {
    let layers = this.listed.get(stack);
    if (!layers) {
      const top = this.layers[this.topOf[stack]!];
      layers = top ? [...this.list(this.under[stack]!), top] : [];
      this.listed.set(stack, layers);
    }
    return layers;
  }

  /** The top layer of a stack that has one. */
  top(stack: number): CellLayer {
    return this.layers[this.topOf[stack]!]!;
  }

  /** The smallest lower part of a stack whose top is of a later step than `step`; −1 for none. */
  firstAfter(stack: number, step: number): number {
    let first = -1;
    for (let part = stack; part !== 0; part = this.under[part]!) {
      if (this.top(part).step > step) first = part;
    }
    return first;
  }
}
