/** Where a place of the site lies on paper: north up, to scale. */
import type { PlanPoint } from "../../site/index.js";
import type { Room, Spot } from "../paper.js";

/** A plan on paper. */
export interface PlanFrame {
  /** Box that the plan fills, mm. */
  room: Room;
  /** What lies at the room's middle, m. */
  middle: PlanPoint;
  /** n of 1 : n. */
  scale: number;
}

/** mm on paper of a length in m. */
export function mmOf({ scale }: Pick<PlanFrame, "scale">, metres: number): number {
  return (metres * 1000) / scale;
}

/** m of a length in mm on paper. */
export function metresOf({ scale }: Pick<PlanFrame, "scale">, mm: number): number {
  return (mm * scale) / 1000;
}

/** The spot on paper of a place in plan. */
export function onPaper(frame: PlanFrame, [x, y]: readonly [number, number]): Spot {
  const { room, middle } = frame;
  return [
    room.left + room.width / 2 + mmOf(frame, x - middle[0]),
    room.top + room.height / 2 - mmOf(frame, y - middle[1]),
  ];
}

/** The corners of what a frame shows of the upright rectangle about places, m; both face north. */
export function shownOf(
  { room, middle, scale }: PlanFrame,
  places: readonly PlanPoint[],
): PlanPoint[] {
  const shown = (axis: 0 | 1, long: number): [number, number] => {
    const half = metresOf({ scale }, long) / 2;
    const along = places.map((place) => place[axis]);
    return [
      Math.max(middle[axis] - half, Math.min(...along)),
      Math.min(middle[axis] + half, Math.max(...along)),
    ];
  };
  const [west, east] = shown(0, room.width);
  const [south, north] = shown(1, room.height);
  if (west >= east || south >= north) return [];
  return [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
  ];
}
