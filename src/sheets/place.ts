/** Labels set on paper so that none covers another, nor what must be read. */
import RBush from "rbush";
import { textQuad, type Quad } from "./box.js";
import type { Face, Spot, TextMark } from "./paper.js";

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
/** Paper kept free between labels, mm. */
const APART = 0.3;

/**
 * Sets labels greedily, the most important first, each where it covers the least; labels never
 * cover each other, nor an obstacle of infinite weight, nor leave `room`.
 * @param room left, top, width, height in mm
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  obstacles: readonly Obstacle[],
  room: { left: number; top: number; width: number; height: number },
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

function setLabel(
  wish: LabelWish,
  taken: RBush<Entry>,
  room: { left: number; top: number; width: number; height: number },
): PlacedLabel | null {
  let best: { cost: number; marks: TextMark[]; leader: [Spot, Spot] | null } | null = null;
  for (const candidate of candidatesOf(wish)) {
    if (best !== null && candidate.cost >= best.cost) continue;
    const marks = marksAt(wish, candidate);
    const quads = marks.map((mark) => textQuad(mark, APART));
    if (!quads.every((quad) => quad.every((corner) => within(corner, room)))) continue;
    const leader = candidate.leads ? leaderTo(wish, quads) : null;
    const covered = quads.reduce((sum, quad) => sum + weightUnder(quad, taken), 0);
    const crossed = leader === null ? 0 : weightCrossed(stripOf(...leader, 0.2), taken);
    const cost = candidate.cost + covered + crossed;
    if (Number.isFinite(cost) && (best === null || cost < best.cost))
      best = { cost, marks, leader };
  }
  if (best === null) return null;
  for (const mark of best.marks) taken.insert(entryOf(textQuad(mark, APART), Infinity, true));
  if (best.leader !== null) taken.insert(entryOf(stripOf(...best.leader, 0.2), Infinity, false));
  return { id: wish.id, marks: best.marks, leader: best.leader };
}

/** Width and height of a wish's lines, mm. */
export function labelSize({ lines, face, size }: LabelWish): { width: number; height: number } {
  const widths = lines.map((text) => {
    const [a, b] = textQuad({ kind: "text", at: [0, 0], text, face, size, anchor: "start" });
    return b[0] - a[0];
  });
  return { width: Math.max(0, ...widths), height: size * (1 + LEADING * (lines.length - 1)) };
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

function candidatesOf(wish: LabelWish): Candidate[] {
  const own = (wish.spots ?? []).map(({ middle, turn }, i) => ({
    middle,
    turn: turn ?? 0,
    cost: 0.2 * i,
    leads: false,
  }));
  if (wish.onlySpots === true) return own;
  const { width, height } = labelSize(wish);
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
  return [...own, ...beside, ...fartherPlaces(wish, width, height)];
}

/** In rings around the point, sixteen to a ring. */
function fartherPlaces(wish: LabelWish, width: number, height: number): Candidate[] {
  const farther: Candidate[] = [];
  const [x, y] = wish.at;
  for (let off = wish.gap + wish.size * 1.2; off <= wish.reach; off += wish.size) {
    for (let i = 0; i < 16; i++) {
      const angle = ((i + 0.5) * Math.PI) / 8;
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      farther.push({
        middle: [x + dx * (off + width / 2), y + dy * (off + height / 2)],
        turn: 0,
        cost: 6 + off,
        leads: true,
      });
    }
  }
  return farther;
}

/** The lines of a label whose middle is at a place, turned about it. */
function marksAt(wish: LabelWish, { middle, turn }: Candidate): TextMark[] {
  const { lines, face, size } = wish;
  const { height } = labelSize(wish);
  const angle = (turn * Math.PI) / 180;
  return lines.map((text, i): TextMark => {
    // The box of a line is taken as 0.76 above and 0.22 below its base line.
    const down = -height / 2 + size * (0.77 + LEADING * i);
    return {
      kind: "text",
      at: [middle[0] - down * Math.sin(angle), middle[1] + down * Math.cos(angle)],
      text,
      face,
      size,
      anchor: "middle",
      ...(turn === 0 ? {} : { turn }),
      ...(wish.color === undefined ? {} : { color: wish.color }),
      ...(wish.halo === undefined ? {} : { halo: wish.halo }),
    };
  });
}

function within(
  [x, y]: Spot,
  room: { left: number; top: number; width: number; height: number },
): boolean {
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

function weightUnder(quad: Quad, taken: RBush<Entry>): number {
  return under(quad, taken).reduce((sum, { weight }) => sum + weight, 0);
}

/** Leaders cross lines where they must, each as one, but no letters. */
function weightCrossed(strip: Quad, taken: RBush<Entry>): number {
  return under(strip, taken).reduce(
    (sum, { weight, text }) => sum + (text ? Infinity : Math.min(weight, 1)),
    0,
  );
}

function under(quad: Quad, taken: RBush<Entry>): Entry[] {
  return taken.search(entryOf(quad, 0, false)).filter((other) => overlap(quad, other.quad));
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

/** Whether two convex quads share more than an edge (separating axes). */
export function overlap(a: Quad, b: Quad): boolean {
  return !separatedAlong(a, a, b) && !separatedAlong(b, a, b);
}

/** Whether a side of `sides` has all of a on one side and all of b on the other. */
function separatedAlong(sides: Quad, a: Quad, b: Quad): boolean {
  return sides.some(([x, y], i) => {
    const [nx, ny] = sides[(i + 1) % 4]!;
    const [ax, ay] = [ny - y, x - nx];
    const length = Math.hypot(ax, ay);
    if (length === 0) return false;
    const along = (quad: Quad): number[] => quad.map(([u, v]) => (u * ax + v * ay) / length);
    const [inA, inB] = [along(a), along(b)];
    return (
      Math.max(...inA) <= Math.min(...inB) + 1e-9 || Math.max(...inB) <= Math.min(...inA) + 1e-9
    );
  });
}

/** A line as obstacles, a box for each leg. @param width of the strip kept free, mm */
export function lineObstacles(
  line: readonly Spot[],
  width: number,
  weight: number,
  closed = false,
): Obstacle[] {
  const ends = closed ? [...line.slice(1), line[0]!] : line.slice(1);
  return ends.map((to, i) => ({ quad: stripOf(line[i]!, to, width), weight }));
}

/** The quad around a leg of a line. */
function stripOf(from: Spot, to: Spot, width: number): Quad {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const half = width / 2;
  const [ux, uy] = length === 0 ? [1, 0] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const corner = ([x, y]: Spot, along: number, across: number): Spot => [
    x + half * (along * ux - across * uy),
    y + half * (along * uy + across * ux),
  ];
  return [corner(from, -1, -1), corner(to, 1, -1), corner(to, 1, 1), corner(from, -1, 1)];
}

/** A box as a quad. */
export function boxQuad(left: number, top: number, width: number, height: number): Quad {
  return [
    [left, top],
    [left + width, top],
    [left + width, top + height],
    [left, top + height],
  ];
}
