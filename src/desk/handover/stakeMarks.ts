import type { StakeChoices } from "../../handover/index.js";
import type { Site } from "../../site/index.js";

/**
 * The choices with one of the two marks put to a survey point; null, or the point that the other mark
 * has, leaves the pair to the program. A first choice takes the point farthest from it as the other,
 * since distances from marks close together cross badly.
 */
export function withMark(
  value: StakeChoices,
  place: 0 | 1,
  id: string | null,
  site: Site,
): StakeChoices {
  const rest: StakeChoices = Object.fromEntries(
    Object.entries(value).filter(([name]) => name !== "marks"),
  );
  const { points } = site.survey;
  const chosen = points.find((point) => point.id === id);
  if (chosen === undefined) return rest;
  const kept = value.marks?.[place === 0 ? 1 : 0];
  const far = points.reduce((best, point) =>
    apart(point, chosen) > apart(best, chosen) ? point : best,
  );
  const other = kept ?? { point: far.id };
  if ("point" in other && other.point === chosen.id) return rest;
  const mark = { point: chosen.id };
  return { ...rest, marks: place === 0 ? [mark, other] : [other, mark] };
}

const apart = (a: { x: number; y: number }, b: { x: number; y: number }): number =>
  Math.hypot(a.x - b.x, a.y - b.y);
