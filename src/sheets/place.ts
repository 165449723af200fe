/** Labels set on paper so that none covers another, nor what must be read. */
import RBush from "rbush";
import { lineQuad, type Quad } from "./box.js";
import type { Face, Room, Spot, TextMark } from "./paper.js";
import { overlap, stripQuad } from "./quads.js";
import { textWidth } from "./textWidth.js";

/** What wants a label, at a point or along a line. */
export interface LabelWish {
  /** Comes back with the label, or in the list of those that found no room. */
  id: string;
  /** One line or several, from the top down. */
  lines: readonly string[];
  face: Face;
  /** Height of the letters' body, mm. */
  size: number;
  color?: string;
  halo?: boolean;
  /** The higher, the sooner it is set. */
  priority: number;
  /** What the label names: it stands beside this point, `gap` mm off. */
  at: Spot;
  gap: number;
  /**
   * Farther places, with a line that leads to `at`, up to so many mm off; 0 for none. Without a
   * `spots` list the label is tried to the right, left, above, below and at the corners first.
   */
  reach: number;
  /** Places of the wisher's own, tried in this order before any other; `turn` in degrees clockwise. */
  spots?: readonly { middle: Spot; turn?: number }[];
  /** Only `spots` and nothing else. */
  onlySpots?: boolean;
  /** What no leader of this label crosses where another place is to be had: it would name that instead. */
  shun?: readonly Quad[];
}

/** Something that labels must not cover (`weight` Infinity) or should not (the cost of covering it). */
export interface Obstacle {
  quad: Quad;
  weight: number;
  /** Letters: no leader crosses them. What is no text a leader may cross, though it had better not. */
  text?: boolean;
}

export interface PlacedLabel {
  id: string;
  marks: readonly TextMark[];
  /** From the named point to the label's edge, where the label stands off. */
  leader: readonly [Spot, Spot] | null;
}

export interface Placement {
  placed: readonly PlacedLabel[];
  /** Ids of wishes that found no room: list them in a table instead. */
  left: readonly string[];
}

interface Entry {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
  quad: Quad;
  weight: number;
  text: boolean;
}

interface Candidate {
  middle: Spot;
  turn: number;
  /** What the place costs by itself: the first is the best. */
  cost: number;
  leads: boolean;
}

/** Between the base lines of a label's lines, in bodies. */
const LEADING = 1.15;
/** What a place with a leader costs, besides its mm. */
const FAR = 6;
/** Paper kept free between labels, mm. */
const APART = 0.3;
/** Paper that had better be free about blocks and strong names, mm, and what it costs: else two read as one. */
const BLOCK = 2.2;
const CLOSE = 8;

/**
 * Sets labels greedily, the most important first, each where it covers the least; labels never
 * cover each other, nor an obstacle of infinite weight, nor leave `room`.
 * @param room left, top, width, height in mm
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  obstacles: readonly Obstacle[],
  room: Room,
): Placement {
  const taken = new RBush<Entry>();
  taken.load(obstacles.map(({ quad, weight, text }) => entryOf(quad, weight, text ?? false)));
  const placed: PlacedLabel[] = [];
  const left: string[] = [];
  const inOrder = [...wishes].sort((a, b) => b.priority - a.priority);
  for (const wish of inOrder) {
    const label = setLabel(wish, taken, room);
    if (label === null) left.push(wish.id);
    else placed.push(label);
  }
  return { placed, left };
}

function setLabel(wish: LabelWish, taken: RBush<Entry>, room: Room): PlacedLabel | null {
  const size = labelSize(wish);
  const among = (candidates: readonly Candidate[], than: Choice | null): Choice | null =>
    candidates.reduce<Choice | null>((best, candidate) => {
      const most = best?.cost ?? Infinity;
      return choiceOf(wish, size, candidate, most, taken, room) ?? best;
    }, than);
  const near = among(nearPlaces(wish, size), null);
  const farther = wish.onlySpots === true ? [] : fartherPlaces(wish, size, near?.cost ?? Infinity);
  const best = among(farther, near);
  return best === null ? null : taking(wish, size, best, taken);
}

/** A place with what it costs in all. */
interface Choice {
  cost: number;
  candidate: Candidate;
  leader: [Spot, Spot] | null;
}

