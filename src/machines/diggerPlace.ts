/** Where a digger is drawn at a work: a place that nothing entered bars. */
import type { WorkQuantities } from "../dig/index.js";
import type { PlanPoint } from "../site/index.js";
import { axisToEdge, groundBefore, middleOf, type CanContext } from "./canIt.js";
import type { Digger } from "./catalogue.js";
import { distanceToRings, placesAlong, placesAround, type Ring } from "./standing.js";
import { barOf } from "./standingBars.js";

/** A standing place, m in plan: the axis of swing, and what the arm points at. */
export interface DiggerPlace {
  at: PlanPoint;
  towards: PlanPoint;
}

/**
 * A place from which a digger might dig a work: for a trench first in line with its ends, else beside
 * the edge, of those that `heldAgainst` would let stand the one nearest to what is dug. Places in the
 * holes and heaps of other works come last. Null where the work is not dug or every place is barred.
 */
export function diggerPlace(
  digger: Digger,
  work: WorkQuantities,
  context: CanContext,
): DiggerPlace | null {
  const { daylight = [], toe = [] } = work.outlines ?? {};
  const middle = middleOf(toe.length > 0 ? toe : daylight);
  if (middle === null) return null;
  const back = axisToEdge(digger, context);
  const ground = groundBefore(work, context);
  const others = otherRings(work, context);
  const beside = placesAround(daylight, back).map((at) => ({ at, towards: middle }));
  let best: { place: DiggerPlace; cost: number } | null = null;
  for (const [places, extra] of [
    [trenchEnds(work, context, back), 0],
    [beside, IN_LINE],
  ] as const) {
    for (const place of places) {
      if (barOf(digger, place.at, place.towards, ground) !== null) continue;
      const crowded = distanceToRings(place.at, others) < digger.tailSwing ? CROWDED : 0;
      const away = Math.hypot(place.at[0] - place.towards[0], place.at[1] - place.towards[1]);
      const cost = away + extra + crowded;
      if (best === null || cost < best.cost) best = { place, cost };
    }
  }
  return best?.place ?? null;
}

/** m of way that a place in another hole, or one that is not in line with a trench, counts for. */
const CROWDED = 1000;
const IN_LINE = 100;

function otherRings({ id }: WorkQuantities, { dig }: CanContext): Ring[] {
  return dig.works.flatMap((other) =>
    other.id === id ? [] : [...(other.outlines?.daylight ?? []), ...(other.heap?.toe ?? [])],
  );
}

/** Places beyond the two ends of a trench, in line with it; none for another work. */
function trenchEnds({ id }: WorkQuantities, { scheme }: CanContext, back: number): DiggerPlace[] {
  const drawn = scheme.works.find((work) => work.id === id);
  if (drawn?.kind !== "trench") return [];
  const along = placesAlong(drawn.path, Infinity);
  const [first, last] = [along[0], along.at(-1)];
  if (first === undefined || last === undefined) return [];
  const beyond = ({ at, way }: typeof first, out: number): DiggerPlace => ({
    at: [at[0] + out * way[0], at[1] + out * way[1]],
    towards: at,
  });
  return [beyond(last, back), beyond(first, -back)];
}
