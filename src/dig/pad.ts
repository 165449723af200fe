import { lifted, lowerOf, type Place, type Surface } from "../ground/index.js";
import { centreOfArea, type Pad } from "../site/index.js";
import { digHoles, quantitiesPut, tidySides, wallTerms } from "./hole.js";
import type { WorkQuantities } from "./types.js";
import { heightOn, raisedBy, type PlaneOf } from "./sideWall.js";
import { fillSurface, grownBox, holeOf, type Hole } from "./walls.js";
import { Filling, placedLayer, type Digging } from "./work.js";

/** One level of a pad: its outline, finished plane and the plane that the ground is brought to. */
interface Level {
  outline: readonly Place[];
  top: PlaneOf;
  subgrade: PlaneOf;
  hole: Hole;
}

/**
 * Levels a pad (local m): cuts to the subgrade with sloped walls up to daylight, fills below it
 * with sides that fall outwards to daylight, then lays the course within the outline. A stepped
 * pad is all its levels at once: nothing is filled that another level's hole takes away.
 */
export function digPad(digging: Digging, pad: Pad): WorkQuantities {
  const { ground } = digging;
  const levels = levelsOf(digging, pad);
  const holes = levels.map(({ hole, subgrade }) => ({ hole, floor: subgrade }));
  const quantities = digHoles(digging, pad, holes);
  const filling = new Filling();
  // The ground is brought to the subgrade as part of digging: cut and fill are one earthmoving job.
  const fill = placedLayer(digging, pad.fill, "dug");
  for (const { surface, box } of fills(levels, pad.fillRun, ground.lowest)) {
    filling.add(pad.fill, ground.fill(surface, box, fill).put);
  }
  const foot = filling.centre() === null ? [] : ground.placedRings(fill);
  if (pad.course) {
    const layer = placedLayer(digging, pad.course.material, "bedded");
    for (const { outline, top } of levels) {
      const course = belowHoles(levels, fillSurface(outline, top, 0), pad.course.depth);
      filling.add(pad.course.material, ground.fill(course, grownBox(outline, 0), layer).put);
    }
  }
  return {
    id: pad.id,
    name: pad.name,
    kind: pad.kind,
    ...quantities,
    ...quantitiesPut(digging, filling, quantities),
    ...(foot.length > 0 && { fillFoot: foot }),
    displaced: 0,
    floor: floorRange(levels),
  };
}

function levelsOf(digging: Digging, pad: Pad): Level[] {
  const depth = pad.course?.depth ?? 0;
  return [{ outline: pad.outline, top: pad.top }, ...(pad.levels ?? [])].map((level) => {
    const { walls } = pad;
    const sides = walls.by === "run" ? walls.sides : undefined;
    const fits = sides?.length === level.outline.length ? sides : undefined;
    const { outline, runs } = tidySides(level.outline, fits);
    const top = fallingPlane(level.outline, level.top, pad.fall);
    const subgrade = raisedBy(top, -depth);
    const own = walls.by === "run" && runs ? { ...walls, sides: runs } : walls;
    const hole = holeOf(wallTerms(digging, own), {
      outline,
      floor: subgrade,
      sideOf: (edge) => edge,
    });
    return { outline, top, subgrade, hole };
  });
}

/** The plane through `top` at the outline's centre of area that falls towards a bearing. */
function fallingPlane(outline: readonly Place[], top: number, fall: Pad["fall"]): PlaneOf {
  if (!fall) return { a: 0, b: 0, c: top };
  const angle = (fall.bearing * Math.PI) / 180;
  const [a, b] = [-fall.slope * Math.sin(angle), -fall.slope * Math.cos(angle)];
  const [x, y] = centreOfArea(outline.map(([px, py]): [number, number] => [px, py]));
  return { a, b, c: top - a * x - b * y };
}

/** What the fill of all levels is brought up to, and where. */
function fills(
  levels: readonly Level[],
  fillRun: number,
  lowestGround: number,
): { surface: Surface; box: Level["hole"]["box"] }[] {
  return levels.map(({ outline, subgrade }) => {
    const highest = Math.max(...outline.map((place) => heightOn(subgrade, place)));
    const reach = Math.max(0, (highest - lowestGround) * fillRun);
    // One level after another comes to the highest of them: a fill only ever raises.
    const surface = belowHoles(levels, fillSurface(outline, subgrade, fillRun), 0);
    return { surface, box: grownBox(outline, reach) };
  });
}

/** The surface kept below every level's hole, raised by a depth. */
function belowHoles(levels: readonly Level[], surface: Surface, by: number): Surface {
  if (levels.length === 1) return surface;
  return lowerOf([
    surface,
    ...levels.flatMap(({ hole }) => hole.shelves.map((shelf) => lifted(shelf, by))),
  ]);
}

function floorRange(levels: readonly Level[]): WorkQuantities["floor"] {
  const heights = levels.flatMap(({ outline, subgrade }) =>
    outline.map((place) => heightOn(subgrade, place)),
  );
  return { lowest: Math.min(...heights), highest: Math.max(...heights) };
}
