/**
 * The layered ground while it is worked on: cut down to a surface, filled up to one, and the
 * exact volume of every material moved. See DEVELOPERS.md, "The layered ground".
 */
import type { BaseGround } from "./base.js";
import {
  areaOf,
  changedCell,
  isCut,
  integrate,
  minus,
  ROUNDING,
  splitCell,
  surfaceOf,
  type CarriedCell,
  type Cell,
  type CellLayer,
  type CutCell,
} from "./cell.js";
import { Sum } from "./sum.js";
import { corners } from "./tin.js";
import { outOfReach, resolve, type Surface } from "./surface.js";

/** A box in plan, local m: west, south, east, north. */
export type Box = readonly [number, number, number, number];

/** Volumes by material, m³, summed without loss. */
export class Volumes {
  private readonly sums = new Map<string, Sum>();

  add(material: string, volume: number): void {
    let sum = this.sums.get(material);
    if (!sum) this.sums.set(material, (sum = new Sum()));
    sum.add(volume);
  }

  get(material: string): number {
    return this.sums.get(material)?.value ?? 0;
  }

  /** As a plain record, leaving out what is nothing but rounding. */
  record(): Record<string, number> {
    const out: Record<string, number> = {};
    for (const [material, sum] of this.sums) if (sum.value > 1e-12) out[material] = sum.value;
    return out;
  }
}

export class LayeredGround {
  /** Cells of the triangles that works have touched; all others are as found. */
  private readonly touched = new Map<number, readonly Cell[]>();
  /** Triangles with cells that the present work has cut. */
  private readonly marked = new Set<number>();

  /** No surface anywhere is higher, or lower, than these, m local. */
  private ceiling: number;
  private bottom: number;

  constructor(readonly base: BaseGround) {
    this.ceiling = base.tin.highest;
    this.bottom = base.tin.lowest;
  }

  /** The cells of one triangle as they now are. */
  cellsOf(triangle: number): readonly Cell[] {
    return this.touched.get(triangle) ?? this.base.cellsOf(triangle);
  }

  /** Numbers of the triangles that works have touched. */
  touchedTriangles(): number[] {
    return [...this.touched.keys()];
  }

  /** No surface lies lower than this, earlier holes that stand open included, m local. */
  get lowest(): number {
    return this.bottom;
  }

  /** Highest surface in a box, m local (an upper bound); everywhere when no box is given. */
  highestIn(box?: Box): number {
    if (!box) return this.ceiling;
    const { tin } = this.base;
    let highest = -Infinity;
    for (const triangle of tin.index.search(...box)) {
      const cells = this.touched.get(triangle);
      if (cells) {
        for (const cell of cells) highest = Math.max(highest, ...surfaceOf(cell));
      } else {
        for (const vertex of corners(tin, triangle)) highest = Math.max(highest, tin.z[vertex]!);
      }
    }
    return highest;
  }

  /**
   * Takes the ground in `box` down to `surface` wherever it stands above it. Cut cells remember
   * the surface as it was before the present work. Returns the volumes taken out, by material,
   * and the plan area, m², over which a built thing was in the way (it is left standing, with what
   * lies below it). Pass `volumes` to add to the volumes of an earlier cut.
   */
  cut(
    surface: Surface,
    box: Box,
    volumes = new Volumes(),
  ): { volumes: Volumes; structureHit: number } {
    const hit = new Sum();
    for (const triangle of this.base.tin.index.search(...box)) {
      const cells = this.cellsOf(triangle);
      if (cells.every((cell) => outOfReach(cell, surface, "cut"))) continue;
      const carving: Carving = { volumes, hit, into: [], lowest: this.bottom, changed: false };
      for (const cell of cells) cutCell(cell, surface, carving);
      if (!carving.changed) continue;
      this.bottom = carving.lowest;
      this.touched.set(triangle, carving.into);
      this.marked.add(triangle);
    }
    return { volumes, structureHit: hit.value };
  }

