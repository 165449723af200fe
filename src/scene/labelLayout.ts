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

type Place = { left: number; top: number };
type Box = Place & { width: number; height: number };

const GAP = 6;
const ROUNDS = 40;

/** Where a label may first stand about its anchor: shares of its size, and px of stalk. */
const SEATS: readonly (readonly [across: number, up: number, stalkX: number, stalkY: number])[] = [
  [-0.5, -1, 0, -36],
  [-0.5, -1, 0, -66],
  [0, -1, 22, -22],
  [-1, -1, -22, -22],
  [0, -0.5, 40, 0],
  [-1, -0.5, -40, 0],
  [-0.5, 0, 0, 34],
  [0, 0, 24, 26],
  [-1, 0, -24, 26],
];

/** What stands at an anchor and should not be covered, px. */
const THING = { width: 70, height: 44 };

/**
 * Top-left corners for the labels, in the order given, the first having first choice: each takes
 * the seat about its anchor that covers least of the labels before it and of the things pointed at,
 * then pairs that still overlap push each other apart, and all are held in the bounds. Pure, so the
 * same view always gives the same picture. With no room left, labels may overlap.
 */
export function layLabels(boxes: readonly LabelBox[], bounds: LabelBounds): Place[] {
  const things = boxes.map((box) => thingAt(box.anchor));
  const places: Place[] = [];
  boxes.forEach((box, i) => {
    const before = places.map((at, k) => ({ ...at, ...sizeOf(boxes[k]) }));
    places.push(bestSeat(box, i, before, things, bounds));
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

function thingAt(anchor: Place): Box {
  return {
    left: anchor.left - THING.width / 2,
    top: anchor.top - THING.height / 2,
    ...THING,
  };
}

function bestSeat(
  box: LabelBox,
  own: number,
  before: readonly Box[],
  things: readonly Box[],
  bounds: LabelBounds,
): Place {
  let best: { place: Place; cost: number } = { place: { left: 0, top: 0 }, cost: Infinity };
  SEATS.forEach(([across, up, stalkX, stalkY], seat) => {
    const place = {
      left: box.anchor.left + across * box.width + stalkX,
      top: box.anchor.top + up * box.height + stalkY,
    };
    hold(place, box, bounds);
    const stood: Box = { ...place, width: box.width, height: box.height };
    const covered = before.reduce((sum, other) => sum + overlap(stood, other), 0);
    const hidden = things.reduce(
      (sum, thing, i) => sum + overlap(stood, thing) * (i === own ? 1.5 : 1),
      0,
    );
    const cost = covered * 4 + hidden + seat * 60;
    if (cost < best.cost) best = { place, cost };
  });
  return best.place;
}

/** px² that two boxes share. */
function overlap(a: Box, b: Box): number {
  const across = Math.min(a.left + a.width, b.left + b.width) - Math.max(a.left, b.left);
  const down = Math.min(a.top + a.height, b.top + b.height) - Math.max(a.top, b.top);
  return across > 0 && down > 0 ? across * down : 0;
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
