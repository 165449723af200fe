/** What one section shows, before it is drawn. SI; stations along its line. */
import { sectionAlong } from "../../estimate/index.js";
import type { Estimate, Section } from "../../estimate/index.js";
import type { Scheme, Site } from "../../site/index.js";
import { cutsOf, upTo, type Cut } from "./cuts.js";
import { rockTops } from "./earth.js";
import { levelsOf, type Level } from "./cutLevels.js";

export interface CutData {
  cut: Cut;
  finished: Section;
  dug: Section;
  rockTops: readonly (readonly (readonly [number, number])[])[];
  levels: readonly Level[];
  low: number;
  high: number;
}

const OVER = 0.3;
const UNDER = 0.5;
/** m of a building that are shown: its foot. */
const BUILDING = 0.5;

/** All sections of a scheme's works in building order. */
export function cutDataOf(site: Site, scheme: Scheme, estimate: Estimate): CutData[] {
  return cutsOf(site, scheme, estimate).map((cut) => {
    const dug = sectionAlong(upTo(site, scheme, cut.work), scheme.id, "dug", cut.line);
    const shown = sectionAlong(site, scheme.id, "backfilled", cut.line);
    const levels = levelsOf(cut, scheme, estimate, shown);
    const heights = [
      ...[...dug.surface, ...dug.found, ...shown.surface].flat().map(([, z]) => z),
      ...levels.map(({ height }) => height),
      ...shown.standing.flatMap(({ material, outline }) => {
        const corners = outline.map(([, z]) => z);
        return material === "building" ? [Math.min(...corners) + BUILDING] : corners;
      }),
    ];
    const low = Math.min(...heights) - UNDER;
    return {
      cut,
      dug,
      finished: sectionAlong(site, scheme.id, "backfilled", cut.line, low),
      rockTops: rockTops(site, cut.line, low, 0),
      levels,
      low,
      high: Math.max(...heights) + OVER,
    };
  });
}
