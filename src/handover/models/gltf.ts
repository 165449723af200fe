/**
 * A stage of the job as glTF 2.0 (Khronos Group, ISO/IEC 12113:2022) in one binary file: the ground
 * with a material for each kind of earth, and each built thing as a node of its own. glTF is metres,
 * y up, so a place [x, y, z] of the site is [x, z, -y] there, from an origin near the lot that the
 * scene's extras name.
 */
import { Document, WebIO } from "@gltf-transform/core";
import type { Buffer, Material as GltfMaterial, Mesh } from "@gltf-transform/core";
import { FACE, materialColour, STAGE_NAMES, STAGES, stageMesh } from "../../estimate/index.js";
import type { GroundMesh, Stage } from "../../estimate/index.js";
import { materialsOf, NATIVE } from "../../site/index.js";
import type { Material } from "../../site/index.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverJob, MakeOptions } from "../job.js";
import { GRASS, SOLID_COLOURS, solidsOf } from "./solids.js";
import type { Solid } from "./solids.js";

const INK = "#26323a";

/** One part of a colour in the linear light that glTF asks for (IEC 61966-2-1). */
function linear(part: number): number {
  const share = part / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

function linearColour(hex: string): [number, number, number, number] {
  const part = (at: number): number => linear(Number.parseInt(hex.slice(at, at + 2), 16));
  return [part(1), part(3), part(5), 1];
}

/** Turns from z up to y up, in a new array. */
function yUp(places: ArrayLike<number>): Float32Array<ArrayBuffer> {
  const out = new Float32Array(places.length);
  for (let i = 0; i < places.length; i += 3) {
    out[i] = places[i]!;
    out[i + 1] = places[i + 2]!;
    out[i + 2] = -places[i + 1]!;
  }
  return out;
}

/** Unit normals of loose triangles; one too thin to have a side is left out of `places` as well. */
function flat(places: readonly number[]): { places: number[]; normals: number[] } {
  const out: { places: number[]; normals: number[] } = { places: [], normals: [] };
  for (let i = 0; i + 8 < places.length; i += 9) {
    const at = (k: number): number => places[i + k]!;
    const [ux, uy, uz] = [at(3) - at(0), at(4) - at(1), at(5) - at(2)];
    const [vx, vy, vz] = [at(6) - at(0), at(7) - at(1), at(8) - at(2)];
    const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const;
    const size = Math.hypot(...normal);
    if (size < 1e-12) continue;
    out.places.push(...places.slice(i, i + 9));
    const unit = normal.map((part) => part / size);
    out.normals.push(...unit, ...unit, ...unit);
  }
  return out;
}

/** A material's name and its CSS hex. */
type Paint = readonly [name: string, colour: string];

/** Builds up one model: its materials are made once by name. */
class Model {
  readonly document = new Document();
  readonly scene = this.document.createScene();
  private readonly buffer: Buffer = this.document.createBuffer();
  private readonly materials = new Map<string, GltfMaterial>();

  private material(name: string, colour: string): GltfMaterial {
    const known = this.materials.get(name);
    if (known !== undefined) return known;
    const made = this.document
      .createMaterial(name)
      .setBaseColorFactor(linearColour(colour))
      .setMetallicFactor(0)
      .setRoughnessFactor(1);
    this.materials.set(name, made);
    return made;
  }

  private vectors(values: Float32Array<ArrayBuffer>): ReturnType<Document["createAccessor"]> {
    return this.document.createAccessor().setType("VEC3").setArray(values).setBuffer(this.buffer);
  }

  /** Adds triangles of one material to a mesh; nothing for none. */
  add(
    mesh: Mesh,
    [name, colour]: Paint,
    places: ArrayLike<number>,
    normals: ArrayLike<number>,
  ): void {
    if (places.length === 0) return;
    mesh.addPrimitive(
      this.document
        .createPrimitive()
        .setAttribute("POSITION", this.vectors(yUp(places)))
        .setAttribute("NORMAL", this.vectors(yUp(normals)))
        .setMaterial(this.material(name, colour)),
    );
  }

  /** Adds lines, as pairs of ends. */
  addEdges(mesh: Mesh, ends: Float32Array): void {
    if (ends.length === 0) return;
    mesh.addPrimitive(
      this.document
        .createPrimitive()
        .setMode(1)
        .setAttribute("POSITION", this.vectors(yUp(ends)))
        .setMaterial(this.material("Edges of works", INK)),
    );
  }

  /** Puts a mesh in the scene under its name; an empty one is left out. */
  place(mesh: Mesh, name: string, extras: Record<string, unknown>): void {
    if (mesh.listPrimitives().length === 0) {
      mesh.dispose();
      return;
    }
    this.scene.addChild(this.document.createNode(name).setMesh(mesh).setExtras(extras));
  }
}

/** Corners of a mesh by the material they are drawn in. */
function byMaterial(ground: GroundMesh): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  ground.faceOf.forEach((face, vertex) => {
    const id = ground.materials[ground.materialOf[vertex]!]!;
    const key = face === FACE.found ? "" : id;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [vertex]);
    else group.push(vertex);
  });
  return groups;
}

