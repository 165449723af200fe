/** Names in a section: what is built, pipes, slopes of walls, depths of the hole. */
import { heightOn } from "../../estimate/index.js";
import { schemeOf } from "../../estimate/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Mark, Spot } from "../paper.js";
import { lineObstacles, type LabelWish, type Obstacle } from "../place.js";
import type { CutAsk } from "./cutAsk.js";
import { textWidth } from "../textWidth.js";
import { dimensionLine } from "./dimension.js";
import { namedMarks, wishFor } from "./names.js";
import { TEXT } from "./pens.js";
import { sayRun, wallSlopes } from "./wallSlopes.js";
import { boxOf, lineOf, spotOf, xOf, yOf, type View } from "./view.js";

export function cutNames(ask: CutAsk, view: View): Mark[] {
  const depths = depthDimensions(ask, view);
  const wishes = [
    ...depths.wishes,
    ...slopeWishes(ask, view),
    ...builtWishes(ask, view),
    ...pipeWishes(ask, view),
  ];
  const box = boxOf(view);
  const room = { left: box[0], top: box[1], width: box[2], height: box[3] };
  const { layers } = words.sheetsSections;
  return [
    { kind: "group", layer: layers.dimensions, marks: depths.marks },
    { kind: "group", layer: layers.names, marks: namedMarks(wishes, obstaclesOf(ask, view), room) },
  ];
}

function slopeWishes({ site, data }: CutAsk, view: View): LabelWish[] {
  if (data.cut.work.kind === "bed") return [];
  const isPad = data.cut.work.kind === "pad";
  // The walls of a pad stay, and its fill has slopes too.
  const { surface } = isPad ? data.finished : data.dug;
  const rise = isPad ? 0.1 : 0.3;
  return wallSlopes(surface, ...data.cut.changed, rise).map(({ at, run }, i): LabelWish => {
    return {
      ...wishFor(`slope ${i}`, sayRun(run, site.units), spotOf(view, at), 9),
      face: "text",
      gap: 1.2,
    };
  });
}

/** How deep the hole of a tank is at both ends of its floor, or the highest cut of a pad. */
function depthDimensions(
  { site, data }: CutAsk,
  view: View,
): { marks: Mark[]; wishes: LabelWish[] } {
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  const { floor, work } = data.cut;
  if (work.kind === "bed") return { marks, wishes };
  floor.forEach((station, i) => {
    // The wall stands at the floor's end: read on the floor's side.
    const inside = station + (i === 0 ? 1e-4 : -1e-4);
    const ground = heightOn(data.dug.found, inside);
    const low = heightOn(data.dug.surface, inside);
    if (ground === null || low === null || ground - low < 0.05) return;
    const x = xOf(view, station);
    const [head, foot] = [yOf(view, ground), yOf(view, low)];
    marks.push(...dimensionLine([x, head], [x, foot]));
    const said = words.sheetsSections.cut.deep(length.print(ground - low, site.units));
    // Away from what stands in the hole.
    const aside = (i === 0 ? -1 : 1) * (textWidth(said, "text", TEXT.small) / 2 + 1);
    const spots = [0.3, 0.5, 0.7].map((share) => ({
      middle: [x + aside, head + (foot - head) * share] as const,
    }));
    const at: Spot = [x, (head + foot) / 2];
    const wish = wishFor(`depth ${i}`, said, at, 8);
    wishes.push({ ...wish, face: "text", size: TEXT.small, spots });
  });
  return { marks, wishes };
}

function builtWishes({ site, data }: CutAsk, view: View): LabelWish[] {
  const { finished } = data;
  const areas = [...finished.areas, ...finished.standing].filter(
    ({ kind }) => kind === "structure",
  );
  const { works } = schemeOf(site, finished.scheme);
  return [...new Set(areas.map(({ work }) => work ?? ""))].map((work) => {
    const corners = areas.filter((area) => area.work === work).flatMap(({ outline }) => outline);
    const stations = corners.map(([s]) => s);
    const heights = corners.map(([, z]) => z);
    const low = Math.min(...heights);
    const high = Math.min(view.high, Math.max(...heights));
    const middle = (Math.min(...stations) + Math.max(...stations)) / 2;
    const at = spotOf(view, [middle, (low + high) / 2]);
    const name = works.find(({ id }) => id === work)?.name ?? work;
    return { ...wishFor(`work ${work}`, name, at, 3), spots: [{ middle: at }] };
  });
}

function pipeWishes({ data }: CutAsk, view: View): LabelWish[] {
  const { pipes, pipesAlong } = data.finished;
  const across = pipes.map(({ id, name, centre }) =>
    wishFor(`across ${id}`, name, spotOf(view, centre), 2),
  );
  const along = pipesAlong.map(({ id, name, centre }) =>
    wishFor(`along ${id}`, name, spotOf(view, centre[Math.floor(centre.length / 2)]!), 2),
  );
  return [...across, ...along].map((wish) => ({
    ...wish,
    lines: [wish.lines.join(" ")],
    face: "text",
    size: TEXT.small,
  }));
}

/** mm of line that count as one stretch: a name covers several of a long leg. */
const STRETCH = 2;

function inStretches(line: readonly Spot[]): Spot[] {
  return line.flatMap((to, i): Spot[] => {
    const from = line[i - 1];
    if (from === undefined) return [to];
    const count = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / STRETCH));
    return Array.from({ length: count }, (_, k): Spot => {
      const share = (k + 1) / count;
      return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    });
  });
}

function obstaclesOf({ data }: CutAsk, view: View): Obstacle[] {
  const { finished, dug, cut } = data;
  const surfaces = [...finished.surface, ...dug.surface, ...finished.found];
  const depths = cut.floor.flatMap((station) => {
    const [x] = spotOf(view, [station, view.low]);
    const upright: Spot[] = [
      [x, view.top],
      [x, yOf(view, view.low)],
    ];
    return lineObstacles(upright, 0.4, 1);
  });
  const levels = data.levels.flatMap(({ height, from }) =>
    lineObstacles(
      [
        [xOf(view, from), yOf(view, height)],
        [xOf(view, view.to), yOf(view, height)],
      ],
      0.3,
      0.8,
    ),
  );
  const built = [...finished.areas, ...finished.standing].filter(
    ({ kind }) => kind === "structure",
  );
  return [
    ...built.flatMap(({ outline }) => {
      const ring = lineOf(view, outline);
      return lineObstacles(inStretches([...ring, ...ring.slice(0, 1)]), 0.4, 3);
    }),
    ...surfaces.flatMap((line) => lineObstacles(inStretches(lineOf(view, line)), 0.4, 1.5)),
    ...finished.pipesAlong.flatMap(({ centre }) =>
      lineObstacles(inStretches(lineOf(view, centre)), 1, 1.5),
    ),
    ...finished.pipes.flatMap(({ centre }) =>
      lineObstacles([spotOf(view, centre), spotOf(view, centre)], 3, 20),
    ),
    ...depths,
    ...levels,
  ];
}
