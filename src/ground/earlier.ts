/** Cells as they stood before what was put in late in the job: see `LayeredGround.upTo`. */
import { FLOOR, FOUND, type CellStore } from "./store.js";

/** A stack without its late layers. */
interface Kept {
  /** Its number among the copies. */
  stack: number;
  /** Flags of the surface that comes to light; −1 where nothing is taken off. */
  surface: number;
}

/** Copies cells from one store into another, leaving out all layers later than a step. */
export class EarlierCells {
  private readonly keptOf = new Map<number, Kept>();

  constructor(
    private readonly from: CellStore,
    private readonly into: CellStore,
    private readonly step: number,
  ) {}

  /** True when a chain of cells is nothing but ground as found, once its late layers are off. */
  isFound(first: number, natural: number): boolean {
    for (let cell = first; cell >= 0; cell = this.from.nextOf(cell)) {
      const { stack, surface } = this.kept(this.from.stackOf(cell));
      if (stack !== natural || this.surfaceOf(cell, surface) !== FOUND) return false;
    }
    return true;
  }

  /**
   * A copy of a cell up to the lowest of its late layers. What lies on that goes too, whenever it
   * was put in: there is nothing yet for it to lie on.
   */
  copy(cell: number): number {
    const { from, into } = this;
    const { stack, surface } = this.kept(from.stackOf(cell));
    const corners = from.cornersOf(cell);
    const made = into.make(corners, stack, 0, this.surfaceOf(cell, surface), 0);
    const source = from.row(cell, 0);
    const size = into.surfaceRow(made) + corners - into.row(made, 0);
    into.values.set(from.values.subarray(source, source + size), into.row(made, 0));
    return made;
  }

  private surfaceOf(cell: number, uncovered: number): number {
    if (uncovered >= 0) return uncovered;
    return this.from.faceOf(cell) | (this.from.isFloor(cell) ? FLOOR : 0);
  }

  private kept(stack: number): Kept {
    let kept = this.keptOf.get(stack);
    if (!kept) {
      const { stacks } = this.from;
      const late = stacks.firstAfter(stack, this.step);
      kept =
        late < 0
          ? { stack: this.numberOf(stack), surface: -1 }
          : { stack: this.numberOf(stacks.under[late]!), surface: stacks.covered[late]! };
      this.keptOf.set(stack, kept);
    }
    return kept;
  }

  /** The number that a stack of the one store has in the other. */
  private numberOf(stack: number): number {
    if (stack === 0) return 0;
    const { stacks } = this.from;
    const layer = this.into.stacks.layerNumber(stacks.top(stack));
    return this.into.stacks.put(this.numberOf(stacks.under[stack]!), layer, stacks.covered[stack]);
  }
}
