/** Names set in a drawing so that they cover neither each other nor what is to be read. */
import type { Mark, Room, Spot } from "../paper.js";
import { placeLabels, type LabelWish, type Obstacle } from "../place.js";
import { wrapText } from "../textWidth.js";
import { INK, PENS, TEXT } from "./pens.js";

/** mm that a name is broken at. */
const BROAD = 32;

/** A name beside a place, or farther off with a line to it. The higher the priority, the nearer. */
export function wishFor(id: string, text: string, at: Spot, priority: number): LabelWish {
  return {
    id,
    lines: wrapText(text, "strong", TEXT.plain, BROAD),
    face: "strong",
    size: TEXT.plain,
    color: INK,
    halo: true,
    priority,
    at,
    gap: 1.4,
    reach: 30,
  };
}

/** The names that found room, with the lines that lead to those that stand off. */
export function namedMarks(
  wishes: readonly LabelWish[],
  obstacles: readonly Obstacle[],
  room: Room,
): Mark[] {
  return placeLabels(wishes, obstacles, room).placed.flatMap(({ marks, leader }): Mark[] =>
    leader === null
      ? [...marks]
      : [{ kind: "path", lines: [leader], closed: false, pen: PENS.thin }, ...marks],
  );
}
