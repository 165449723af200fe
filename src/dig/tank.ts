import { level, tidyOutline } from "../ground/index.js";
import type { Tank } from "../site/index.js";
import { rectangle } from "./place.js";
import { benchFinding, cutHole, fillSurface, grownBox } from "./walls.js";
import { Filling, materialsMet, placedLayer, reached, type Digging } from "./work.js";
import { reachFindings } from "./reachCheck.js";
import type { WorkQuantities } from "./types.js";

/**
 * Digs the hole of a tank (local m), beds it, sets the tank and fills up to the ground as it was.
 * The bedding fills the whole hole floor up to the tank's underside, wedges along sloped walls
 * included.
 */
export function digTank(digging: Digging, tank: Tank): WorkQuantities {
  const { ground } = digging;
  const { length, width, height } = tank.body;
  const body = rectangle(tank.at, tank.bearing, length, width);
  const outline = tidyOutline(
    rectangle(tank.at, tank.bearing, length + 2 * tank.overdig, width + 2 * tank.overdig),
  );
  const floor = tank.base - tank.bedding.depth;
  const hole = cutHole(
    ground,
    outline,
    floor,
    tank.walls,
    digging.flattestRun,
  );
  if (hole.tooMany) digging.findings.push(benchFinding(tank.id, tank.name));
  digging.findings.push(...reachFindings(ground, tank));
  const { area, deepest, tallest } = ground.markedExtent();
  const fill = new Filling();
  let displaced = 0;
  if (reached(digging, "bedded")) {
    const bedding = placedLayer(digging, tank.bedding.material);
    fill.add(
      tank.bedding.material,
      ground.refill(() => level(tank.base), bedding).volume,
    );
  }
  if (reached(digging, "set")) {
    const lid = fillSurface(body, tank.base + height, 0);
    const layer = placedLayer(digging, "tank", true);
    displaced = ground.fill(lid, grownBox(body, 0), layer).belowBefore.volume;
  }
  if (reached(digging, "backfilled")) {
    fill.add(
      tank.backfill,
      ground.refill(() => null, placedLayer(digging, tank.backfill), tank.crown ?? 0).volume,
    );
  }
  if (hole.structureHit > 1e-6) digging.findings.push(structureFinding(tank.id, tank.name));
  const cut = hole.cut.record();
  return {
    id: tank.id,
    name: tank.name,
    kind: tank.kind,
    cut,
    fill: fill.record(),
    displaced,
    floor: { lowest: floor, highest: floor },
    deepest,
    tallestFace: tallest,
    daylight: area,
    materialsMet: materialsMet(ground, cut),
  };
}

export function structureFinding(id: string, name: string): Digging["findings"][number] {
  return {
    level: "caution",
    code: "dig.meets-structure",
    where: id,
    text: `${name} runs into a tank that is already set. The tank is left standing and the dig is counted only around it; move one of them or change the building order.`,
    source: "geometry",
  };
}
