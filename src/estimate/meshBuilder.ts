/** Collects triangles and edges for a `GroundMesh`. Local metres. */
import type { GroundMesh } from "./types.js";

/** A place or a direction: x, y, z. */
export type Vector = readonly [number, number, number];

/** The plane of a triangle as found: through `at`, rising `east` and `north` per metre. */
export interface Plane {
  at: Vector;
  east: number;
  north: number;
}

/** Vertices that a builder has room for at first. */
const ROOM = 1024;

/** Grows flat arrays in place of lists of numbers: a stage may have half a million of them. */
export class MeshBuilder {
  private positions = new Float32Array(3 * ROOM);
  private normals = new Float32Array(3 * ROOM);
  private materialOf = new Uint8Array(ROOM);
  private faceOf = new Uint8Array(ROOM);
  private depthOf = new Float32Array(ROOM);
  private edges = new Float32Array(6 * ROOM);
  private edgeEnds = 0;
  private count = 0;
  private readonly materials: string[] = [];
  private readonly numbers = new Map<string, number>();
  /** The ground as found over what is added next; null where no depth is asked. */
  under: Plane | null = null;

  /** How many vertices there are. */
  get vertices(): number {
    return this.count;
  }

  /** One corner of a triangle; three in a row make one. `material` is a number of `numberOf`. */
  vertex(place: Vector, normal: Vector, material: number, face: number): void {
    if (this.count === this.faceOf.length) this.grow();
    const at = 3 * this.count;
    const { positions, normals } = this;
    for (let k = 0; k < 3; k++) {
      positions[at + k] = place[k]!;
      normals[at + k] = normal[k]!;
    }
    this.materialOf[this.count] = material;
    this.faceOf[this.count] = face;
    const { under } = this;
    if (under !== null) this.depthOf[this.count] = heightOn(under, place) - place[2];
    this.count++;
  }

  /** A convex polygon as a fan; one normal for all, or one for each corner. */
  polygon(
    corners: readonly Vector[],
    normals: Vector | readonly Vector[],
    material: string,
    face: number,
  ): void {
    const number = this.numberOf(material);
    for (let i = 1; i + 1 < corners.length; i++) {
      for (const k of [0, i, i + 1]) {
        this.vertex(corners[k]!, isOne(normals) ? normals : normals[k]!, number, face);
      }
    }
  }

  edge(from: Vector, to: Vector): void {
    if (this.edgeEnds + 6 > this.edges.length) this.edges = twice(this.edges);
    this.edges.set(from, this.edgeEnds);
    this.edges.set(to, this.edgeEnds + 3);
    this.edgeEnds += 6;
  }

  /** Adds some vertices of a mesh, from the one numbered `from` up to but not `to`. */
  copy(mesh: GroundMesh, from = 0, to = mesh.faceOf.length): void {
    const numbers = mesh.materials.map((material) => this.numberOf(material));
    while (this.count + to - from > this.faceOf.length) this.grow();
    this.positions.set(mesh.positions.subarray(3 * from, 3 * to), 3 * this.count);
    this.normals.set(mesh.normals.subarray(3 * from, 3 * to), 3 * this.count);
    this.faceOf.set(mesh.faceOf.subarray(from, to), this.count);
    for (let i = from; i < to; i++) {
      this.materialOf[this.count++] = numbers[mesh.materialOf[i]!]!;
    }
  }

  /** The mesh; arrays have no room left over, so that each may be handed to another thread. */
  build(origin: readonly [number, number, number]): GroundMesh {
    return {
      origin,
      positions: this.positions.slice(0, 3 * this.count),
      normals: this.normals.slice(0, 3 * this.count),
      materials: this.materials,
      materialOf: this.materialOf.slice(0, this.count),
      faceOf: this.faceOf.slice(0, this.count),
      edges: this.edges.slice(0, this.edgeEnds),
    };
  }

  /** For each vertex how far it lies under the plane that was `under` it, m; 0 where none was. */
  depths(): Float32Array {
    return this.depthOf.slice(0, this.count);
  }

  /** The number of a material, the next free one when it is new. */
  numberOf(material: string): number {
    let number = this.numbers.get(material);
    if (number === undefined) {
      number = this.materials.length;
      this.numbers.set(material, number);
      this.materials.push(material);
    }
    return number;
  }

  private grow(): void {
    this.positions = twice(this.positions);
    this.normals = twice(this.normals);
    const materialOf = new Uint8Array(2 * this.materialOf.length);
    materialOf.set(this.materialOf);
    this.materialOf = materialOf;
    const faceOf = new Uint8Array(2 * this.faceOf.length);
    faceOf.set(this.faceOf);
    this.faceOf = faceOf;
    this.depthOf = twice(this.depthOf);
  }
}

function heightOn({ at, east, north }: Plane, [x, y]: Vector): number {
  return at[2] + east * (x - at[0]) + north * (y - at[1]);
}

function twice(array: Float32Array<ArrayBuffer>): Float32Array<ArrayBuffer> {
  const larger = new Float32Array(2 * array.length);
  larger.set(array);
  return larger;
}

function isOne(normals: Vector | readonly Vector[]): normals is Vector {
  return typeof normals[0] === "number";
}
