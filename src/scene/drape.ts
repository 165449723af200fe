import type { PlanPoint } from "../site/index.js";
import type { ScenePoint } from "./frame.js";
import type { StageGround } from "./stageGround.js";
import { subdivide } from "../estimate/index.js";

/**
 * A path (scene plane) laid on the ground, `lift` m above it, with places added every `most` m.
 * Beyond the survey the last known height is kept.
 */
export function drape(
  path: readonly PlanPoint[],
  ground: StageGround,
  lift: number,
  closed: boolean,
  most = 0.5,
): ScenePoint[] {
  const first = path[0];
  if (first === undefined) return [];
  const fine = subdivide(closed ? [...path, first] : path, most);
  let last = fine.map(([x, y]) => ground.heightAt(x, y)?.z).find((z) => z !== undefined) ?? 0;
  return fine.map(([x, y]) => {
    last = ground.heightAt(x, y)?.z ?? last;
    return [x, y, last + lift];
  });
}
