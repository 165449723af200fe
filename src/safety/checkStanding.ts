/** How tanks and buildings stand in the ground as the job leaves it. */
import { rectangleInPlan } from "../flow/index.js";
import type { Wording } from "../flow/index.js";
import { ruleOf } from "../site/index.js";
import type { Building, Finding, Locality, PlanPoint, Scheme, Tank } from "../site/index.js";

/** Elevation of the ground once the job is done, m; NaN where it is not known. */
export type GroundAfter = (place: PlanPoint) => number;

/** m: less than this is finer than a hole is dug. */
const SLACK = 0.005;
/** m from a tank's body to the ground that counts as the ground beside it. */
const BESIDE = 0.5;

/** Tanks whose top is above the ground beside them, and floors with a gap under them. */
export function checkStanding(
  scheme: Scheme,
  after: GroundAfter,
  words: Wording,
  locality: Locality = {},
): Finding[] {
  return scheme.works.flatMap((work) => {
    if (work.kind === "tank") return outOfGround(work, after, words);
    return work.kind === "building" ? gapUnder(work, after, words, locality) : [];
  });
}

function outOfGround(tank: Tank, after: GroundAfter, words: Wording): Finding[] {
  const { at, bearing, base, body } = tank;
  const [length, width] = [body.length + 2 * BESIDE, body.width + 2 * BESIDE];
  const corners = rectangleInPlan({ at, bearing, length, width }).points;
  const low = lowest([...corners, ...middles(corners)], after);
  const out = base + body.height - low;
  if (!(out > SLACK)) return [];
  return [
    {
      level: "caution",
      code: "tank.out-of-ground",
      where: tank.id,
      text: `The top of ${tank.name} stands up to ${words.length(out)} above the ground beside it as the job leaves it. Lower it or bring earth over it, and ask its maker whether it may stand so.`,
      source: `geometry, at the corners and sides ${words.length(BESIDE)} off the tank`,
    },
  ];
}

function gapUnder(
  building: Building,
  after: GroundAfter,
  words: Wording,
  locality: Locality,
): Finding[] {
  const rule = ruleOf(locality, "floor-gap");
  const gap = building.base - lowest(building.outline, after);
  if (!(gap > rule.value + SLACK)) return [];
  return [
    {
      level: "note",
      code: "building.gap",
      where: building.id,
      text: `Gap under the floor of ${building.name}: ${words.length(gap)} at the low corner. A level pad is a work of its own: place one under it, or say what carries the floor.`,
      source: rule.source,
    },
  ];
}

/** The lowest known ground at these places, m; NaN where none is known. */
function lowest(places: readonly PlanPoint[], after: GroundAfter): number {
  const known = places.map(after).filter((z) => Number.isFinite(z));
  return known.length === 0 ? NaN : Math.min(...known);
}

function middles(corners: readonly PlanPoint[]): PlanPoint[] {
  return corners.map(([x, y], i) => {
    const [u, v] = corners[(i + 1) % corners.length]!;
    return [(x + u) / 2, (y + v) / 2];
  });
}
