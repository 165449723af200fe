/** What one work needs to be dug, and what it yields. */
import type { CellLayer, LayeredGround, Point, Tally } from "../ground/index.js";
import { NATIVE, type Finding, type Work } from "../site/index.js";
import type { ByMaterial, PipeRun, WorkQuantities } from "./types.js";
import type { UnitSystem } from "../units/index.js";

/** The stages of a job on which something is dug or put in. */
export type Extent = "stripped" | "dug" | "bedded" | "set" | "zone" | "backfilled";

/** The stages in their order; the place of one among them is the step of what it puts in. */
export const EXTENTS: readonly Extent[] = [
  "stripped",
  "dug",
  "bedded",
  "set",
  "zone",
  "backfilled",
];

/** The state that works are dug in. */
export interface Digging {
  ground: LayeredGround;
  /** In which findings give places. */
  units: UnitSystem;
  /** Index of the work in building order. */
  number: number;
  /** Run that a layer's material asks of a wall; null for a built thing. */
  runOf: (layer: CellLayer) => number | null;
  /** Flattest wall that the site's own layers ask for, run per rise. */
  flattestRun: number;
  findings: Finding[];
  pipes: PipeRun[];
  /** What each work has moved, by its number, as its quantities do not tell it. */
  moved: Moved[];
}

/** What the stages of a job are reckoned from. */
export interface Moved {
  /** m³ bank of the ground as found that a work took out, by material id. */
  natural: ByMaterial;
  /** m³ between a trench's bedding and its backfill, pipes included. */
  zone: number;
}

/** The layer that the present work puts in when the job comes to a stage. */
export function placedLayer(
  digging: Digging,
  material: string,
  stage: Extent,
  structure = false,
): CellLayer {
  return { material, by: digging.number, structure, step: EXTENTS.indexOf(stage) };
}

/** Volumes put in, m³ by material id, adding up what goes in twice, and where their middle is. */
export class Filling {
  private readonly volumes = new Map<string, number>();
  private weight = 0;
  private readonly moment: [number, number, number] = [0, 0, 0];

  /** Adds what a fill put in; `displaced` of it, m³, is something else (a pipe). */
  add(material: string, put: Tally, displaced = 0): void {
    const volume = Math.max(0, put.volume - displaced);
    this.volumes.set(material, (this.volumes.get(material) ?? 0) + volume);
    const centre = put.centre();
    if (!centre) return;
    this.weight += volume;
    for (let k = 0; k < 3; k++) this.moment[k] = this.moment[k]! + volume * centre[k]!;
  }

  record(): Record<string, number> {
    return Object.fromEntries([...this.volumes].filter(([, volume]) => volume > 0));
  }

  /** Centre of mass of all that was put in, as if of one density, local m; null for nothing. */
  centre(): Point | null {
    if (this.weight <= 0) return null;
    const [x, y, z] = this.moment;
    return [x / this.weight, y / this.weight, z / this.weight];
  }
}

/** A work that moves nothing, at an elevation (m, local). */
export function nothingMoved(work: Work, elevation: number): WorkQuantities {
  return {
    id: work.id,
    name: work.name,
    kind: work.kind,
    cut: {},
    fill: {},
    displaced: 0,
    floor: { lowest: elevation, highest: elevation },
    deepest: 0,
    tallestFace: 0,
    daylight: 0,
    materialsMet: [],
  };
}

/** Material ids taken out, from the top layer of the ground down. */
export function materialsMet(ground: LayeredGround, cut: Record<string, number>): string[] {
  const topDown = [NATIVE, ...[...ground.base.layers].reverse().map((layer) => layer.material)];
  const met = topDown.filter((material) => (cut[material] ?? 0) > 0);
  return [...new Set([...met, ...Object.keys(cut)])];
}
