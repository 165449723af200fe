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

/** What labels should leave in sight beside what they name. */
export interface InSight {
  /** Things that carry no label but should show. */
  unnamed?: readonly ScreenBox[];
  /** Long thin things such as trenches, as many little boxes along them. */
  strips?: readonly ScreenBox[];
  /** What the page lays over the scene: a label under it could not be read. */
  taken?: readonly ScreenBox[];
  /** Handles, which lie over the labels: across a figure one makes another figure of it. */
  handles?: readonly ScreenBox[];
  /** Whether a label is left out that would cover another; the first never is. */
  fewer?: boolean;
}

/**
 * Top-left corners for the labels, in the order given, the first having first choice: each takes
 * the seat about its anchor that covers least of the labels before it, of their stalks and of the
 * things to be seen, and whose own stalk crosses none; then pairs that still overlap push each other
 * apart, and all are held in the bounds. Null for a label that is left out. Pure, so the same view
 * always gives the same picture. With no room left, labels may overlap unless `fewer` are wanted.
 */
export function layLabels(
  boxes: readonly LabelBox[],
  bounds: LabelBounds,
  { unnamed = [], strips = [], taken = [], handles = [], fewer = false }: InSight = {},
): (Place | null)[] {
  const things = [...boxes.map((box) => box.thing ?? boxAbout(box.anchor, THING)), ...unnamed];
  const dots = boxes.map((box) => boxAbout(box.anchor, { width: DOT, height: DOT }));
  const stood: { box: LabelBox; place: Place; index: number }[] = [];
  boxes.forEach((box, own) => {
    const before = stood.map(({ box: { width, height }, place }) => ({ ...place, width, height }));
    const stalks = stood.map((one) => stalkOf(one.box, one.place));
    const { place, covered } = bestSeat(
      box,
      own,
      { before, stalks, things, dots, strips, taken, handles },
      bounds,
    );
    if (!fewer || covered === 0 || own === 0) stood.push({ box, place, index: own });
  });
  const shown = stood.map(({ box }) => box);
  const places = stood.map(({ place }) => place);
  for (let round = 0; round < ROUNDS; round++) {
    if (!pushApart(shown, places)) break;
    shown.forEach((box, i) => hold(places[i], box, bounds));
  }
  return boxes.map((_, own) => stood.find(({ index }) => index === own)?.place ?? null);
}

/** Both ends of the line from a label to its anchor. */
export type Stalk = readonly [Place, Place];

/** The line from the anchor to the nearest of the label at a place. */
export function stalkOf({ anchor, width, height }: LabelBox, { left, top }: Place): Stalk {
  const near = {
    left: Math.min(left + width, Math.max(left, anchor.left)),
    top: Math.min(top + height, Math.max(top, anchor.top)),
  };
  return [anchor, near];
}

/** Whether two stalks cross; those that only touch do not. */
function cross([a, b]: Stalk, [c, d]: Stalk): boolean {
  return sideOf(a, b, c) * sideOf(a, b, d) < 0 && sideOf(c, d, a) * sideOf(c, d, b) < 0;
}

function sideOf(a: Place, b: Place, c: Place): number {
  return Math.sign((b.left - a.left) * (c.top - a.top) - (b.top - a.top) * (c.left - a.left));
}

/** Whether a stalk runs through a box. */
function runsThrough([a, b]: Stalk, box: ScreenBox): boolean {
  const within = (at: Place): boolean =>
    at.left > box.left &&
    at.left < box.left + box.width &&
    at.top > box.top &&
    at.top < box.top + box.height;
  const [right, bottom] = [box.left + box.width, box.top + box.height];
  const corner = (left: number, top: number): Place => ({ left, top });
  return (
    within(a) ||
    within(b) ||
    cross([a, b], [corner(box.left, box.top), corner(right, bottom)]) ||
    cross([a, b], [corner(right, box.top), corner(box.left, bottom)])
  );
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
    { left: right + STALK, top: level - 40 },
    { left: right + STALK, top: level + 40 },
    { left: thing.left - STALK - width, top: level - 40 },
    { left: thing.left - STALK - width, top: level + 40 },
    { left: right + 60, top: level },
    { left: thing.left - 60 - width, top: level },
  ];
}

interface Others {
  /** Labels that stand already, and the lines from them to what they name. */
  before: readonly ScreenBox[];
  stalks: readonly Stalk[];
  things: readonly ScreenBox[];
  dots: readonly ScreenBox[];
  strips: readonly ScreenBox[];
  taken: readonly ScreenBox[];
  handles: readonly ScreenBox[];
}

/** What a seat costs for each px² that it covers, and for each crossing, in px² of a thing. */
const COST = {
  label: 6,
  handle: 40,
  own: 2,
  strip: 4,
  dot: 12,
  seat: 90,
  stalk: 1500,
  crossing: 2500,
};

function bestSeat(
  box: LabelBox,
  own: number,
  others: Others,
  bounds: LabelBounds,
): { place: Place; covered: number } {
  let best = { place: { left: 0, top: 0 }, covered: 0, cost: Infinity };
  const thing = others.things[own] ?? boxAbout(box.anchor, THING);
  seatsAbout(box, thing).forEach((place, seat) => {
    hold(place, box, bounds);
    const { covered, cost } = costOf(box, place, own, others);
    if (cost + seat * COST.seat < best.cost) {
      best = { place, covered, cost: cost + seat * COST.seat };
    }
  });
  return best;
}

function costOf(
  box: LabelBox,
  place: Place,
  own: number,
  { before, stalks, things, dots, strips, taken, handles }: Others,
): { covered: number; cost: number } {
  const stood: ScreenBox = { ...place, width: box.width, height: box.height };
  const wide: ScreenBox = {
    left: place.left - GAP,
    top: place.top - GAP,
    width: box.width + 2 * GAP,
    height: box.height + 2 * GAP,
  };
  const sum = (boxes: readonly ScreenBox[], over: ScreenBox): number =>
    boxes.reduce((area, other) => area + sharedArea(over, other), 0);
  const under = sum(handles, stood);
  const covered = sum(before, wide) + sum(taken, stood) + under;
  const hidden = sum(things, stood) + sharedArea(stood, things[own] ?? stood) * (COST.own - 1);
  const stalk = stalkOf(box, place);
  const crossed = stalks.filter((other) => cross(stalk, other)).length;
  const through =
    stalks.filter((other) => runsThrough(other, stood)).length +
    before.filter((other) => runsThrough(stalk, other)).length;
  const cost =
    covered * COST.label +
    under * COST.handle +
    hidden +
    sum(strips, stood) * COST.strip +
    sum(dots, stood) * COST.dot +
    crossed * COST.crossing +
    through * COST.stalk;
  return { covered, cost };
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