function addGround(model: Model, job: HandoverJob, ground: GroundMesh): void {
  const materials = materialsOf(job.site);
  const mesh = model.document.createMesh("Ground");
  for (const [id, vertices] of byMaterial(ground)) {
    const pick = (from: Float32Array): number[] =>
      vertices.flatMap((v) => [from[3 * v]!, from[3 * v + 1]!, from[3 * v + 2]!]);
    const name =
      id === "" ? "Ground as found" : id === NATIVE ? "Own earth" : (materials.get(id)?.name ?? id);
    const colour = id === "" ? GRASS : materialColour(id, materials);
    model.add(mesh, [name, colour], pick(ground.positions), pick(ground.normals));
  }
  model.addEdges(mesh, ground.edges);
  model.place(mesh, "Ground", {});
}

/** Name and colour of what a solid is made of. */
function paintOf({ kind }: Solid, materials: ReadonlyMap<string, Material>): Paint {
  if (typeof kind === "string") return [kind, SOLID_COLOURS[kind]];
  return [
    materials.get(kind.material)?.name ?? kind.material,
    materialColour(kind.material, materials),
  ];
}

function addSolid(
  model: Model,
  solid: Solid,
  paint: Paint,
  origin: readonly [number, number, number],
): void {
  const local = solid.corners.map((part, i) => part - origin[i % 3]!);
  const { places, normals } = flat(local);
  const mesh = model.document.createMesh(solid.name);
  model.add(mesh, paint, places, normals);
  model.place(mesh, solid.name, { id: solid.id });
}

/** The model of one stage. Throws like `estimate`; pure. */
export function stageModel(job: HandoverJob, stage: Stage): Document {
  const ground = stageMesh(job.site, job.schemeId, stage);
  const model = new Model();
  const materials = materialsOf(job.site);
  const works = job.site.schemes.find((scheme) => scheme.id === job.schemeId)?.works ?? [];
  model.scene.setName(`${job.site.name}: ${STAGE_NAMES[stage]}`).setExtras({
    site: job.site.name,
    scheme: job.schemeId,
    stage,
    made: job.madeAt,
    origin: [...ground.origin],
    axes: "x east, y up, z south; metres from origin, which is [east, north, elevation]",
    cautions: [...job.estimate.cautions],
  });
  model.document.getRoot().getAsset().generator = "Bankyard";
  addGround(model, job, ground);
  for (const work of works) {
    for (const solid of solidsOf(job.site, work, stage)) {
      addSolid(model, solid, paintOf(solid, materials), ground.origin);
    }
  }
  return model.document;
}

/** One .glb for each stage asked for; all of them when none is named. */
export async function stageModels(
  job: HandoverJob,
  options: MakeOptions & { stages?: readonly Stage[] } = {},
): Promise<readonly HandoverFile[]> {
  const stages = options.stages ?? STAGES;
  const files: HandoverFile[] = [];
  const io = new WebIO();
  for (const stage of stages) {
    options.signal?.throwIfAborted();
    const bytes = await io.writeBinary(stageModel(job, stage));
    files.push({
      name: fileName(job, `model ${STAGE_NAMES[stage]}`, "glb"),
      type: "model/gltf-binary",
      data: new Uint8Array(bytes),
    });
    options.progress?.(files.length, stages.length);
  }
  return files;
}
