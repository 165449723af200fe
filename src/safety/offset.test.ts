import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planDistance } from "../flow/index.js";
import type { PlanPoint } from "../site/index.js";
import { offsetPieces, type Core, type OffsetPiece } from "./offset.js";

/** The cores of a line of places at one distance. */
const coresOf = (places: readonly PlanPoint[], distance: number): Core[] =>
  places.length === 1
    ? [{ a: places[0]!, b: places[0]!, distance }]
    : places.slice(1).map((b, i) => ({ a: places[i]!, b, distance }));

const lengthOf = (pieces: readonly OffsetPiece[]): number =>
  pieces
    .flatMap((piece) => piece.slice(1).map((b, i) => [piece[i]!, b] as const))
    .reduce((sum, [a, b]) => sum + Math.hypot(a[0] - b[0], a[1] - b[1]), 0);

describe("the offset of simple things", () => {
  it("of a place is a circle", () => {
    const pieces = offsetPieces(coresOf([[3, 4]], 10));
    expect(pieces).toHaveLength(1);
    for (const [x, y] of pieces[0]!) expect(Math.hypot(x - 3, y - 4)).toBeCloseTo(10, 9);
    // Chords of 5° are shorter than the arc by 0.03%.
    expect(Math.abs(lengthOf(pieces) - 20 * Math.PI)).toBeLessThan(0.0004 * 20 * Math.PI);
  });

  it("of a line is two lines and two half circles", () => {
    const places: PlanPoint[] = [
      [0, 0],
      [20, 0],
    ];
    const length = lengthOf(offsetPieces(coresOf(places, 5)));
    expect(Math.abs(length - (40 + 10 * Math.PI))).toBeLessThan(0.02);
  });

  it("of a right angle keeps the inner corner sharp and the outer one round", () => {
    const places: PlanPoint[] = [
      [0, 0],
      [20, 0],
      [20, 20],
    ];
    const length = lengthOf(offsetPieces(coresOf(places, 5)));
    // Outside 20 + 20 and a quarter, inside 15 + 15, and two half circles.
    expect(Math.abs(length - (40 + 30 + 2.5 * Math.PI + 10 * Math.PI))).toBeLessThan(0.02);
  });

  it("of two places whose circles meet drops the inner parts", () => {
    const two = [...coresOf([[0, 0]], 5), ...coresOf([[6, 0]], 5)];
    const length = lengthOf(offsetPieces(two));
    // Each circle loses the arc of twice acos(3/5).
    expect(Math.abs(length - 2 * 5 * (2 * Math.PI - 2 * Math.acos(0.6)))).toBeLessThan(0.03);
    expect(lengthOf(offsetPieces([...two, ...coresOf([[3, 0]], 50)]))).toBeCloseTo(314, 0);
  });

  it("hides what is not wanted, and of no distance is nothing", () => {
    const ring: PlanPoint[] = [
      [0, 0],
      [30, 0],
      [30, 30],
      [0, 30],
      [0, 0],
    ];
    const inside = ([x, y]: PlanPoint): boolean => x > 0 && x < 30 && y > 0 && y < 30;
    const outer = lengthOf(offsetPieces(coresOf(ring, 4), inside));
    expect(Math.abs(outer - (120 + 8 * Math.PI))).toBeLessThan(0.02);
    const inner = lengthOf(offsetPieces(coresOf(ring, 4), (place) => !inside(place)));
    expect(inner).toBeCloseTo(88, 6);
    expect(offsetPieces(coresOf(ring, 0))).toEqual([]);
  });
});

describe("the offset of any line", () => {
  // Places as they are kept: to the centimetre.
  const metres = fc.integer({ min: -5000, max: 5000 }).map((centimetres) => centimetres / 100);
  const place = fc.tuple(metres, metres);

  it("has every place exactly as far off as asked, by another measure", () => {
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 1, maxLength: 7 }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        (points, distance) => {
          const shape = { points, closed: false };
          const pieces = offsetPieces(coresOf(points, distance));
          expect(pieces.length).toBeGreaterThan(0);
          for (const piece of pieces) {
            for (const at of piece) {
              const far = planDistance(shape, { points: [at], closed: false });
              expect(Math.abs(far - distance)).toBeLessThan(1e-6 * Math.max(1, distance));
            }
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it("leaves no gap: each end is another piece's end", () => {
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 2, maxLength: 6 }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        (points, distance) => {
          const pieces = offsetPieces(coresOf(points, distance));
          const ends = pieces.flatMap((piece) => [piece[0]!, piece[piece.length - 1]!]);
          ends.forEach(([x, y], i) => {
            const nearest = Math.min(
              ...ends.map(([a, b], j) => (i === j ? Infinity : Math.hypot(a - x, b - y))),
            );
            // A place that seems nearer by rounding alone (a billionth of the distance) is kept. Where a
            // line all but touches a circle that is this much along it, to either side (the sagitta's
            // chord); such cases do reach it: 2 mm at 24 m.
            const rounding = 1e-9 * Math.max(1, distance);
            expect(nearest).toBeLessThan(2 * Math.sqrt(2 * distance * rounding) + 1e-6);
          });
        },
      ),
      { numRuns: 300 },
    );
  });
});
