/** What works have made of the ground, to be asked for heights and struck by rays. Local metres. */
import { FACE, type GroundMesh } from "../estimate/index.js";
import { meetsBox, rayMeetsCorners, type Ray } from "./picking.js";

/** What lies on top at a place in plan. */
export interface SurfaceHit {
  z: number;
  /** Kind of face: see `FACE`. */
  face: number;
}

export interface PatchGround {
  heightAt: (x: number, y: number) => SurfaceHit | null;
  /** How far along the ray (in lengths of `along`) it is met; infinite when missed. */
  strike: (ray: Ray) => number;
  /** Plan box [west, south, east, north] of all that is dug or filled; null for nothing. */
  worked: readonly [number, number, number, number] | null;
}

/** Triangles on a grid in plan, each in every bin that its box meets. */
interface Bins {
  west: number;
  south: number;
  size: number;
  across: number;
  down: number;
  /** Start of each bin's triangles in `members`; one more than there are bins. */
  start: Uint32Array;
  members: Uint32Array;
}

/** Triangles in a row that share a box. */
const RUN = 32;
/** Numbers in a box: lowest x, y, z, then highest. */
const BOX = 6;

/** Indexes the triangles of a patch, but for the sides of the block. */
export function patchGround(mesh: GroundMesh): PatchGround {
  const runs = runBoxes(mesh);
  const bins = binTriangles(mesh, boxOver(mesh, isTop));
  return {
    heightAt: (x, y) => heightIn(bins, mesh, x, y),
    strike: (ray) => strikeRuns(runs, mesh, ray),
    worked: boxOver(mesh, (face) => face === FACE.dug || face === FACE.filled),
  };
}

function isTop(face: number): boolean {
  return face !== FACE.block;
}

function boxOver(
  { positions, faceOf }: GroundMesh,
  wanted: (face: number) => boolean,
): [number, number, number, number] | null {
  let west = Infinity;
  let south = Infinity;
  let east = -Infinity;
  let north = -Infinity;
  for (let i = 0; i < faceOf.length; i++) {
    if (!wanted(faceOf[i]!)) continue;
    const x = positions[3 * i]!;
    const y = positions[3 * i + 1]!;
    if (x < west) west = x;
    if (x > east) east = x;
    if (y < south) south = y;
    if (y > north) north = y;
  }
  return west > east ? null : [west, south, east, north];
}

function runBoxes({ positions, faceOf }: GroundMesh): Float32Array {
  const count = Math.ceil(faceOf.length / (3 * RUN));
  const boxes = new Float32Array(BOX * count);
  for (let run = 0; run < count; run++) {
    const end = Math.min(faceOf.length, 3 * RUN * (run + 1));
    for (let axis = 0; axis < 3; axis++) {
      const [low, high] = reachOf(positions, axis, 3 * RUN * run, end);
      boxes[BOX * run + axis] = low;
      boxes[BOX * run + axis + 3] = high;
    }
  }
  return boxes;
}

/** Lowest and highest of vertices from one number up to but not another, along an axis. */
function reachOf(
  positions: Float32Array,
  axis: number,
  from: number,
  end: number,
): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (let i = from; i < end; i++) {
    const at = positions[3 * i + axis]!;
    low = at < low ? at : low;
    high = at > high ? at : high;
  }
  return [low, high];
}

function strikeRuns(runs: Float32Array, { positions, faceOf }: GroundMesh, ray: Ray): number {
  let nearest = Infinity;
  const count = faceOf.length / 3;
  for (let run = 0; BOX * run < runs.length; run++) {
    const at = BOX * run;
    const low = [runs[at]!, runs[at + 1]!, runs[at + 2]!] as const;
    const high = [runs[at + 3]!, runs[at + 4]!, runs[at + 5]!] as const;
    if (!meetsBox(ray, low, high)) continue;
    const end = Math.min(count, RUN * (run + 1));
    for (let t = RUN * run; t < end; t++) {
      if (!isTop(faceOf[3 * t]!)) continue;
      const far = rayMeetsCorners(ray, positions, 9 * t);
      if (far < nearest) nearest = far;
    }
  }
  return nearest;
}

