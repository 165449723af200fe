/** The one place that knows the library of spatial indexing (flatbush). */
import Flatbush from "flatbush";

/** A box in plan, local m: west, south, east, north. */
export type PlanBox = readonly [number, number, number, number];

/** Boxes in plan that can be searched by place. Never written after construction. */
export class BoxIndex {
  private constructor(private readonly tree: Flatbush | null) {}

  /** Indexes boxes given as four arrays of equal length, m. */
  static over(
    west: Float64Array,
    south: Float64Array,
    east: Float64Array,
    north: Float64Array,
  ): BoxIndex {
    if (west.length === 0) return new BoxIndex(null);
    const tree = new Flatbush(west.length);
    for (let i = 0; i < west.length; i++) tree.add(west[i]!, south[i]!, east[i], north[i]);
    tree.finish();
    return new BoxIndex(tree);
  }

  /** The index whose `packed` bytes these are; null is the index of no boxes. */
  static unpacked(packed: ArrayBuffer | null): BoxIndex {
    return new BoxIndex(packed ? Flatbush.from(packed) : null);
  }

  /** The index as bytes that a worker can hand over, or null when it holds no box. */
  get packed(): ArrayBuffer | null {
    return this.tree ? (this.tree.data as ArrayBuffer) : null;
  }

  /**
   * Numbers of the boxes that a box meets or touches, in no order; `wanted` may leave some out.
   */
  search([west, south, east, north]: PlanBox, wanted?: (box: number) => boolean): number[] {
    return this.tree ? this.tree.search(west, south, east, north, wanted) : [];
  }
}
