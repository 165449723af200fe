/** Upright faces of a mesh: layers as bands on a wall. Local metres. */
import type { Cell, Place } from "../ground/index.js";
import type { MeshBuilder, Vector } from "./meshBuilder.js";
import { crossed } from "./vectors.js";

/** Steps lower than this are not drawn, m. */
export const STEP = 1e-4;

/** Heights at the two ends of an edge. */
export interface Ends {
  start: number;
  end: number;
}

/** A cell and how values given at its corners are mixed at the two ends of an edge. */
export interface WallCell {
  cell: Cell;
  at: (values: readonly number[]) => Ends;
}

/** The layers of a cell as bands on a vertical face, from `foot` up. */
export function addBands(
  mesh: MeshBuilder,
  stretch: WallCell,
  [a, b]: readonly [Place, Place],
  foot: Ends,
  normal: Vector,
  face: number,
): void {
  let low = foot;
  stretch.cell.layers.forEach((layer, i) => {
    const top = stretch.at(stretch.cell.tops[i]!);
    const high = { start: Math.max(top.start, foot.start), end: Math.max(top.end, foot.end) };
    if (!layer.structure && (high.start - low.start > STEP || high.end - low.end > STEP)) {
      const corners: Vector[] = [
        [...a, low.start],
        [...a, high.start],
        [...b, high.end],
        [...b, low.end],
      ];
      mesh.polygon(facing(corners, normal), normal, layer.material, face);
    }
    low = high;
  });
}

/** The corners in the order that makes the face look along its normal. */
function facing(corners: readonly Vector[], normal: Vector): readonly Vector[] {
  const [a, b, c, d] = corners as [Vector, Vector, Vector, Vector];
  const first = crossed(a, b, c);
  const second = crossed(a, c, d);
  const sign =
    normal[0] * (first[0] + second[0]) +
    normal[1] * (first[1] + second[1]) +
    normal[2] * (first[2] + second[2]);
  return sign >= 0 ? corners : [...corners].reverse();
}