/** Bins about as many as triangles, so that each holds a few. */
function binTriangles(
  mesh: GroundMesh,
  box: readonly [number, number, number, number] | null,
): Bins {
  const count = mesh.faceOf.length / 3;
  const [west, south, east, north] = box ?? [0, 0, 1, 1];
  const size = Math.max(Math.sqrt(((east - west) * (north - south)) / Math.max(1, count)), 0.25);
  const across = Math.floor((east - west) / size) + 1;
  const down = Math.floor((north - south) / size) + 1;
  const start = new Uint32Array(across * down + 1);
  const bins = { west, south, size, across, down, start, members: new Uint32Array() };
  const spans = spansOf(bins, mesh);
  eachMember(spans, across, (bin) => {
    start[bin + 1]!++;
  });
  for (let i = 1; i < start.length; i++) start[i]! += start[i - 1]!;
  const next = start.slice();
  const members = new Uint32Array(start[across * down]!);
  eachMember(spans, across, (bin, t) => {
    members[next[bin]!++] = t;
  });
  return { ...bins, members };
}

/** Of each triangle the first and last column and row of bins that its box meets; none for a side. */
function spansOf(bins: Omit<Bins, "members">, { positions, faceOf }: GroundMesh): Int32Array {
  const { west, south, size, across, down } = bins;
  const spans = new Int32Array((4 * faceOf.length) / 3);
  for (let t = 0; 3 * t < faceOf.length; t++) {
    const at = 9 * t;
    const ax = positions[at]!;
    const bx = positions[at + 3]!;
    const cx = positions[at + 6]!;
    const ay = positions[at + 1]!;
    const by = positions[at + 4]!;
    const cy = positions[at + 7]!;
    const top = isTop(faceOf[3 * t]!);
    spans[4 * t] = Math.max(0, Math.floor((Math.min(ax, bx, cx) - west) / size));
    spans[4 * t + 1] = top
      ? Math.min(across - 1, Math.floor((Math.max(ax, bx, cx) - west) / size))
      : -1;
    spans[4 * t + 2] = Math.max(0, Math.floor((Math.min(ay, by, cy) - south) / size));
    spans[4 * t + 3] = Math.min(down - 1, Math.floor((Math.max(ay, by, cy) - south) / size));
  }
  return spans;
}

function eachMember(
  spans: Int32Array,
  across: number,
  visit: (bin: number, triangle: number) => void,
): void {
  for (let t = 0; 4 * t < spans.length; t++) {
    const first = spans[4 * t]!;
    const last = spans[4 * t + 1]!;
    const top = spans[4 * t + 3]!;
    for (let row = spans[4 * t + 2]!; row <= top; row++) {
      for (let column = first; column <= last; column++) visit(row * across + column, t);
    }
  }
}

function heightIn(bins: Bins, mesh: GroundMesh, x: number, y: number): SurfaceHit | null {
  const i = Math.floor((x - bins.west) / bins.size);
  const j = Math.floor((y - bins.south) / bins.size);
  if (i < 0 || j < 0 || i >= bins.across || j >= bins.down) return null;
  const bin = j * bins.across + i;
  let best: SurfaceHit | null = null;
  for (let m = bins.start[bin]!; m < bins.start[bin + 1]!; m++) {
    const t = bins.members[m]!;
    const z = heightOnTriangle(mesh.positions, 9 * t, x, y);
    if (z !== null && (best === null || z > best.z)) best = { z, face: mesh.faceOf[3 * t]! };
  }
  return best;
}

/** Height of the triangle's plane over (x, y); null outside it or when it stands on edge. */
function heightOnTriangle(c: Float32Array, o: number, x: number, y: number): number | null {
  const ax = c[o]!;
  const ay = c[o + 1]!;
  const az = c[o + 2]!;
  const ux = c[o + 3]! - ax;
  const uy = c[o + 4]! - ay;
  const vx = c[o + 6]! - ax;
  const vy = c[o + 7]! - ay;
  const area = ux * vy - vx * uy;
  if (Math.abs(area) < 1e-9) return null;
  const u = ((x - ax) * vy - vx * (y - ay)) / area;
  const v = (ux * (y - ay) - (x - ax) * uy) / area;
  const slack = -1e-6;
  if (u < slack || v < slack || u + v > 1 - slack) return null;
  return az + u * (c[o + 5]! - az) + v * (c[o + 8]! - az);
}
