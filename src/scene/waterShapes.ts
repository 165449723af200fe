/** Shapes of water on the ground, in the scene's frame: arrows on its ways, pools, the slope's cells. */
import type { PlanPoint } from "../site/index.js";
import type { ScenePoint } from "./frame.js";
import type { StageGround } from "./stageGround.js";

/** m that shapes are held over the ground, so that they do not flicker with it. */
const LIFT = 0.06;

/** Arrow heads along a way, one every `every` m, their arms `size` m long: pairs of segment ends. */
export function arrowHeads(path: readonly ScenePoint[], every: number, size: number): Float32Array {
  const ends: number[] = [];
  let left = every / 2;
  for (let i = 0; i + 1 < path.length; i++) {
    const [a, b] = [path[i]!, path[i + 1]!];
    const run = Math.hypot(b[0] - a[0], b[1] - a[1]);
    for (; run > 0 && left <= run; left += every) {
      const share = left / run;
      const along = (k: 0 | 1 | 2): number => b[k] - a[k];
      const tip = [
        a[0] + share * along(0),
        a[1] + share * along(1),
        a[2] + share * along(2),
      ] as const;
      const back = size / run;
      for (const side of [0.6, -0.6]) {
        ends.push(
          tip[0] - back * (along(0) + side * along(1)),
          tip[1] - back * (along(1) - side * along(0)),
          tip[2] - back * along(2),
          ...tip,
        );
      }
    }
    left -= run;
  }
  return Float32Array.from(ends);
}

/** Corners of a cell's edge. */
const CORNERS = 10;

/** Round cells laid on the ground, `radius` m: x y z of three corners for each triangle. */
export function cellsOn(
  places: readonly PlanPoint[],
  radius: number,
  ground: StageGround,
): Float32Array {
  const out: number[] = [];
  for (const [x, y] of places) {
    const middle = ground.heightAt(x, y)?.z;
    if (middle === undefined) continue;
    const rim = Array.from({ length: CORNERS }, (_, i): ScenePoint => {
      const turn = (2 * Math.PI * i) / CORNERS;
      const [rx, ry] = [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
      return [rx, ry, (ground.heightAt(rx, ry)?.z ?? middle) + LIFT];
    });
    rim.forEach((a, i) => out.push(x, y, middle + LIFT, ...a, ...rim[(i + 1) % CORNERS]!));
  }
  return Float32Array.from(out);
}

/** The surface of a pool (x y of triangles, site coordinates) at its level: x y z of the corners. */
export function poolOn(
  { surface, level }: { surface: readonly number[]; level: number },
  origin: ScenePoint,
): Float32Array {
  const out: number[] = [];
  for (let i = 0; i + 1 < surface.length; i += 2) {
    out.push(surface[i]! - origin[0], surface[i + 1]! - origin[1], level - origin[2] + LIFT / 2);
  }
  return Float32Array.from(out);
}
