import { describe, expect, test } from "vitest";
import type { Spot } from "../paper.js";
import { clipLine, clipRing } from "./clip.js";

const room = { left: 0, top: 0, width: 10, height: 10 };

describe("a line in a room", () => {
  test("is cut where it leaves and comes back", () => {
    const line: Spot[] = [
      [-5, 5],
      [5, 5],
      [5, 15],
      [8, 15],
      [8, 5],
    ];
    expect(clipLine(line, room)).toEqual([
      [
        [0, 5],
        [5, 5],
        [5, 10],
      ],
      [
        [8, 10],
        [8, 5],
      ],
    ]);
  });

  test("is whole inside and nothing outside", () => {
    const inside: Spot[] = [
      [1, 1],
      [9, 2],
      [3, 7],
    ];
    expect(clipLine(inside, room)).toEqual([inside]);
    const outside: Spot[] = [
      [-1, 11],
      [12, 11],
    ];
    expect(clipLine(outside, room)).toEqual([]);
  });

  test("runs right through", () => {
    const line: Spot[] = [
      [-10, 0],
      [20, 10],
    ];
    const [piece] = clipLine(line, room);
    expect(piece?.[0]?.[0]).toBeCloseTo(0);
    expect(piece?.[0]?.[1]).toBeCloseTo(10 / 3);
    expect(piece?.[1]?.[0]).toBeCloseTo(10);
    expect(piece?.[1]?.[1]).toBeCloseTo(20 / 3);
  });
});

describe("a ring in a room", () => {
  const area = (ring: readonly Spot[]): number =>
    Math.abs(
      ring.reduce((sum, [x, y], i) => {
        const [u, v] = ring[(i + 1) % ring.length]!;
        return sum + (x * v - u * y) / 2;
      }, 0),
    );

  test("keeps the area that is in it", () => {
    const square: Spot[] = [
      [5, 5],
      [15, 5],
      [15, 15],
      [5, 15],
    ];
    expect(area(clipRing(square, room))).toBeCloseTo(25);
    const about: Spot[] = [
      [-5, -5],
      [15, -5],
      [15, 15],
      [-5, 15],
    ];
    expect(area(clipRing(about, room))).toBeCloseTo(100);
    expect(
      clipRing(
        square.map(([x, y]): Spot => [x + 20, y]),
        room,
      ),
    ).toEqual([]);
  });
});
