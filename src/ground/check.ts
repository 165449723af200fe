/** The one checker of the layered ground, used by every test that works on it. */
import { areaOf, integrate, minus, type Cell } from "./cell.js";
import type { LayeredGround } from "./layered.js";
import { corners } from "./tin.js";

/** Sum of each material's volume above a common datum, for balancing a ledger. */
export interface Standing {
  /** m³ by material; the bottom layer is measured from `datum` (m local). */
  volumes: Record<string, number>;
}

/**
 * Checks that the touched cells tile their triangles exactly and that their layers never cross,
 * and returns what stands there above `datum`, by material, beside what stood there as found.
 * Throws with got and expected when the ground is broken.
 */
export function checkGround(
  ground: LayeredGround,
  datum: number,
): { now: Standing; found: Standing } {
  const now: Record<string, number> = {};
  const found: Record<string, number> = {};
  for (const triangle of ground.touchedTriangles()) {
    const cells = ground.cellsOf(triangle);
    checkTiling(ground, triangle, cells);
    for (const cell of cells) {
      checkLayers(cell);
      addStanding(now, cell, datum);
    }
    for (const cell of ground.base.cellsOf(triangle)) addStanding(found, cell, datum);
  }
  return { now: { volumes: now }, found: { volumes: found } };
}

function checkTiling(ground: LayeredGround, triangle: number, cells: readonly Cell[]): void {
  const { tin } = ground.base;
  const [a, b, c] = corners(tin, triangle);
  const whole =
    ((tin.x[b]! - tin.x[a]!) * (tin.y[c]! - tin.y[a]!) -
      (tin.x[c]! - tin.x[a]!) * (tin.y[b]! - tin.y[a]!)) /
    2;
  const area = cells.reduce((sum, cell) => sum + areaOf(cell), 0);
  if (Math.abs(area - whole) > 1e-9 * (1 + whole)) {
    throw new Error(`cells of triangle ${triangle} cover ${area} m², expected ${whole} m²`);
  }
}

function checkLayers(cell: Cell): void {
  if (cell.tops.length !== cell.layers.length) {
    throw new Error(`cell has ${cell.tops.length} tops, expected ${cell.layers.length}`);
  }
  for (let i = 1; i < cell.tops.length; i++) {
    const thickness = minus(cell.tops[i]!, cell.tops[i - 1]!);
    const least = Math.min(...thickness);
    if (least < -1e-8) throw new Error(`layer ${i} is ${least} m thick, expected at least 0`);
  }
  if (areaOf(cell) < -1e-12) throw new Error(`cell area is ${areaOf(cell)}, expected at least 0`);
}

function addStanding(into: Record<string, number>, cell: Cell, datum: number): void {
  let bottom: readonly number[] = cell.x.map(() => datum);
  cell.layers.forEach((layer, i) => {
    const key = layer.structure ? "structure" : layer.material;
    into[key] = (into[key] ?? 0) + integrate(cell, minus(cell.tops[i]!, bottom));
    bottom = cell.tops[i]!;
  });
}
