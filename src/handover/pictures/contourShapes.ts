/** Contours of a stage in space, and where their heights are written. */
import { foundContours, stageContours } from "../../estimate/index.js";
import type { Stage } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { elevation } from "../../units/index.js";
import type { HandoverJob } from "../job.js";
import type { Place } from "./normals.js";
import { chain, type Stroke } from "./shapes.js";

/** A height on a contour: its place, and another a little way on, for the slant. */
export interface WrittenHeight {
  text: string;
  at: Place;
  on: Place;
}

export interface ContourShapes {
  usual: readonly Stroke[];
  /** Every fifth. */
  heavy: readonly Stroke[];
  heights: readonly WrittenHeight[];
}

/** Contours of the ground as it stands, as far apart as the site's relief suits; m from `origin`. */
export function contourShapes(
  { site, schemeId }: HandoverJob,
  stage: Stage,
  origin: Place,
): ContourShapes {
  const { lines } = stageContours(site, schemeId, stage, foundContours(site).step);
  const shapes = { usual: [] as Stroke[], heavy: [] as Stroke[], heights: [] as WrittenHeight[] };
  const hasHeavy = lines.some(({ heavy }) => heavy);
  for (const { elevation: level, line, heavy, labels } of lines) {
    const z = level - origin[2];
    const local = ([x, y]: readonly [number, number]): Place => [x - origin[0], y - origin[1], z];
    (heavy ? shapes.heavy : shapes.usual).push(...chain(line.map(local)));
    if (heavy !== hasHeavy) continue;
    for (const { at, angle } of labels) {
      const turn = (angle * Math.PI) / 180;
      const on = local([at[0] + Math.cos(turn), at[1] + Math.sin(turn)]);
      shapes.heights.push({ text: heightText(level, site.units), at: local(at), on });
    }
  }
  return shapes;
}

/** Whole numbers where the contour has one. */
function heightText(level: number, units: Site["units"]): string {
  const shown = elevation.toSystem(level, units);
  const digits = Math.abs(shown - Math.round(shown)) < 0.01 ? 0 : 1;
  return elevation.print(level, units, { digits, bare: true });
}
