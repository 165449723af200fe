import { tidyOutline } from "../ground/index.js";
import type { Pad } from "../site/index.js";
import { benchFinding, cutHole, fillSurface, grownBox } from "./walls.js";
import { structureFinding } from "./tank.js";
import { Filling, materialsMet, placedLayer, reached, type Digging } from "./work.js";
import { reachFindings } from "./reachCheck.js";
import type { WorkQuantities } from "./types.js";

/**
 * Levels a pad (local m): cuts to the subgrade with sloped walls up to daylight, fills below it
 * with sides that fall outwards to daylight, then lays the course within the outline.
 */
export function digPad(digging: Digging, pad: Pad): WorkQuantities {
  const { ground } = digging;
  const outline = tidyOutline(pad.outline);
  const subgrade = pad.top - (pad.course?.depth ?? 0);
  const hole = cutHole(
    ground,
    outline,
    subgrade,
    pad.walls,
    digging.flattestRun,
  );
  if (hole.tooMany) digging.findings.push(benchFinding(pad.id, pad.name));
  digging.findings.push(...reachFindings(ground, pad));
  const { area, deepest, tallest } = ground.markedExtent();
  const fill = new Filling();
  // The ground is brought to the subgrade as part of digging: cut and fill are one earthmoving job.
  const sideReach = Math.max(0, (subgrade - ground.lowest) * pad.fillRun);
  const sides = fillSurface(outline, subgrade, pad.fillRun);
  const earth = ground.fill(sides, grownBox(outline, sideReach), placedLayer(digging, pad.fill));
  fill.add(pad.fill, earth.put.volume);
  if (pad.course && reached(digging, "bedded")) {
    const course = fillSurface(outline, pad.top, 0);
    const layer = placedLayer(digging, pad.course.material);
    fill.add(pad.course.material, ground.fill(course, grownBox(outline, 0), layer).put.volume);
  }
  if (hole.structureHit > 1e-6) digging.findings.push(structureFinding(pad.id, pad.name));
  const cut = hole.cut.record();
  return {
    id: pad.id,
    name: pad.name,
    kind: pad.kind,
    cut,
    fill: fill.record(),
    displaced: 0,
    floor: { lowest: subgrade, highest: subgrade },
    deepest,
    tallestFace: tallest,
    daylight: area,
    materialsMet: materialsMet(ground, cut),
  };
}
