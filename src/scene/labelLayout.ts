/** A label to be placed: where it points and how big it is, CSS px from the scene's top left. */
export interface LabelBox {
  anchor: { left: number; top: number };
  width: number;
  height: number;
}

/** px that the labels must stay within. */
export interface LabelBounds {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const GAP = 6;
const STALK = 30;
const ROUNDS = 40;

/**
 * Top-left corners for the labels, in the order given: each starts a little above its anchor, then
 * overlapping pairs push each other apart along the shorter way, and all are held in the bounds.
 * Pure, so the same view always gives the same picture. With no room left, labels may overlap.
 */
export function layLabels(
  boxes: readonly LabelBox[],
  bounds: LabelBounds,
): { left: number; top: number }[] {
  const places = boxes.map((box) => ({
    left: box.anchor.left - box.width / 2,
    top: box.anchor.top - box.height - STALK,
  }));
  for (let round = 0; round < ROUNDS; round++) {
    boxes.forEach((box, i) => hold(places[i], box, bounds));
    if (!pushApart(boxes, places)) break;
  }
  boxes.forEach((box, i) => hold(places[i], box, bounds));
  return places;
}

type Place = { left: number; top: number };

function hold(place: Place | undefined, box: LabelBox, bounds: LabelBounds): void {
  if (place === undefined) return;
  place.left = Math.max(bounds.left, Math.min(bounds.right - box.width, place.left));
  place.top = Math.max(bounds.top, Math.min(bounds.bottom - box.height, place.top));
}

/** One round of pushing; true when any pair still overlapped. */
function pushApart(boxes: readonly LabelBox[], places: Place[]): boolean {
  let moved = false;
  for (let i = 0; i < boxes.length; i++) {
    for (let j = i + 1; j < boxes.length; j++) {
      moved = pushPair(boxes[i], boxes[j], places[i], places[j]) || moved;
    }
  }
  return moved;
}

function pushPair(
  a: LabelBox | undefined,
  b: LabelBox | undefined,
  at: Place | undefined,
  to: Place | undefined,
): boolean {
  if (a === undefined || b === undefined || at === undefined || to === undefined) return false;
  const dx = to.left + b.width / 2 - at.left - a.width / 2;
  const dy = to.top + b.height / 2 - at.top - a.height / 2;
  const overX = (a.width + b.width) / 2 + GAP - Math.abs(dx);
  const overY = (a.height + b.height) / 2 + GAP - Math.abs(dy);
  if (overX <= 0.01 || overY <= 0.01) return false;
  if (overX < overY) {
    const push = ((dx < 0 ? -1 : 1) * overX) / 2;
    at.left -= push;
    to.left += push;
  } else {
    const push = ((dy < 0 ? -1 : 1) * overY) / 2;
    at.top -= push;
    to.top += push;
  }
  return true;
}
