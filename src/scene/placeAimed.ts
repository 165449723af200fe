import type { PlanPoint } from "../site/index.js";
import type { DragGround } from "./dragSnap.js";
import { mayClose, shapeOf, type Corners } from "./placing.js";
import type { Placing } from "./props.js";
import { drawingLines, snapPlace, type Snapped } from "./snap.js";

/** The next corner of what is placed, held by what is near the pointer's place. */
export function placeAimed(
  at: PlanPoint,
  placing: Placing,
  corners: Corners,
  ground: DragGround,
): Snapped {
  return snapPlace({
    ...ground,
    at,
    lines: drawingLines(corners, shapeOf(placing) === "outline"),
    close: mayClose(placing, corners) ? (corners[0] ?? null) : null,
    from: corners.at(-1) ?? null,
  });
}
