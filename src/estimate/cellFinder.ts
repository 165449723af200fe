/** Cells of a dug ground, each read once: for meshing, which asks for every cell's neighbours. */
import { cellAt, surfaceOf, type Cell, type LayeredGround } from "../ground/index.js";
import type { Vector } from "./meshBuilder.js";
import { flatNormal } from "./vectors.js";

export class CellFinder {
  private readonly known = new Map<number, readonly Cell[]>();
  private readonly slopes = new Map<Cell, Vector>();

  constructor(readonly ground: LayeredGround) {}

  /** The cells of a triangle; the same objects each time. */
  cellsOf(triangle: number): readonly Cell[] {
    let cells = this.known.get(triangle);
    if (!cells) this.known.set(triangle, (cells = this.ground.cellsOf(triangle)));
    return cells;
  }

  /**
   * The cell that holds a place (local m) just beyond an edge of a cell of `triangle`; null beyond
   * the survey. It is looked for in that triangle, then in its three neighbours, then anywhere.
   */
  cellBeyond(x: number, y: number, triangle: number, own: Cell): Cell | null {
    const here = this.cellsOf(triangle);
    if (here.length > 1) {
      for (const cell of here) if (cell !== own && holds(cell, x, y)) return cell;
    }
    const { twins } = this.ground.base.tin;
    for (let k = 0; k < 3; k++) {
      const twin = twins[3 * triangle + k]!;
      if (twin < 0) continue;
      for (const cell of this.cellsOf(Math.floor(twin / 3))) if (holds(cell, x, y)) return cell;
    }
    return cellAt(this.ground, x, y, triangle);
  }

  /** Unit normal of a cell's surface. */
  slopeOf(cell: Cell): Vector {
    let slope = this.slopes.get(cell);
    if (!slope) this.slopes.set(cell, (slope = flatNormal(cell.x, cell.y, surfaceOf(cell))));
    return slope;
  }
}

function holds({ x: xs, y: ys }: Cell, x: number, y: number): boolean {
  const count = xs.length;
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    const ax = xs[i]!;
    const ay = ys[i]!;
    if ((xs[j]! - ax) * (y - ay) - (ys[j]! - ay) * (x - ax) < -1e-12) return false;
  }
  return true;
}
