/** Where an overhead line hangs, scene frame, m. */
import type { Limit } from "../site/index.js";
import { toScene, type SceneFrame, type ScenePoint } from "./frame.js";
import type { StageGround } from "./stageGround.js";

/** Whether a limit is a line on poles, by its kind as files write it. */
export function isOverhead({ kind }: Pick<Limit, "kind">): boolean {
  return /overhead|power/.test(kind);
}

/** A support of a line: where its lowest wire hangs, and the ground at its foot; null off the survey. */
export interface Support {
  wire: ScenePoint;
  foot: number | null;
}

/**
 * The supports of an overhead line, one at each corner of its path, the wire straight between them
 * and as high over the ground at each as the line's height says; it hangs level with the nearest
 * one known where the survey ends. Null without a path or a height, or wholly off the survey.
 */
export function supportsOf(
  { path, height, ...limit }: Limit,
  frame: SceneFrame,
  ground: StageGround,
): Support[] | null {
  if (path === undefined || height === undefined || !isOverhead(limit)) return null;
  const places = path.map((at) => toScene(frame, at));
  const feet = places.map(([x, y]) => ground.heightAt(x, y)?.z ?? null);
  let last = feet.find((foot) => foot !== null) ?? null;
  if (last === null) return null;
  return places.map(([x, y], i) => {
    const foot = feet[i] ?? null;
    last = foot ?? last;
    return { wire: [x, y, (last ?? 0) + height], foot };
  });
}
