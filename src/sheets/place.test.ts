import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { textQuad } from "./box.js";
import { lineObstacles, placeLabels, type LabelWish } from "./place.js";
import { boxQuad, overlap, stripQuad } from "./quads.js";

const ROOM = { left: 10, top: 10, width: 90, height: 70 };

const wish = (id: string, x: number, y: number, more: Partial<LabelWish> = {}): LabelWish => ({
  ...{ id, lines: ["2,411.4 ft"], face: "text", size: 2.2, priority: 0 },
  ...{ at: [x, y], gap: 1, reach: 15, ...more },
});

const somewhere = fc.tuple(
  fc.double({ min: 5, max: 105, noNaN: true }),
  fc.double({ min: 5, max: 85, noNaN: true }),
);

describe("labels", () => {
  it("never cover each other nor what is hard, never leave the room, and none is lost", () => {
    const input = fc.record({
      places: fc.array(somewhere, { minLength: 1, maxLength: 60 }),
      hard: fc.array(somewhere, { maxLength: 10 }),
      turns: fc.array(fc.double({ min: -90, max: 90, noNaN: true }), { minLength: 1 }),
    });
    fc.assert(
      fc.property(input, ({ places, hard, turns }) => {
        const wishes = places.map(([x, y], i) =>
          wish(String(i), x, y, {
            ...(i % 3 === 0 ? { lines: ["Tank 1", "2,400.5 ft"] } : {}),
            ...(i % 4 === 0
              ? { spots: [{ middle: [x, y] as const, turn: turns[i % turns.length]! }] }
              : {}),
          }),
        );
        const obstacles = hard.map(([x, y]) => ({ quad: boxQuad(x, y, 6, 4), weight: Infinity }));
        const { placed, left } = placeLabels(wishes, obstacles, ROOM);
        const ids = [...placed.map(({ id }) => id), ...left];
        expect(ids.sort()).toEqual(wishes.map(({ id }) => id).sort());
        const quads = placed.flatMap(({ id, marks }) =>
          marks.map((mark) => ({ id, quad: textQuad(mark) })),
        );
        for (const [i, { id, quad }] of quads.entries()) {
          for (const [x, y] of quad) {
            expect(x >= 10 && x <= 100 && y >= 10 && y <= 80).toBe(true);
          }
          for (const obstacle of obstacles) expect(overlap(quad, obstacle.quad)).toBe(false);
          for (const other of quads.slice(i + 1)) {
            if (other.id !== id) expect(overlap(quad, other.quad)).toBe(false);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it("lead to what they name over nothing that they shun, while another place is to be had", () => {
    // What is named stands in a block that takes no letters, nearest to its upper edge; the wall is there.
    const about = [{ quad: boxQuad(35, 46, 40, 12), weight: Infinity }];
    const wall = stripQuad([35, 47], [75, 47], 0.2);
    const crosses = (shun?: LabelWish["shun"]): boolean => {
      const more = shun === undefined ? {} : { shun };
      const { placed } = placeLabels([wish("a", 55, 50, { reach: 30, ...more })], about, ROOM);
      const leader = placed[0]?.leader;
      if (leader === null || leader === undefined) throw new Error("got no leader, expected one");
      return overlap(stripQuad(...leader, 0.2), wall);
    };
    expect(crosses()).toBe(true);
    expect(crosses([wall])).toBe(false);
  });

  it("stand apart from a label of several lines where there is room, so that two do not read as one", () => {
    const lines = ["Lift line trench", "floor 2,405.0 ft"];
    const { placed } = placeLabels(
      [wish("heap", 40, 40, { lines, priority: 1 }), wish("trench", 40, 45.5, { lines })],
      [],
      ROOM,
    );
    const [first = [], second = []] = placed.map(({ marks }) =>
      marks.flatMap((mark) => textQuad(mark, 0).map(([, y]) => y)),
    );
    const gap = Math.min(...second) - Math.max(...first);
    expect(gap).toBeGreaterThan(1.5);
  });

  it("send no leader through what is named by another where another way is free", () => {
    const disc = { quad: boxQuad(43, 35, 3, 10), weight: 60 };
    // Nowhere close by, and to the right only past the disc.
    const wall = { quad: boxQuad(37, 37, 6, 6), weight: Infinity };
    const { placed } = placeLabels([wish("4", 40, 40, { reach: 40 })], [disc, wall], ROOM);
    const leader = placed[0]?.leader;
    const [from, to] = leader ?? [];
    expect(from !== undefined && to !== undefined).toBe(true);
    if (from === undefined || to === undefined) return;
    expect(overlap(stripQuad(from, to, 1.2), disc.quad)).toBe(false);
  });

  it("go to the more important where there is room for one", () => {
    const spots = [{ middle: [50, 40] as const }];
    const { placed, left } = placeLabels(
      [
        wish("low", 50, 40, { spots, onlySpots: true, priority: 1 }),
        wish("high", 50, 40, { spots, onlySpots: true, priority: 2 }),
      ],
      [],
      ROOM,
    );
    expect(placed.map(({ id }) => id)).toEqual(["high"]);
    expect(left).toEqual(["low"]);
  });

  it("stand off with a leader where everything near is taken, and lead to the place", () => {
    const near = { quad: boxQuad(38, 33, 24, 14), weight: Infinity };
    const { placed } = placeLabels([wish("a", 50, 40, { reach: 25 })], [near], ROOM);
    const [from, to] = placed[0]!.leader ?? [[0, 0] as const, [50, 40] as const];
    expect(Math.hypot(from[0] - 50, from[1] - 40)).toBeLessThan(1.1);
    expect(Math.hypot(to[0] - 50, to[1] - 40)).toBeGreaterThan(5);
  });

  it("rather stand beside a soft line than over it", () => {
    const line = lineObstacles(
      [
        [50, 40],
        [90, 40],
      ],
      0.3,
      5,
    );
    const { placed } = placeLabels([wish("a", 50, 40)], line, ROOM);
    for (const mark of placed[0]!.marks) {
      expect(line.some(({ quad }) => overlap(quad, textQuad(mark)))).toBe(false);
    }
  });
});
