/** Names in a profile: tanks, beds and buildings, what crosses, the least cover. */
import { heightOn } from "../../estimate/index.js";
import type { PipeCheck } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Mark, Spot } from "../paper.js";
import { lineObstacles, type LabelWish, type Obstacle } from "../place.js";
import { dimensionLine } from "./dimension.js";
import { namedMarks, wishFor } from "./names.js";
import type { ProfileData } from "./profileData.js";
import { boxOf, lineOf, spotOf, xOf, yOf, type View } from "./view.js";

export function profileNames(site: Site, data: ProfileData, view: View): Mark[] {
  const [left, top, width, height] = boxOf(view);
  const { covers, wishes } = coverDimensions(site, data, view);
  const wanted = [...standingNames(site, data, view), ...crossingNames(data, view), ...wishes];
  const { layers } = words.sheetsSections;
  const named = namedMarks(wanted, obstaclesOf(data, view), { left, top, width, height });
  return [
    { kind: "group", layer: layers.dimensions, marks: covers },
    { kind: "group", layer: layers.names, marks: named },
  ];
}

/** Names of what is built on or in the ground along the chain, in its middle if there is room. */
function standingNames(site: Site, { finished, beyond }: ProfileData, view: View): LabelWish[] {
  const areas = [...finished.areas, ...finished.standing].filter(
    ({ kind }) => kind === "structure",
  );
  const scheme = site.schemes.find(({ id }) => id === finished.scheme);
  return [...new Set(areas.map(({ work }) => work ?? ""))].map((work) => {
    const corners = areas.filter((area) => area.work === work).flatMap(({ outline }) => outline);
    const stations = corners.map(([s]) => s - beyond);
    const heights = corners.map(([, z]) => z);
    const [low, high] = [Math.min(...heights), Math.min(view.high, Math.max(...heights))];
    const middle = (Math.min(...stations) + Math.max(...stations)) / 2;
    const at = spotOf(view, [middle, (low + high) / 2]);
    const name = scheme?.works.find(({ id }) => id === work)?.name ?? work;
    return { ...wishFor(work, name, at, 3), spots: [{ middle: at }] };
  });
}

function crossingNames({ finished, chain, buried, beyond }: ProfileData, view: View): LabelWish[] {
  const own = new Set(chain.runs.map(({ trench }) => trench.id));
  const pipes = finished.pipes
    .filter(({ work }) => !own.has(work))
    .map(({ id, name, centre }) =>
      wishFor(`pipe ${id}`, name, spotOf(view, [centre[0] - beyond, centre[1]]), 2),
    );
  const lines = buried.map(({ station, name, top }) => {
    const text = top === null ? words.sheetsSections.profile.depthUnknown(name) : name;
    const at: Spot = [xOf(view, station), top === null ? view.top + 4 : yOf(view, top) + 1];
    return wishFor(`buried ${name} ${station}`, text, at, 4);
  });
  return [...pipes, ...lines];
}

/** The place of the least cover of each run, with its height from the pipe's top to the ground. */
function coverDimensions(
  site: Site,
  { chain, beyond, finished }: ProfileData,
  view: View,
): { covers: Mark[]; wishes: LabelWish[] } {
  const covers: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const { pipes, trench, start } of chain.runs) {
    const check = pipes[0]!;
    const outside = trench.pipes.find(({ id }) => id === check.id)?.outside ?? check.inside;
    const place = leastCover(check, outside);
    if (place === null || heightOn(finished.surface, start + place.station + beyond) === null)
      continue;
    const x = xOf(view, start + place.station);
    const [top, foot] = [yOf(view, place.ground), yOf(view, place.crown)];
    covers.push(...dimensionLine([x, top], [x, foot]));
    const said = words.sheetsSections.profile.leastCover(
      length.print(place.ground - place.crown, site.units),
    );
    wishes.push({ ...wishFor(`cover ${check.id}`, said, [x, (top + foot) / 2], 5), face: "text" });
  }
  return { covers, wishes };
}

interface CoverPlace {
  station: number;
  ground: number;
  /** Top outside of the pipe, m. */
  crown: number;
}

/** Where the ground just before the trench stands least over a pipe; null beyond the survey. */
function leastCover({ stations, inside }: PipeCheck, outside: number): CoverPlace | null {
  let least: CoverPlace | null = null;
  for (const { station, ground, invert } of stations) {
    const crown = invert + (inside + outside) / 2;
    if (!Number.isFinite(ground - crown)) continue;
    if (least === null || ground - crown < least.ground - least.crown) {
      least = { station, ground, crown };
    }
  }
  return least;
}

function obstaclesOf({ finished, chain, beyond }: ProfileData, view: View): Obstacle[] {
  const surfaces = [...finished.surface, ...finished.found].flatMap((line) =>
    lineObstacles(
      lineOf(
        view,
        line.map(([s, z]) => [s - beyond, z] as const),
      ),
      0.4,
      1.5,
    ),
  );
  const pipes = chain.runs.flatMap(({ pipes, start }) =>
    lineObstacles(
      lineOf(
        view,
        pipes[0]!.stations.map(({ station, invert }) => [start + station, invert] as const),
      ),
      1.2,
      20,
    ),
  );
  return [...surfaces, ...pipes];
}