/** A place, if the label may stand there and that costs less than `most`. */
function choiceOf(
  wish: LabelWish,
  size: Size,
  candidate: Candidate,
  most: number,
  taken: RBush<Entry>,
  room: Room,
): Choice | null {
  let { cost } = candidate;
  if (cost >= most) return null;
  const quads = quadsAt(wish, size, candidate);
  if (!quads.every((quad) => quad.every((corner) => within(corner, room)))) return null;
  for (const quad of quads) cost += weightUnder(quad, taken, most - cost);
  if (cost >= most) return null;
  const leader = candidate.leads ? leaderTo(wish, quads) : null;
  if (leader !== null) {
    cost += weightCrossed(leader, wish.at, taken, most - cost) + weightShunned(leader, wish);
  }
  return cost < most ? { cost, candidate, leader } : null;
}

/** The label at the place chosen for it, which from now on is taken. */
function taking(
  wish: LabelWish,
  size: Size,
  { candidate, leader }: Choice,
  taken: RBush<Entry>,
): PlacedLabel {
  for (const quad of quadsAt(wish, size, candidate)) taken.insert(entryOf(quad, Infinity, true));
  if (wish.lines.length > 1 || (wish.face === "strong" && wish.reach > 0)) {
    for (const quad of quadsAt(wish, size, candidate, BLOCK)) {
      taken.insert(entryOf(quad, CLOSE, false));
    }
  }
  if (leader !== null) taken.insert(entryOf(stripQuad(...leader, 0.2), Infinity, false));
  return { id: wish.id, marks: marksAt(wish, size, candidate), leader };
}

/** Of a wish's lines, mm: all together, and how wide each is. */
interface Size {
  width: number;
  height: number;
  widths: readonly number[];
}

function labelSize({ lines, face, size }: LabelWish): Size {
  const widths = lines.map((text) => textWidth(text, face, size));
  const height = size * (1 + LEADING * (lines.length - 1));
  return { width: Math.max(0, ...widths), height, widths };
}

const SIDES: readonly Spot[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
];

/** The wisher's own places, and those close about the point. */
function nearPlaces(wish: LabelWish, { width, height }: Size): Candidate[] {
  const own = (wish.spots ?? []).map(({ middle, turn }, i) => ({
    middle,
    turn: turn ?? 0,
    cost: 0.2 * i,
    leads: false,
  }));
  if (wish.onlySpots === true) return own;
  const [x, y] = wish.at;
  const beside = SIDES.map(([dx, dy], i): Candidate => {
    const off = dx !== 0 && dy !== 0 ? wish.gap * Math.SQRT1_2 : wish.gap;
    return {
      middle: [x + dx * (width / 2 + off), y + dy * (height / 2 + off)],
      turn: 0,
      cost: 1 + 0.2 * i + 0.2 * own.length,
      leads: false,
    };
  });
  return [...own, ...beside];
}

/** In rings around the point, sixteen to a ring, as far out as may cost less than `most`. */
function fartherPlaces(wish: LabelWish, { width, height }: Size, most: number): Candidate[] {
  const farther: Candidate[] = [];
  const reach = Math.min(wish.reach, most - FAR);
  const [x, y] = wish.at;
  for (let off = wish.gap + wish.size * 1.2; off <= reach; off += wish.size) {
    for (let i = 0; i < 16; i++) {
      const angle = ((i + 0.5) * Math.PI) / 8;
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      farther.push({
        middle: [x + dx * (off + width / 2), y + dy * (off + height / 2)],
        turn: 0,
        cost: FAR + off,
        leads: true,
      });
    }
  }
  return farther;
}

/** Base lines of a label's lines whose middle is at a place, turned about it. */
function baseLines({ lines, size }: LabelWish, { height }: Size, place: Candidate): Spot[] {
  const { middle, turn } = place;
  const angle = (turn * Math.PI) / 180;
  return lines.map((_, i): Spot => {
    // The box of a line is taken as 0.76 above and 0.22 below its base line.
    const down = -height / 2 + size * (0.77 + LEADING * i);
    return [middle[0] - down * Math.sin(angle), middle[1] + down * Math.cos(angle)];
  });
}

