import type { SectionPlace } from "../ground/index.js";

/** What a piece of ground is: as nature left it, put there by a work, or a built thing. */
export type GroundKind = "natural" | "placed" | "structure";

/** One connected piece of one material in a section. */
export interface SectionArea {
  /**
   * Material id; "native" for the site's own earth put back, "tank" for a tank, "wall" for a raised
   * bed's own wall, "building" for a building.
   */
  material: string;
  kind: GroundKind;
  /** Id of the work that placed or built it; null for natural ground. */
  work: string | null;
  /** [station, elevation] in m, counter-clockwise, each corner once. */
  outline: readonly SectionPlace[];
  /** Outlines, clockwise, of what lies within it and is something else. */
  holes: readonly (readonly SectionPlace[])[];
  /** m², less the holes. */
  area: number;
}
