/** Which triangles lie wholly, and which partly, in a region. */
import { BLOCK_SIZE } from "./blocks.js";
import type { CellStore } from "./store.js";

/** Where a region's cells are looked for. */
export interface CoverSource {
  store: CellStore;
  /** Blocks with triangles that may hold cells of the region, and which those are, a bit each. */
  blocks: readonly { number: number; chains: number; marked: number }[];
}

/** A bit for each triangle, by block; blocks are numbered in slots as the source lists them. */
export class Cover {
  readonly whole: Int32Array;
  readonly partly: Int32Array;
  /** From the lowest of the blocks to the highest: one more than its slot, 0 for none. */
  private readonly slots: Int32Array;
  private readonly lowest: number;

  constructor({ store, blocks }: CoverSource, within: (cell: number) => boolean) {
    this.whole = new Int32Array(blocks.length);
    this.partly = new Int32Array(blocks.length);
    let lowest = blocks[0]?.number ?? 0;
    let highest = lowest - 1;
    for (const { number } of blocks) {
      if (number < lowest) lowest = number;
      if (number > highest) highest = number;
    }
    this.lowest = lowest;
    this.slots = new Int32Array(highest + 1 - this.lowest);
    for (let slot = 0; slot < blocks.length; slot++) {
      const { number, chains, marked } = blocks[slot]!;
      this.slots[number - this.lowest] = slot + 1;
      this.coverBlock(slot, store, chains, marked, within);
    }
  }

  private coverBlock(
    slot: number,
    store: CellStore,
    chains: number,
    marked: number,
    within: (cell: number) => boolean,
  ): void {
    for (let k = 0; k < BLOCK_SIZE; k++) {
      if ((marked & (1 << k)) === 0) continue;
      let some = false;
      let all = true;
      for (let cell = store.chains[chains + k]!; cell >= 0; cell = store.nextOf(cell)) {
        if (within(cell)) some = true;
        else all = false;
      }
      if (!some) continue;
      const cover = all ? this.whole : this.partly;
      cover[slot] = cover[slot]! | (1 << k);
    }
  }

  /** Slot of a block, −1 when it is none of the source's. */
  slotOf(block: number): number {
    const at = block - this.lowest;
    return at >= 0 && at < this.slots.length ? this.slots[at]! - 1 : -1;
  }

  /** True when a triangle lies wholly in the region; −1 is no triangle. */
  isWhole(triangle: number): boolean {
    if (triangle < 0) return false;
    const block = (triangle / BLOCK_SIZE) | 0;
    const slot = this.slotOf(block);
    return slot >= 0 && (this.whole[slot]! & (1 << (triangle - BLOCK_SIZE * block))) !== 0;
  }
}
