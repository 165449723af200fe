/** What one work needs to be dug, and what it yields. */
import type { CellLayer, LayeredGround } from "../ground/index.js";
import { NATIVE, type Finding, type Work } from "../site/index.js";
import type { PipeRun, WorkQuantities } from "./types.js";

/** How far each work is carried: the stages of the job. */
export type Extent = "dug" | "bedded" | "set" | "backfilled";

/** The state that works are dug in. */
export interface Digging {
  ground: LayeredGround;
  /** Index of the work in building order. */
  number: number;
  extent: Extent;
  /** Flattest wall that the site's own layers ask for, run per rise. */
  flattestRun: number;
  findings: Finding[];
  pipes: PipeRun[];
}

const ORDER: readonly Extent[] = ["dug", "bedded", "set", "backfilled"];

/** True when the job has come at least as far as `extent`. */
export function reached(digging: Digging, extent: Extent): boolean {
  return ORDER.indexOf(digging.extent) >= ORDER.indexOf(extent);
}

/** The layer that a work puts in. */
export function placedLayer(digging: Digging, material: string, structure = false): CellLayer {
  return { material, by: digging.number, structure };
}

/** Volumes put in, m³ by material id, adding up what goes in twice. */
export class Filling {
  private readonly volumes = new Map<string, number>();

  add(material: string, volume: number): void {
    this.volumes.set(material, (this.volumes.get(material) ?? 0) + volume);
  }

  record(): Record<string, number> {
    return Object.fromEntries([...this.volumes].filter(([, volume]) => volume > 1e-12));
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
