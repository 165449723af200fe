import type { PlanPoint, Site } from "../../site/index.js";

/** Twice the area of the triangle a, b, c: positive when it turns to the left. */
const turn = (a: PlanPoint, b: PlanPoint, c: PlanPoint): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

function chain(points: readonly PlanPoint[]): PlanPoint[] {
  const kept: PlanPoint[] = [];
  for (const point of points) {
    while (kept.length > 1 && turn(kept.at(-2)!, kept.at(-1)!, point) <= 0) kept.pop();
    kept.push(point);
  }
  kept.pop();
  return kept;
}

/** What stands in for a moment is made of no more points than this. */
const MOST_POINTS = 2000;

/**
 * The lot in plan, m: its boundary, or else about the hull of its points; empty without an area.
 */
export function lotOutline({ survey }: Site): readonly PlanPoint[] {
  if (survey.boundary !== undefined) return survey.boundary;
  const step = Math.ceil(survey.points.length / MOST_POINTS);
  const some = survey.points.filter((_, index) => index % step === 0);
  const points = some.map(({ x, y }): PlanPoint => [x, y]);
  points.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const hull = [...chain(points), ...chain(points.reverse())];
  return hull.length < 3 ? [] : hull;
}

/** An outline as the `d` of an SVG path within `size`, north up, its proportions kept. */
export function outlinePath(
  outline: readonly PlanPoint[],
  size: { width: number; height: number },
): string {
  if (outline.length === 0) return "";
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [west, north] = [Math.min(...xs), Math.max(...ys)];
  const [wide, deep] = [Math.max(...xs) - west, north - Math.min(...ys)];
  const scale = Math.min(size.width / wide, size.height / deep);
  const [left, top] = [(size.width - wide * scale) / 2, (size.height - deep * scale) / 2];
  const places = outline.map(([x, y]) => {
    const across = left + (x - west) * scale;
    const down = top + (north - y) * scale;
    return `${across.toFixed(1)} ${down.toFixed(1)}`;
  });
  return `M${places.join("L")}Z`;
}