  /**
   * Raises the cells that the present work has cut up to a surface, but never above the ground as
   * it was before this work. `surfaceFor` gives the surface of each part of the work; null means
   * the earlier ground itself. Returns the volume put in, m³.
   */
  refill(surfaceFor: (part: number) => Surface | null, layer: CellLayer): number {
    const volume = new Sum();
    for (const triangle of this.marked) {
      const next: Cell[] = [];
      for (const cell of this.cellsOf(triangle)) {
        if (!isCut(cell)) next.push(cell);
        else refillCell(cell, surfaceFor(cell.part), layer, volume, next);
      }
      this.touched.set(triangle, next);
    }
    return volume.value;
  }

  /**
   * Raises the ground in `box` up to `surface` wherever it stands below it. Returns the volume put
   * in, and how much of that lies below the ground as it was before the present work, m³.
   */
  fill(surface: Surface, box: Box, layer: CellLayer): { volume: number; belowBefore: number } {
    const filling: Filling = { volume: new Sum(), belowBefore: new Sum(), into: [] };
    for (const triangle of this.base.tin.index.search(...box)) {
      const cells = this.cellsOf(triangle);
      if (cells.every((cell) => outOfReach(cell, surface, "fill"))) continue;
      filling.into = [];
      for (const cell of cells) this.fillCell(cell, surface, layer, filling);
      this.touched.set(triangle, filling.into);
    }
    return { volume: filling.volume.value, belowBefore: filling.belowBefore.value };
  }

  private fillCell(cell: Cell, surface: Surface, layer: CellLayer, filling: Filling): void {
    if (outOfReach(cell, surface, "fill")) {
      filling.into.push(cell);
      return;
    }
    for (const piece of resolve({ cell, carry: [] }, surface, "fill")) {
      if (typeof piece.level === "string") {
        filling.into.push(piece.cell);
        continue;
      }
      filling.volume.add(integrate(piece.cell, minus(piece.level, surfaceOf(piece.cell))));
      filling.belowBefore.add(depthBelowBefore(piece.cell, piece.level));
      this.ceiling = Math.max(this.ceiling, ...piece.level);
      filling.into.push(raised(piece.cell, piece.level, layer));
    }
  }

  /** The cells that the present work has cut. */
  *markedCells(): Generator<{ triangle: number; cell: CutCell }> {
    for (const triangle of this.marked) {
      for (const cell of this.cellsOf(triangle)) if (isCut(cell)) yield { triangle, cell };
    }
  }

  /** Ends the present work: its cells forget the ground before it. */
  finishWork(): void {
    for (const triangle of this.marked) {
      const cells = this.cellsOf(triangle);
      this.touched.set(
        triangle,
        cells.map((cell) => (cell.before ? changedCell(cell, { before: null, part: 0 }) : cell)),
      );
    }
    this.marked.clear();
  }

  /** Plan area that the present work has cut, m², and its greatest depth, m. */
  markedExtent(): { area: number; deepest: number } {
    const area = new Sum();
    let deepest = 0;
    for (const { cell } of this.markedCells()) {
      area.add(areaOf(cell));
      const depth = minus(cell.before, surfaceOf(cell));
      for (const d of depth) if (d > deepest) deepest = d;
    }
    return { area: area.value, deepest };
  }
}

/** What carving yields: volumes out, plan area of built things met, and the cells left. */
interface Carving {
  volumes: Volumes;
  hit: Sum;
  into: Cell[];
  lowest: number;
  changed: boolean;
}

/** What filling yields: volumes in, and the cells left. */
interface Filling {
  volume: Sum;
  belowBefore: Sum;
  into: Cell[];
}

function cutCell(cell: Cell, surface: Surface, carving: Carving): void {
  if (outOfReach(cell, surface, "cut")) {
    carving.into.push(cell);
    return;
  }
  for (const piece of resolve({ cell, carry: [] }, surface, "cut")) {
    if (typeof piece.level === "string") carving.into.push(piece.cell);
    else {
      carving.changed = true;
      carve(changedCell(piece.cell, { part: piece.part }), piece.level, carving);
    }
  }
}

