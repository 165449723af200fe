import { describe, expect, it } from "vitest";
import { buildTin, type Tin } from "./tin.js";

/** A small seeded generator (mulberry32), 0 up to 1. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Points = { id: string; x: number; y: number; z: number }[];

function pointsAt(places: readonly (readonly [number, number])[]): Points {
  return places.map(([x, y], i) => ({ id: `p${i}`, x, y, z: i % 3 }));
}

function built(points: Points, tolerance?: number): { tin: Tin; dropped: (string | undefined)[] } {
  const made = buildTin(tolerance === undefined ? { points } : { points, tolerance });
  if ("problem" in made) throw new Error(made.problem.text);
  const welds = made.findings.filter(({ code }) => /welded|two-heights/.test(code));
  return { tin: made.tin, dropped: welds.map(({ where }) => where) };
}

/** The rule in its own words: a point near an earlier one that was kept is dropped. */
function droppedByRule(points: Points, tolerance: number): string[] {
  const kept: Points = [];
  return points
    .filter((point) => {
      const isNear = kept.some((k) => Math.hypot(k.x - point.x, k.y - point.y) <= tolerance);
      if (!isNear) kept.push(point);
      return isNear;
    })
    .map(({ id }) => id);
}

describe("welding", () => {
  it.each([
    ["a few near pairs", 500, 30, 0.5],
    ["so thick that pairs are not listed", 1500, 30, 2],
    ["many to a place", 800, 2, 0.2],
    ["all but the whole survey within the tolerance", 300, 10, 4],
  ])("%s: drops the points that the rule says, seed 5", (_, count, size, tolerance) => {
    const random = seeded(5);
    const points = pointsAt(
      Array.from({ length: count }, () => [size * random(), size * random()] as const),
    );
    const wanted = droppedByRule(points, tolerance);
    const { tin, dropped } = built(points, tolerance);
    expect(wanted.length).toBeGreaterThan(5);
    expect(dropped).toEqual(wanted);
    expect([...tin.ids].sort()).toEqual(
      points
        .map(({ id }) => id)
        .filter((id) => !wanted.includes(id))
        .sort(),
    );
  });

  it("is asked for by the survey, apart from what rounding needs", () => {
    const points = pointsAt([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
      [0.3, 0],
    ]);
    expect(built(points).tin.x.length).toBe(5);
    expect(built(points, 0.5).tin.x.length).toBe(4);
    expect(built(points, 0.5).tin.tolerance).toBe(0.5);
    // The largest local coordinate is 5 m, from the middle of the survey.
    expect(built(points, 0.5).tin.rounding).toBeCloseTo(5e-12, 15);
    expect(built(points).tin.tolerance).toBe(0.001);
  });

  it("names the vertices by the survey's ids and keeps each one's place and height", () => {
    const random = seeded(6);
    const points = pointsAt(
      Array.from({ length: 300 }, () => [20 * random(), 20 * random()] as const),
    );
    const { tin } = built(points);
    const [ox, oy, oz] = tin.origin;
    tin.ids.forEach((id, vertex) => {
      const point = points.find((each) => each.id === id);
      expect(point?.x).toBeCloseTo(tin.x[vertex]! + ox, 12);
      expect(point?.y).toBeCloseTo(tin.y[vertex]! + oy, 12);
      expect(point?.z).toBeCloseTo(tin.z[vertex]! + oz, 12);
    });
  });
});