/** The paper that each line takes, with what is kept free about it. */
function quadsAt(wish: LabelWish, size: Size, place: Candidate, air = APART): Quad[] {
  const box = { size: wish.size, turn: place.turn };
  return baseLines(wish, size, place).map((at, i) =>
    lineQuad({ ...box, at, width: size.widths[i]! }, air),
  );
}

function marksAt(wish: LabelWish, labelled: Size, place: Candidate): TextMark[] {
  const { lines, face, size, color, halo } = wish;
  return baseLines(wish, labelled, place).map((at, i): TextMark => ({
    ...{ kind: "text", at, text: lines[i]!, face, size, anchor: "middle" },
    ...(place.turn === 0 ? {} : { turn: place.turn }),
    ...(color === undefined ? {} : { color }),
    ...(halo === undefined ? {} : { halo }),
  }));
}

function within([x, y]: Spot, room: Room): boolean {
  return (
    x >= room.left && x <= room.left + room.width && y >= room.top && y <= room.top + room.height
  );
}

/** From beside the named point to the nearest place on the label's box, a little short of it. */
function leaderTo({ at, gap }: LabelWish, quads: readonly Quad[]): [Spot, Spot] {
  const corners = quads.flat();
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const x = clamp(at[0], Math.min(...xs), Math.max(...xs));
  const y = clamp(at[1], Math.min(...ys), Math.max(...ys));
  const length = Math.hypot(x - at[0], y - at[1]);
  const along = (off: number): Spot =>
    length === 0
      ? at
      : [at[0] + ((x - at[0]) * off) / length, at[1] + ((y - at[1]) * off) / length];
  return [along(Math.min(0.5 * gap, length / 3)), along(Math.max(length / 2, length - 0.3))];
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/** The weight of what a quad covers; once that reaches `most`, more is not asked. */
function weightUnder(quad: Quad, taken: RBush<Entry>, most: number): number {
  let sum = 0;
  for (const entry of taken.search(entryOf(quad, 0, false))) {
    // The search goes by boxes; turned quads in them may still be apart.
    if (entry.weight > 0 && overlap(quad, entry.quad)) sum += entry.weight;
    if (sum >= most) return Infinity;
  }
  return sum;
}

/** From this weight on what a leader crosses is a symbol, which it would seem to lead to. */
const SYMBOL = 30;
/** What crossing one costs. */
const THROUGH = 12;

/** Leaders cross lines where they must, each as one, symbols unwillingly but for their own, no letters. */
function weightCrossed(
  leader: readonly [Spot, Spot],
  [x, y]: Spot,
  taken: RBush<Entry>,
  most: number,
): number {
  const [strip, beside] = [stripQuad(...leader, 0.2), stripQuad(...leader, 1.2)];
  let sum = 0;
  for (const { quad, text, weight, ...box } of taken.search(entryOf(beside, 0, false))) {
    const isSymbol = weight >= SYMBOL && weight < Infinity;
    if (!overlap(isSymbol ? beside : strip, quad)) continue;
    const isOwn = x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
    if (text) sum = Infinity;
    else if (isSymbol && !isOwn) sum += THROUGH;
    else sum += Math.min(weight, 1);
    if (sum >= most) return Infinity;
  }
  return sum;
}

/** Of crossing what a leader shuns: dearer than any place within reach. */
const SHUNNED = 100;

function weightShunned(leader: readonly [Spot, Spot], { shun = [] }: LabelWish): number {
  const strip = stripQuad(...leader, 0.2);
  return shun.some((quad) => overlap(strip, quad)) ? SHUNNED : 0;
}

function entryOf(quad: Quad, weight: number, text: boolean): Entry {
  const xs = quad.map(([x]) => x);
  const ys = quad.map(([, y]) => y);
  return {
    minX: Math.min(...xs),
    minY: Math.min(...ys),
    maxX: Math.max(...xs),
    maxY: Math.max(...ys),
    quad,
    weight,
    text,
  };
}

/** A line as obstacles, a box for each leg. @param width of the strip kept free, mm */
export function lineObstacles(
  line: readonly Spot[],
  width: number,
  weight: number,
  closed = false,
): Obstacle[] {
  const ends = closed ? [...line.slice(1), line[0]!] : line.slice(1);
  return ends.map((to, i) => ({ quad: stripQuad(line[i]!, to, width), weight }));
}