/** Takes everything above `down` (at or below the surface all over the cell) off a cell. */
function carve(cell: Cell, down: readonly number[], carving: Carving): void {
  const before = cell.before ?? surfaceOf(cell);
  carveLayer(changedCell(cell, { before, face: "dug" }), down, carving);
}

function carveLayer(cell: Cell, down: readonly number[], carving: Carving): void {
  const last = cell.layers.length - 1;
  const layer = cell.layers[last]!;
  if (layer.structure) {
    carving.hit.add(areaOf(cell));
    carving.into.push(cell);
    return;
  }
  const top = cell.tops[last]!;
  if (last > 0) {
    const bottom = cell.tops[last - 1]!;
    const { below, above } = splitCell({ cell, carry: [down] }, minus(bottom, down));
    if (above && below) {
      carveLayer(above.cell, above.carry[0]!, carving);
      carveLayer(below.cell, below.carry[0]!, carving);
      return;
    }
    if (above) {
      // The whole layer goes, and more below it.
      carving.volumes.add(layer.material, integrate(cell, minus(top, bottom)));
      const rest = changedCell(cell, {
        layers: cell.layers.slice(0, last),
        tops: cell.tops.slice(0, last),
      });
      carveLayer(rest, down, carving);
      return;
    }
  }
  carving.volumes.add(layer.material, integrate(cell, minus(top, down)));
  for (const z of down) if (z < carving.lowest) carving.lowest = z;
  const tops = cell.tops.slice();
  tops[last] = down;
  carving.into.push(changedCell(cell, { tops }));
}

function raised(cell: Cell, up: readonly number[], layer: CellLayer): Cell {
  const layers = cell.layers.slice();
  layers.push(layer);
  const tops = cell.tops.slice();
  tops.push(up);
  return changedCell(cell, { layers, tops, face: "filled" });
}

/** Raises one cut cell to the lower of a surface and the ground before this work. */
function refillCell(
  cell: CutCell,
  surface: Surface | null,
  layer: CellLayer,
  volume: Sum,
  into: Cell[],
): void {
  const raise = (part: Cell, up: readonly number[]): void => {
    volume.add(integrate(part, minus(up, surfaceOf(part))));
    into.push(raised(part, up, layer));
  };
  // The earlier ground rides along through the splitting, as the last of the carried values.
  const raiseToBefore = ({ cell: part, carry }: CarriedCell): void => {
    const before = carry[carry.length - 1]!;
    const split = splitCell({ cell: part, carry: [before] }, minus(before, surfaceOf(part)));
    if (split.below) into.push(split.below.cell);
    if (split.above) raise(split.above.cell, split.above.carry[0]!);
  };
  const whole: CarriedCell = { cell, carry: [cell.before] };
  if (!surface) {
    raiseToBefore(whole);
    return;
  }
  for (const piece of resolve(whole, surface, "fill")) {
    if (piece.level === "below") into.push(piece.cell);
    else if (piece.level === "above") raiseToBefore(piece);
    else {
      const before = piece.carry[0]!;
      const carried: CarriedCell = { cell: piece.cell, carry: [piece.level, before] };
      const { below, above } = splitCell(carried, minus(piece.level, before));
      if (below) raise(below.cell, below.carry[0]!);
      if (above) raiseToBefore(above);
    }
  }
}

/** Volume between the surface and the lower of `up` and the ground before this work, m³. */
function depthBelowBefore(cell: Cell, up: readonly number[]): number {
  if (!cell.before) return 0;
  const carried = { cell, carry: [up, cell.before] };
  const { below, above } = splitCell(carried, minus(up, cell.before));
  let volume = 0;
  if (below) volume += integrate(below.cell, minus(below.carry[0]!, surfaceOf(below.cell)));
  if (above) volume += integrate(above.cell, minus(above.carry[1]!, surfaceOf(above.cell)));
  return Math.abs(volume) < ROUNDING ? 0 : volume;
}
