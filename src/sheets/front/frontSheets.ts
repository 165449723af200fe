/** The sheets before the drawings; they tell of all others, so they are made last. */
import type { RoomOf, SheetContent, SheetJob } from "../paper.js";
import { coverSheets, type Listed } from "./cover.js";
import { findingSheets } from "./findings.js";
import { permitSheets } from "./permit.js";

/** The list of sheets may itself push the cover on to one more sheet: this settles at once or soon. */
const MOST_ROUNDS = 6;

/** Cover, permit's list and findings, given the drawings that come after them. */
export function frontSheets(
  job: SheetJob,
  room: RoomOf,
  body: readonly SheetContent[],
): SheetContent[] {
  let front: SheetContent[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const listed = [...front, ...body].map(({ id, title, partial = false }, i): Listed => ({
      id,
      title,
      partial,
      number: i + 1,
    }));
    const before = front.length;
    front = [
      ...coverSheets(job, room([]), listed),
      ...permitSheets(job, room, listed),
      ...findingSheets(job, room),
    ];
    if (round > 0 && front.length === before) return front;
  }
  throw new Error("the list of sheets did not settle");
}
