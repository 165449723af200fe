/** The ground as found along a line, without digging anything: quick enough to follow a drag. */
import { groundSection, LayeredGround, type SectionPlace } from "../ground/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { groundOf } from "./estimate.js";

/** One connected piece of one natural layer along a line. Site elevations, m. */
export interface FoundArea {
  /** Material id. */
  material: string;
  /** [station, elevation], counter-clockwise, each corner once; holes clockwise. */
  outline: readonly SectionPlace[];
  holes: readonly (readonly SectionPlace[])[];
}

/** The natural layers along a line, and their surface: one list for each stretch in the survey. */
export interface FoundLayers {
  areas: readonly FoundArea[];
  surface: readonly (readonly SectionPlace[])[];
}

/**
 * The layers as found along a line of two or more places (site coordinates, m; stations are m in
 * plan along it) down to the elevation `datum`. Empty where it lies wholly beyond the survey or has
 * no length. Throws like `estimate` on a survey that makes no ground.
 */
export function foundLayers(site: Site, line: readonly PlanPoint[], datum: number): FoundLayers {
  const base = groundOf(site);
  const [ox, oy, oz] = base.tin.origin;
  const places = line.map(([x, y]) => [x - ox, y - oy] as const);
  const cut = groundSection(new LayeredGround(base), places, datum - oz);
  const raised = (ring: readonly SectionPlace[]): SectionPlace[] =>
    ring.map(([station, z]) => [station, z + oz] as const);
  return {
    areas: cut.pieces.map(({ material, outline, holes }) => ({
      material,
      outline: raised(outline),
      holes: holes.map(raised),
    })),
    surface: cut.surface.map(raised),
  };
}
