/** Spoil heaps on a plan, at their toe, with what they hold. */
import type { Estimate } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { distance, earthVolume } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Fill, Spot } from "../paper.js";
import { inRoom } from "./clip.js";
import { areaSample } from "./drawWorks.js";
import { INK, pen, TYPE } from "./pens.js";
import { RANK, WEIGHT, type PlanDrawing } from "./planDrawing.js";
import { seatsWithin } from "./seats.js";

const texts = words.sheetsPlan;

const STYLE: { pen: ReturnType<typeof pen>; fill: Fill } = {
  pen: pen(0.3, INK.black, [3, 0.8, 0.6, 0.8]),
  fill: { hatches: [{ kind: "dots", gap: 1.9, size: 0.3, color: INK.grey }] },
};

/** Draws each heap; `sized` adds how much it holds and how high it gets. */
export function drawHeaps(
  drawing: PlanDrawing,
  { units }: Site,
  { works }: Estimate,
  sized: boolean,
): void {
  for (const { name, heap } of works) {
    if (heap === undefined || heap.volume <= 0) continue;
    const pieces = drawing.area(texts.layers.heaps, heap.toe, STYLE, WEIGHT.usual);
    if (pieces.length === 0) continue;
    drawing.row(texts.legend.heap, areaSample(STYLE));
    const size = texts.heap(
      earthVolume.print(heap.volume, units),
      distance.print(heap.height, units),
    );
    const lettering = {
      ...{ lines: sized ? [name, size] : [name], size: TYPE.usual, face: "strong" as const },
    };
    const ring = (heap.toe[0] ?? []).map((place) => drawing.spot(place));
    const seats = seatsWithin(ring, lettering);
    const { middle, half } = extentOf(ring);
    // Before the names of what lies about it: those find room farther off.
    drawing.label(RANK.figures, {
      ...lettering,
      seats,
      // Where the heap's middle is off the paper a part of its foot still shows.
      ...(inRoom(drawing.frame.room, middle)
        ? { anchor: middle, clear: half + 0.8 }
        : { anchor: pieces[0]![0]!, clear: 0.8 }),
      must: true,
    });
  }
}

/** The middle of a ring on paper, and half of how far it goes. */
function extentOf(ring: readonly Spot[]): { middle: Spot; half: number } {
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
  const [west, east] = [Math.min(...xs), Math.max(...xs)];
  const [north, south] = [Math.min(...ys), Math.max(...ys)];
  const middle: Spot = [(west + east) / 2, (north + south) / 2];
  return { middle, half: Math.max(east - west, south - north) / 2 };
}
