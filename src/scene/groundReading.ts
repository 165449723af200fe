import { columnAt, groundSlopeAt, type Stage } from "../estimate/index.js";
import { materialsOf, NATIVE, type PlanPoint, type Site } from "../site/index.js";
import { elevation, length, pipeSlope } from "../units/index.js";
import { words } from "../words/index.js";

/** What the ground is at one place, printed in the site's units. */
export interface GroundReading {
  height: string;
  /** How far the ground at this stage lies under or over that as found; null where it is as found. */
  change: string | null;
  slope: string;
  /** From the top down: what it is, and how far down it begins. */
  layers: readonly { name: string; down: string }[];
}

/** m of change that are worth a word. */
const CHANGED = 0.01;
/** Rise per run under which ground is called level. */
const LEVEL = 0.002;

/** Reads the ground at a place of the site at a stage; null beyond the survey. */
export function groundReading(
  site: Site,
  schemeId: string,
  stage: Stage,
  at: PlanPoint,
): GroundReading | null {
  const column = columnAt(site, schemeId, stage, at);
  if (column === null) return null;
  const { looking } = words;
  const { found, now } = column;
  const by = now.elevation - found.elevation;
  const far = length.print(Math.abs(by), site.units);
  const falls = groundSlopeAt(site, at);
  return {
    height: elevation.print(now.elevation, site.units),
    change: Math.abs(by) < CHANGED ? null : by < 0 ? looking.below(far) : looking.above(far),
    slope:
      falls === null || falls.slope < LEVEL
        ? looking.level
        : looking.slopeTo(
            pipeSlope.print(falls.slope, site.units),
            looking.compass[Math.round(falls.fallsTowards / 45) % 8] ?? "",
          ),
    layers: now.layers.map((layer) => ({
      name: nameOf(site, layer.material),
      down:
        now.elevation - layer.top < CHANGED / 2
          ? looking.onTop
          : looking.down(length.print(now.elevation - layer.top, site.units)),
    })),
  };
}

function nameOf(site: Site, material: string): string {
  if (material === NATIVE) return words.looking.ownEarth;
  const built: Readonly<Record<string, string>> = words.looking.built;
  return materialsOf(site).get(material)?.name ?? built[material] ?? material;
}
