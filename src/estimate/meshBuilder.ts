/** Collects triangles and edges for a `GroundMesh`. Local metres. */
import type { GroundMesh } from "./types.js";

type Vector = readonly [number, number, number];

export class MeshBuilder {
  private readonly positions: number[] = [];
  private readonly normals: number[] = [];
  private readonly materialOf: number[] = [];
  private readonly faceOf: number[] = [];
  private readonly edges: number[] = [];
  private readonly materials: string[] = [];
  private readonly numbers = new Map<string, number>();

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
        this.positions.push(...corners[k]!);
        this.normals.push(...(isOne(normals) ? normals : normals[k]!));
        this.materialOf.push(number);
        this.faceOf.push(face);
      }
    }
  }

  edge(from: Vector, to: Vector): void {
    this.edges.push(...from, ...to);
  }

  build(origin: readonly [number, number, number]): GroundMesh {
    return {
      origin,
      positions: Float32Array.from(this.positions),
      normals: Float32Array.from(this.normals),
      materials: this.materials,
      materialOf: Uint8Array.from(this.materialOf),
      faceOf: Uint8Array.from(this.faceOf),
      edges: Float32Array.from(this.edges),
    };
  }

  private numberOf(material: string): number {
    let number = this.numbers.get(material);
    if (number === undefined) {
      number = this.materials.length;
      this.numbers.set(material, number);
      this.materials.push(material);
    }
    return number;
  }
}

function isOne(normals: Vector | readonly Vector[]): normals is Vector {
  return typeof normals[0] === "number";
}
