import { sharedArea, type ScreenBox } from "./spotLayout.js";

/** A label to be placed: where it points and how big it is, CSS px from the scene's top left. */
export interface LabelBox {
  anchor: { left: number; top: number };
  width: number;
  height: number;
  /** What the label names, as it shows; a little box about the anchor where this is left out. */
  thing?: ScreenBox;
}

/** px that the labels must stay within. */
export interface LabelBounds {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

type Place = { left: number; top: number };

const GAP = 6;
const ROUNDS = 40;
/** px of stalk between a label and the thing it names. */
const STALK = 16;

/** px about an anchor that count as the thing, where the label was given no thing. */
const THING = { width: 70, height: 44 };
/** px about an anchor's dot that no label should cover. */
const DOT = 16;

/**
 * Top-left corners for the labels, in the order given, the first having first choice: each takes
 * the seat about its anchor that covers least of the labels before it and of the things pointed at,
 * then pairs that still overlap push each other apart, and all are held in the bounds. `unnamed` are
 * things that carry no label but should show. Pure, so the same view always gives the same picture.
 * With no room left, labels may overlap.
 */
export function layLabels(
  boxes: readonly LabelBox[],
  bounds: LabelBounds,
  unnamed: readonly ScreenBox[] = [],
): Place[] {
  const things = [...boxes.map((box) => box.thing ?? boxAbout(box.anchor, THING)), ...unnamed];
  const dots = boxes.map((box) => boxAbout(box.anchor, { width: DOT, height: DOT }));
  const places: Place[] = [];
  boxes.forEach((box, i) => {
    const before = places.map((at, k) => ({ ...at, ...sizeOf(boxes[k]) }));
    places.push(bestSeat(box, i, { before, things, dots }, bounds));
  });
  for (let round = 0; round < ROUNDS; round++) {
    if (!pushApart(boxes, places)) break;
    boxes.forEach((box, i) => hold(places[i], box, bounds));
  }
  return places;
}

function sizeOf(box: LabelBox | undefined): { width: number; height: number } {
  return { width: box?.width ?? 0, height: box?.height ?? 0 };
}

function boxAbout(at: Place, size: { width: number; height: number }): ScreenBox {
  return { left: at.left - size.width / 2, top: at.top - size.height / 2, ...size };
}

/** Where a label may stand about its thing, best first: above it, then beside it, then below. */
function seatsAbout(box: LabelBox, thing: ScreenBox): Place[] {
  const { width, height, anchor } = box;
  const [right, bottom] = [thing.left + thing.width, thing.top + thing.height];
  const above = thing.top - STALK - height;
  const middle = anchor.left - width / 2;
  const level = anchor.top - height / 2;
  return [
    { left: middle, top: above },
    { left: anchor.left - width * 0.2, top: above },
    { left: anchor.left - width * 0.8, top: above },
    { left: middle, top: above - 30 },
    { left: anchor.left + 12, top: above },
    { left: anchor.left - 12 - width, top: above },
    { left: right + STALK, top: level },
    { left: thing.left - STALK - width, top: level },
    { left: right + STALK / 2, top: above + height / 2 },
    { left: thing.left - STALK / 2 - width, top: above + height / 2 },
    { left: middle, top: above - 62 },
    { left: middle, top: bottom + STALK },
    { left: anchor.left + 12, top: bottom + STALK },
    { left: anchor.left - 12 - width, top: bottom + STALK },
    { left: anchor.left + 12, top: above - 62 },
    { left: anchor.left - 12 - width, top: above - 62 },
    { left: middle, top: above - 100 },
    { left: middle, top: bottom + STALK + 40 },
  ];
}

interface Others {
  /** Labels that stand already. */
  before: readonly ScreenBox[];
  things: readonly ScreenBox[];
  dots: readonly ScreenBox[];
}

function bestSeat(box: LabelBox, own: number, others: Others, bounds: LabelBounds): Place {
  const { before, things, dots } = others;
  let best: { place: Place; cost: number } = { place: { left: 0, top: 0 }, cost: Infinity };
  const thing = things[own] ?? boxAbout(box.anchor, THING);
  seatsAbout(box, thing).forEach((place, seat) => {
    hold(place, box, bounds);
    const stood: ScreenBox = { ...place, width: box.width, height: box.height };
    const wide: ScreenBox = {
      left: place.left - GAP,
      top: place.top - GAP,
      width: box.width + 2 * GAP,
      height: box.height + 2 * GAP,
    };
    const covered = before.reduce((sum, other) => sum + sharedArea(wide, other), 0);
    const hidden = things.reduce(
      (sum, other, i) => sum + sharedArea(stood, other) * (i === own ? 2 : 1),
      0,
    );
    const dotted = dots.reduce((sum, dot) => sum + sharedArea(stood, dot), 0);
    const cost = covered * 6 + hidden + dotted * 12 + seat * 90;
    if (cost < best.cost) best = { place, cost };
  });
  return best.place;
}

function hold(place: Place | undefined, box: LabelBox, bounds: LabelBounds): void {
  if (place === undefined) return;
  place.left = Math.max(bounds.left, Math.min(bounds.right - box.width, place.left));
  place.top = Math.max(bounds.top, Math.min(bounds.bottom - box.height, place.top));
}

/** One round of pushing; true when any pair overlapped. */
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
