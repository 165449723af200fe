/** Where the figures of contour lines are written. */
import type { Contour } from "./contours.js";

/** A place for a line's figure, which is written centred on it along the line. */
export interface LabelPlace {
  /** Index of the line among those given. */
  line: number;
  /** On the line, in plan, m. */
  at: readonly [number, number];
  /** Degrees counter-clockwise from east, more than −90 and at most 90: never upside down. */
  angle: number;
}

/** What the figures need, all m in plan. */
export interface LabelRoom {
  /** Length of a figure along its line. */
  length: number;
  /** Distance along a line from one figure to the next. */
  spacing: number;
  /** Middles of two figures are at least this far apart. */
  apart: number;
}

/** A line bends too much for a figure where its chord is shorter than this share of its way. */
const STRAIGHT = 0.96;

/** How many places are tried to each side of where a figure is wanted. */
const TRIES = 8;

/**
 * Places for the figures of contour lines, in the order of the lines, which have first choice in
 * that order: evenly spaced along each line, moved to where it runs straight, and kept from one
 * another. A line too short or too bent for its figure gets none.
 */
export function placeLabels(lines: readonly Contour[], room: LabelRoom): LabelPlace[] {
  const taken = new TakenPlaces(room.apart);
  return lines.flatMap((contour, line) => labelsOn(contour, line, room, taken));
}

function labelsOn(
  { line, closed }: Contour,
  index: number,
  room: LabelRoom,
  taken: TakenPlaces,
): LabelPlace[] {
  const way = new Way(line, closed);
  if (way.length < 1.5 * room.length) return [];
  const wanted = Math.max(1, Math.floor(way.length / room.spacing));
  const pitch = way.length / wanted;
  const found: LabelPlace[] = [];
  for (let i = 0; i < wanted; i++) {
    const best = bestPlace(way, (i + 0.5) * pitch, pitch, room, taken);
    if (!best) continue;
    taken.take(best.at);
    found.push({ line: index, ...best });
  }
  return found;
}

/** The straightest free place about a station, nearer ones first among equals. */
function bestPlace(
  way: Way,
  wanted: number,
  pitch: number,
  room: LabelRoom,
  taken: TakenPlaces,
): Omit<LabelPlace, "line"> | null {
  let best: Omit<LabelPlace, "line"> | null = null;
  let worth = -Infinity;
  for (let i = -TRIES; i <= TRIES; i++) {
    const station = wanted + (i * pitch) / (2 * TRIES + 2);
    const [from, to] = [station - room.length / 2, station + room.length / 2];
    if (!way.closed && (from < 0 || to > way.length)) continue;
    const [a, b] = [way.at(from), way.at(to)];
    const straight = Math.hypot(b[0] - a[0], b[1] - a[1]) / room.length;
    const score = straight - (0.02 * Math.abs(i)) / TRIES;
    if (straight < STRAIGHT || score <= worth) continue;
    const at = way.at(station);
    if (!taken.isFree(at)) continue;
    best = { at, angle: readingAngle(b[0] - a[0], b[1] - a[1]) };
    worth = score;
  }
  return best;
}

/** Angle of a direction, degrees, turned so that what is written along it can be read. */
function readingAngle(dx: number, dy: number): number {
  const angle = (Math.atan2(dy, dx) * 180) / Math.PI;
  if (angle > 90) return angle - 180;
  return angle <= -90 ? angle + 180 : angle;
}

/** A line as a way along it. */
class Way {
  readonly length: number;
  private readonly stations: Float64Array;

  constructor(
    private readonly line: Contour["line"],
    readonly closed: boolean,
  ) {
    this.stations = new Float64Array(line.length);
    for (let i = 1; i < line.length; i++) {
      const [ax, ay] = line[i - 1]!;
      const [bx, by] = line[i]!;
      this.stations[i] = this.stations[i - 1]! + Math.hypot(bx - ax, by - ay);
    }
    this.length = this.stations[line.length - 1] ?? 0;
  }

  /** Place at a station, m along; on a closed line stations go round. */
  at(station: number): readonly [number, number] {
    const along = this.closed ? station - Math.floor(station / this.length) * this.length : station;
    let [low, high] = [0, this.line.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.stations[middle]! <= along) low = middle;
      else high = middle;
    }
    const [a, b] = [this.line[low]!, this.line[high]!];
    const span = this.stations[high]! - this.stations[low]!;
    const share = span > 0 ? (along - this.stations[low]!) / span : 0;
    return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  }
}

/** Places already taken, on a grid as wide as they must be apart. */
class TakenPlaces {
  private readonly squares = new Map<number, (readonly [number, number])[]>();

  constructor(private readonly apart: number) {}

  isFree([x, y]: readonly [number, number]): boolean {
    const [i, j] = this.square(x, y);
    for (let di = -1; di <= 1; di++) {
      for (let dj = -1; dj <= 1; dj++) {
        const near = this.squares.get(squareKey(i + di, j + dj)) ?? [];
        if (near.some(([px, py]) => Math.hypot(px - x, py - y) < this.apart)) return false;
      }
    }
    return true;
  }

  take(place: readonly [number, number]): void {
    const key = squareKey(...this.square(place[0], place[1]));
    const known = this.squares.get(key);
    if (known) known.push(place);
    else this.squares.set(key, [place]);
  }

  private square(x: number, y: number): [number, number] {
    return [Math.floor(x / this.apart), Math.floor(y / this.apart)];
  }
}

function squareKey(i: number, j: number): number {
  return i * 67_108_864 + j;
}
