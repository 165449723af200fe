import { toScene, type ScenePoint } from "./frame.js";
import type { Selection } from "./props.js";
import {
  holeMouth,
  probeEnds,
  standingBodies,
  workAnchor,
  type SceneContents,
} from "./sceneTargets.js";
import { workOutline } from "../estimate/index.js";

/** Places about a thing that must show when the view turns to it, scene frame; none for none. */
export function pickedPlaces(contents: SceneContents, selection: Selection): ScenePoint[] {
  const { frame, site } = contents;
  if (selection.kind === "probe") {
    const ends = probeEnds(contents, selection.id);
    return ends === null ? [] : [ends.foot, ends.top];
  }
  if (selection.kind === "point") {
    const point = site.survey.points.find(({ id }) => id === selection.id);
    if (point === undefined) return [];
    const [x, y] = toScene(frame, [point.x, point.y]);
    return [[x, y, point.z - frame.origin[2]]];
  }
  const work = contents.works.find(({ id }) => id === selection.id);
  if (work === undefined) return [];
  // A tank is looked at with its hole.
  const edge = work.kind === "tank" ? holeMouth(work, contents) : workOutline(work);
  const outline = (edge ?? []).map((at) => toScene(frame, at));
  const body = standingBodies(contents).find((one) => one.work.id === work.id)?.prism;
  return [
    workAnchor(work, contents),
    ...outline.flatMap(([x, y]): ScenePoint[] => {
      const ground = contents.found.heightAt(x, y);
      const now = contents.ground.heightAt(x, y);
      return [ground, now].flatMap((hit): ScenePoint[] => (hit === null ? [] : [[x, y, hit.z]]));
    }),
    ...(body?.outline ?? []).flatMap(([x, y]): ScenePoint[] => [
      [x, y, body?.bottom ?? 0],
      [x, y, body?.top ?? 0],
    ]),
  ];
}

/** The middle of places and half their spread in plan and upwards, m. */
export function spreadOf(places: readonly ScenePoint[]): { middle: ScenePoint; half: ScenePoint } {
  const ends = ([0, 1, 2] as const).map((axis) => {
    const all = places.map((place) => place[axis]);
    return [Math.min(...all), Math.max(...all)] as const;
  });
  const of = (take: (low: number, high: number) => number): ScenePoint => {
    const [x, y, z] = ends.map(([low, high]) => take(low, high));
    return [x ?? 0, y ?? 0, z ?? 0];
  };
  return { middle: of((low, high) => (low + high) / 2), half: of((low, high) => (high - low) / 2) };
}

/** Corners of a box about places: `share` larger than they need, and at least `least` m each way. */
export function roomAbout(
  places: readonly ScenePoint[],
  share: number,
  least: number,
): ScenePoint[] {
  const { middle, half } = spreadOf(places);
  const [x, y, z] = half.map((size) => Math.max(least, size * share)) as [number, number, number];
  return [-1, 1].flatMap((i) =>
    [-1, 1].flatMap((j) =>
      [-1, 1].map((k): ScenePoint => [middle[0] + i * x, middle[1] + j * y, middle[2] + k * z]),
    ),
  );
}
