import { level, tidyOutline } from "../ground/index.js";
import type { Tank } from "../site/index.js";
import { digHoles, quantitiesPut, wallTerms } from "./hole.js";
import { rectangle } from "./place.js";
import type { WorkQuantities } from "./types.js";
import { fillSurface, grownBox, holeOf } from "./walls.js";
import { Filling, placedLayer, type Digging } from "./work.js";

/** The rectangle's edges run right, front, left, back; sides are written front, right, back, left. */
const SIDE_OF_EDGE = [1, 0, 3, 2];

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
  const floor = { a: 0, b: 0, c: tank.base - tank.bedding.depth };
  const sideOf = (edge: number): number => SIDE_OF_EDGE[edge]!;
  const hole = holeOf(wallTerms(digging, tank.walls), { outline, floor, sideOf });
  const quantities = digHoles(digging, tank, [{ hole, floor }]);
  const filling = new Filling();
  const bedding = placedLayer(digging, tank.bedding.material, "bedded");
  filling.add(
    tank.bedding.material,
    ground.refill(() => level(tank.base), bedding),
  );
  const lid = fillSurface(body, { a: 0, b: 0, c: tank.base + height }, 0);
  const set = placedLayer(digging, "tank", "set", true);
  const displaced = ground.fill(lid, grownBox(body, 0), set).belowBefore.volume;
  const backfill = placedLayer(digging, tank.backfill, "backfilled");
  filling.add(
    tank.backfill,
    ground.refill(() => null, backfill, tank.crown),
  );
  return {
    id: tank.id,
    name: tank.name,
    kind: tank.kind,
    ...quantities,
    ...quantitiesPut(digging, filling, quantities),
    displaced,
    floor: { lowest: floor.c, highest: floor.c },
  };
}
