/** A survey that is too large to draw every triangle of, with fewer spot heights. */
import { lotEdge } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";

/** Spot heights that a picture is drawn from; of the ground come twice as many triangles at most. */
export const MOST_POINTS = 2500;

type Survey = Site["survey"];

/** One for each survey, so that all stages and pictures share it and what is made of it. */
const known = new WeakMap<Survey, Survey>();

/**
 * The site with at most `MOST_POINTS` spot heights, spread evenly, and besides them those that lines
 * and the survey's edge hang on; the site itself where it has no more than that. Works are dug into
 * the thinner ground exactly; figures are never taken from it.
 */
export function thinned(site: Site): Site {
  const { survey } = site;
  if (survey.points.length <= MOST_POINTS) return site;
  let fewer = known.get(survey);
  if (fewer === undefined) known.set(survey, (fewer = thinnedSurvey(site)));
  return { ...site, survey: fewer };
}

function thinnedSurvey(site: Site): Survey {
  const { survey } = site;
  const { points } = survey;
  const edge = new Set(lotEdge(site).map(([x, y]) => `${x} ${y}`));
  const held = new Set((survey.breaklines ?? []).flat());
  const kept = new Set(points.filter(({ id, x, y }) => held.has(id) || edge.has(`${x} ${y}`)));
  for (const point of oneInEachCell(points)) kept.add(point);
  return { ...survey, points: points.filter((point) => kept.has(point)) };
}

/** Of each cell of a grid over all of the survey the point that is nearest to its middle. */
function oneInEachCell(points: Survey["points"]): Survey["points"] {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    [west, east] = [Math.min(west, x), Math.max(east, x)];
    [south, north] = [Math.min(south, y), Math.max(north, y)];
  }
  const size = Math.sqrt(((east - west) * (north - south)) / MOST_POINTS);
  const best = new Map<string, { point: Survey["points"][number]; off: number }>();
  for (const point of points) {
    const [u, v] = [(point.x - west) / size, (point.y - south) / size];
    const [i, j] = [Math.floor(u), Math.floor(v)];
    const off = Math.hypot(u - i - 0.5, v - j - 0.5);
    const cell = `${i} ${j}`;
    if (off < (best.get(cell)?.off ?? Infinity)) best.set(cell, { point, off });
  }
  return [...best.values()].map(({ point }) => point);
}
