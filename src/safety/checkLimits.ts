import { planDistance, rectangleInPlan } from "../flow/index.js";
import type { PlanShape, Wording } from "../flow/index.js";
import type { Finding, Limit, Site, Work } from "../site/index.js";

/** m: a distance short of its setback by less than this is finer than anyone stakes out. */
const SETBACK_TOLERANCE = 0.005;

/**
 * Every work that stands nearer to a limit than the limit's own setback (distance in plan from tank
 * body, bed, a pad's outlines or trench path), and every work that crosses a limit without a setback.
 */
export function checkLimits(
  site: Pick<Site, "limits">,
  works: readonly Work[],
  words: Wording,
): Finding[] {
  const findings: Finding[] = [];
  for (const work of works) {
    const shapes = shapesOf(work);
    if (shapes.length === 0) continue;
    for (const limit of site.limits ?? []) {
      const finding = tooNear(work, shapes, limit, words);
      if (finding !== undefined) findings.push(finding);
    }
  }
  return findings;
}

function tooNear(
  work: Work,
  shapes: readonly PlanShape[],
  limit: Limit,
  words: Wording,
): Finding | undefined {
  const away = distanceToLimit(shapes, limit);
  if (away === undefined) return undefined;
  const name = limit.name ?? limit.kind;
  if (limit.setback === undefined || limit.setback === 0) {
    if (away > 0) return undefined;
    return {
      level: "caution",
      code: "limit.crossed",
      where: work.id,
      text: `${work.name} crosses ${name}. Find out what that means before digging.`,
      source: "geometry",
    };
  }
  const short = limit.setback - away;
  if (short <= SETBACK_TOLERANCE) return undefined;
  const where = away === 0 ? `crosses ${name}` : `is ${words.atMost(away)} from ${name}`;
  return {
    level: "caution",
    code: "limit.too-near",
    where: work.id,
    text: `${work.name} ${where}; the setback set here is ${words.distance(limit.setback)}. Move it ${words.atLeast(short)} farther off, or check your local code.`,
    source: `setback as entered for ${name}; distance by geometry`,
  };
}

function distanceToLimit(shapes: readonly PlanShape[], limit: Limit): number | undefined {
  const parts: PlanShape[] = [];
  if (limit.at !== undefined) parts.push({ points: [limit.at], closed: false });
  if (limit.path !== undefined && limit.path.length > 0) {
    parts.push({ points: limit.path, closed: false });
  }
  if (parts.length === 0) return undefined;
  return Math.min(...parts.flatMap((part) => shapes.map((shape) => planDistance(shape, part))));
}

/** What of a work a setback is measured from; buildings, piles and strips are no part of the system. */
function shapesOf(work: Work): PlanShape[] {
  switch (work.kind) {
    case "tank":
      return [rectangleInPlan({ at: work.at, bearing: work.bearing, ...work.body })];
    case "bed":
      return [rectangleInPlan(work)];
    case "pad":
      return [work.outline, ...(work.levels ?? []).map((level) => level.outline)].map((points) => ({
        points,
        closed: true,
      }));
    case "trench":
      return [{ points: work.path, closed: false }];
    case "building":
    case "pile":
    case "strip":
      return [];
  }
}
