/** A Tin as plain flat arrays, so that a worker can build it and hand it over without copying. */
import type { Site } from "../site/index.js";
import type { Blocks } from "./blocks.js";
import { BoxIndex } from "./boxIndex.js";
import { tinOf, type Tin, type TinParts } from "./tin.js";

/** All of a Tin but the names of its vertices; fit for structured cloning and transfer. */
export interface PackedTin extends Omit<TinParts, "blocks"> {
  blocks: Omit<Blocks, "index"> & { index: ArrayBuffer | null };
}

/**
 * A Tin as data, and the buffers to name in the transfer list of `postMessage`. The arrays are
 * those of the Tin itself: once they are transferred it is used up.
 */
export function packTin(tin: Tin): { packed: PackedTin; transfer: ArrayBuffer[] } {
  const { origin, x, y, z, points, triangles, twins, hull, lowest, highest } = tin;
  const { rounding, tolerance } = tin;
  const blocks = { ...tin.blocks, index: tin.blocks.index.packed };
  const packed: PackedTin = {
    ...{ origin, x, y, z, points, triangles, twins, hull, blocks },
    ...{ lowest, highest, rounding, tolerance },
  };
  const { index, ...boxes } = blocks;
  const arrays = [x, y, z, points, triangles, twins, hull, ...Object.values(boxes)];
  const buffers = new Set(arrays.map((array) => array.buffer as ArrayBuffer));
  if (index) buffers.add(index);
  return { packed, transfer: [...buffers] };
}

/** The Tin that was packed. `survey` must hold the points that it was built from, in their order. */
export function unpackTin(packed: PackedTin, survey: Site["survey"]): Tin {
  const most = packed.points.reduce((greatest, point) => Math.max(greatest, point), 0);
  if (most >= survey.points.length) {
    const got = survey.points.length;
    throw new Error(`expected the survey of the Tin, more than ${most} points, got ${got}`);
  }
  const index = BoxIndex.unpacked(packed.blocks.index);
  return tinOf({ ...packed, blocks: { ...packed.blocks, index } }, survey.points);
}
