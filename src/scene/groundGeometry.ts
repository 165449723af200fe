/** Ground meshes as GPU geometry. Places stay in the mesh's own frame: the group moves them. */
import { BufferAttribute, BufferGeometry, Color, DynamicDrawUsage } from "three";
import { FACE, type FoundPicture, type GroundMesh } from "../estimate/index.js";
import type { Material } from "../site/index.js";
import { toneOf } from "./materialTone.js";
import { PATTERN } from "./palette.js";

const GRASS_LOW = "#aeb382";

/** The surface as found: triangles that share their vertices, all grass. */
export function foundGeometry(found: FoundPicture): BufferGeometry {
  const count = found.positions.length / 3;
  const grass = new Color(GRASS_LOW);
  const colours = new Float32Array(3 * count);
  for (let i = 0; i < colours.length; i += 3) {
    colours[i] = grass.r;
    colours[i + 1] = grass.g;
    colours[i + 2] = grass.b;
  }
  const patterns = new Float32Array(count).fill(PATTERN.grass);
  const geometry = geometryOf(found.positions, found.normals, colours, patterns);
  geometry.setIndex(hideableIndex(found.triangles));
  return geometry;
}

/** The sides of the block as found. */
export function sideGeometry(
  found: FoundPicture,
  materials: ReadonlyMap<string, Material>,
): BufferGeometry {
  const geometry = patchGeometry(found.block, materials);
  geometry.setIndex(hideableIndex(Uint32Array.from(found.block.faceOf, (_, i) => i)));
  return geometry;
}

/**
 * Triangles that are not as found, each in the colour and pattern of its material; `depths` are those
 * of a `StagePatch`, left out where none are shown.
 */
export function patchGeometry(
  mesh: GroundMesh,
  materials: ReadonlyMap<string, Material>,
  depths: Float32Array | null = null,
): BufferGeometry {
  const count = mesh.faceOf.length;
  const tones = mesh.materials.map((id) => {
    const tone = toneOf(id, materials);
    return { colour: new Color(tone.colour), pattern: tone.pattern };
  });
  const grass = { colour: new Color(GRASS_LOW), pattern: PATTERN.grass };
  const colours = new Float32Array(count * 3);
  const patterns = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    const tone = mesh.faceOf[i] === FACE.found ? grass : tones[mesh.materialOf[i]!]!;
    colours[3 * i] = tone.colour.r;
    colours[3 * i + 1] = tone.colour.g;
    colours[3 * i + 2] = tone.colour.b;
    patterns[i] = tone.pattern;
  }
  const geometry = geometryOf(mesh.positions, mesh.normals, colours, patterns);
  if (depths !== null) geometry.setAttribute("depth", new BufferAttribute(depths, 1));
  return geometry;
}

/** The same vertices, but only the triangles whose first vertex is `kept`. */
export function partGeometry(whole: BufferGeometry, kept: (vertex: number) => boolean) {
  const part = new BufferGeometry();
  for (const [name, attribute] of Object.entries(whole.attributes)) {
    part.setAttribute(name, attribute);
  }
  const corners: number[] = [];
  const count = whole.getAttribute("position").count;
  for (let v = 0; v + 2 < count; v += 3) if (kept(v)) corners.push(v, v + 1, v + 2);
  part.setIndex(new BufferAttribute(Uint32Array.from(corners), 1));
  return part;
}

function geometryOf(
  positions: Float32Array,
  normals: Float32Array,
  colours: Float32Array,
  patterns: Float32Array,
): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(positions, 3));
  geometry.setAttribute("normal", new BufferAttribute(normals, 3));
  geometry.setAttribute("color", new BufferAttribute(colours, 3));
  geometry.setAttribute("pattern", new BufferAttribute(patterns, 1));
  return geometry;
}

/** An index with an array of its own: hiding writes in it. */
function hideableIndex(vertices: Uint32Array): BufferAttribute {
  return new BufferAttribute(vertices.slice(), 1).setUsage(DynamicDrawUsage);
}

/** Ranges nearer to each other than this (numbers of an index) are sent as one. */
const NEAR = 3 * 256;

/**
 * Hides triangles of the ground as found, and the sides of the block under them, by making them
 * points. Only what changes is written and sent to the GPU.
 */
export class HideableTriangles {
  private hidden: Uint32Array = new Uint32Array();
  private readonly isHidden: Uint8Array;

  constructor(
    private readonly top: BufferGeometry,
    private readonly side: BufferGeometry,
    private readonly found: FoundPicture,
  ) {
    this.isHidden = new Uint8Array(found.triangles.length / 3);
  }

  /** Hides these triangles and shows all others. */
  hide(triangles: Uint32Array): void {
    const { isHidden, found } = this;
    const changed: number[] = [];
    for (const t of this.hidden) isHidden[t] = 2;
    for (const t of triangles) {
      if (isHidden[t] === 0) changed.push(t);
      isHidden[t] = 1;
    }
    for (const t of this.hidden) {
      if (isHidden[t] !== 2) continue;
      isHidden[t] = 0;
      changed.push(t);
    }
    this.hidden = triangles;
    changed.sort((a, b) => a - b);
    const index = indexOf(this.top);
    const array = index.array as Uint32Array;
    for (const t of changed) {
      for (let k = 3 * t; k < 3 * t + 3; k++) {
        array[k] = isHidden[t] === 1 ? 0 : found.triangles[k]!;
      }
    }
    sendRanges(index, changed);
    if (changed.length > 0) this.hideSides();
  }

  private hideSides(): void {
    const { found, isHidden } = this;
    const index = indexOf(this.side);
    const array = index.array as Uint32Array;
    found.sideTriangles.forEach((triangle, side) => {
      const isGone = isHidden[triangle] === 1;
      for (let i = found.sides[side]!; i < found.sides[side + 1]!; i++) array[i] = isGone ? 0 : i;
    });
    index.needsUpdate = true;
  }
}

function indexOf(geometry: BufferGeometry): BufferAttribute {
  const { index } = geometry;
  if (index === null) throw new Error("got a geometry without an index, expected one");
  return index;
}

/** Sends the triangles (sorted) of an index to the GPU again, in a few ranges. */
function sendRanges(index: BufferAttribute, triangles: readonly number[]): void {
  let from = -1;
  let to = -1;
  for (const t of triangles) {
    if (from >= 0 && 3 * t - to > NEAR) {
      index.addUpdateRange(from, to - from);
      from = -1;
    }
    if (from < 0) from = 3 * t;
    to = 3 * t + 3;
  }
  if (from < 0) return;
  index.addUpdateRange(from, to - from);
  index.needsUpdate = true;
}
