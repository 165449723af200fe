import type { Corners, PlanPoint } from "../site/index.js";
import type { DragHold, Press } from "./dragging.js";
import { cornerLines, snapMove, snapPlace, type SnapContours, type SnapTarget } from "./snap.js";

/** What something that is dragged is held by: taken as it was when the drag began. */
export interface DragGround {
  targets: readonly SnapTarget[];
  contours: SnapContours | null;
  reach: number;
  step: number;
}

/**
 * How a press is held while it is dragged; null for turning. `corners` are those of the thing that
 * is pressed, `own` the places of it that go on others' corners and edges when it is moved whole.
 */
export function dragHold(
  press: Press,
  corners: Corners | null,
  own: readonly PlanPoint[],
  ground: DragGround,
): DragHold | null {
  const { grip, place } = press;
  if (grip.part === "body") {
    return (by) => snapMove({ ...ground, own, place, by });
  }
  const dragged = corners === null ? null : cornersAs(press, corners, place);
  if (dragged === null || corners === null) return null;
  const lines = cornerLines(dragged.places, corners.closed, dragged.index);
  return (by) => {
    const at: PlanPoint = [place[0] + by[0], place[1] + by[1]];
    const held = snapPlace({ ...ground, at, lines, close: null, from: null });
    return { ...held, by: [held.at[0] - place[0], held.at[1] - place[1]] };
  };
}

/** The corners with the dragged one at a place, a new one put in; null when no corner is dragged. */
function cornersAs(
  { grip }: Press,
  { places }: Corners,
  at: PlanPoint,
): { places: PlanPoint[]; index: number } | null {
  if (grip.part === "corner") return { places: places.with(grip.index, at), index: grip.index };
  if (grip.part !== "side") return null;
  return { places: places.toSpliced(grip.side + 1, 0, at), index: grip.side + 1 };
}
