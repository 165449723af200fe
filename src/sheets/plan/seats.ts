/** Seats for lettering along lines and in areas, best first; mm. */
import type { Spot } from "../paper.js";
import { letteringSize, type Lettering, type Seat } from "./lettering.js";
import { readingTurn, Way } from "./way.js";

/** A line bends too much for lettering where its chord is shorter than this share of its way. */
const STRAIGHT = 0.985;

/**
 * Seats along a line, from its middle outwards, `off` mm above it as one reads (below it where that
 * is less than zero, on it where it is 0). None where the line is too short or bends too much.
 */
export function seatsAlong(
  line: readonly Spot[],
  lettering: Lettering,
  off: number,
  tries = 9,
): Seat[] {
  const { width, height } = letteringSize(lettering);
  const way = new Way(line);
  const free = way.length - width;
  if (free < 0) return [];
  return Array.from({ length: tries }, (_, k): Seat[] => {
    const step = k % 2 === 0 ? k / 2 : -(k + 1) / 2;
    const station = way.length / 2 + (step * free) / (tries - 1);
    const [from, to] = [way.at(station - width / 2).at, way.at(station + width / 2).at];
    const chord: Spot = [to[0] - from[0], to[1] - from[1]];
    if (Math.hypot(...chord) < STRAIGHT * width) return [];
    const turn = readingTurn(chord);
    const away = off === 0 ? 0 : off + (Math.sign(off) * height) / 2;
    const [sin, cos] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
    // Off the chord's own middle, so that a slight bend stays clear.
    const middle: Spot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    return [{ middle: [middle[0] + away * sin, middle[1] - away * cos], turn }];
  }).flat();
}

/** Seats along one straight leg, on the side away from a spot first. */
export function seatsBeside(
  leg: readonly Spot[],
  lettering: Lettering,
  off: number,
  from: Spot,
): Seat[] {
  const [above, below] = [seatsAlong(leg, lettering, off), seatsAlong(leg, lettering, -off)];
  const [first, other] = [above[0], below[0]];
  if (first === undefined || other === undefined) return [];
  return far(first.middle, from) >= far(other.middle, from)
    ? [...above, ...below]
    : [...below, ...above];
}

/** Level seats in a ring, nearest to its middle first; none where the lettering does not fit in. */
export function seatsWithin(ring: readonly Spot[], lettering: Lettering, tries = 7): Seat[] {
  const { width, height } = letteringSize(lettering);
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
  const [west, east] = [Math.min(...xs), Math.max(...xs)];
  const [north, south] = [Math.min(...ys), Math.max(...ys)];
  const middle: Spot = [(west + east) / 2, (north + south) / 2];
  const seats: Seat[] = [];
  for (let i = 0; i <= tries; i++) {
    for (let j = 0; j <= tries; j++) {
      const at: Spot = [
        west + ((i + 0.5) / (tries + 1)) * (east - west),
        north + ((j + 0.5) / (tries + 1)) * (south - north),
      ];
      const corners: Spot[] = [
        [at[0] - width / 2, at[1] - height / 2],
        [at[0] + width / 2, at[1] - height / 2],
        [at[0] + width / 2, at[1] + height / 2],
        [at[0] - width / 2, at[1] + height / 2],
      ];
      if (corners.every((corner) => isWithin(ring, corner))) seats.push({ middle: at });
    }
  }
  return seats.sort((a, b) => far(a.middle, middle) - far(b.middle, middle)).slice(0, 24);
}

/** Whether a spot lies in a ring, by the even–odd rule. */
export function isWithin(ring: readonly Spot[], [x, y]: Spot): boolean {
  return ring.reduce((odd, [ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    if (ay > y === by > y) return odd;
    return x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !odd : odd;
  }, false);
}

const far = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
