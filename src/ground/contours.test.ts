import { describe, expect, it } from "vitest";
import { contourLines, type Contour } from "./contours.js";
import { buildTin, type Tin } from "./tin.js";

/** A chance of our own, the same for the same seed (Numerical Recipes' 32-bit generator). */
function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function tinOf(points: readonly (readonly [number, number, number])[]): Tin {
  const built = buildTin({ points: points.map(([x, y, z], i) => ({ id: `p${i}`, x, y, z })) });
  if ("problem" in built) throw new Error(built.problem.text);
  return built.tin;
}

/** A hill of random whole heights on a jittered grid, its rim at zero: lines cannot be open. */
function hill(seed: number, side: number, most: number): Tin {
  const next = chance(seed);
  const points: [number, number, number][] = [];
  for (let i = 0; i <= side; i++) {
    for (let j = 0; j <= side; j++) {
      const rim = i === 0 || j === 0 || i === side || j === side;
      const shake = (): number => (rim ? 0 : 0.6 * (next() - 0.5));
      points.push([i + shake(), j + shake(), rim ? 0 : Math.floor(next() * (most + 1))]);
    }
  }
  return tinOf(points);
}

/** Plan area of a triangulation above a height, m², triangle by triangle. */
function areaAbove(tin: Tin, height: number): number {
  let area = 0;
  for (let t = 0; t < tin.triangles.length; t += 3) {
    const places = [0, 1, 2].map((k) => tin.triangles[t + k]!);
    const kept: [number, number][] = [];
    places.forEach((v, k) => {
      const w = places[(k + 1) % 3]!;
      const [zv, zw] = [tin.z[v]! - height, tin.z[w]! - height];
      if (zv > 0) kept.push([tin.x[v]!, tin.y[v]!]);
      if (zv > 0 === zw > 0) return;
      const share = zv / (zv - zw);
      kept.push([
        tin.x[v]! + share * (tin.x[w]! - tin.x[v]!),
        tin.y[v]! + share * (tin.y[w]! - tin.y[v]!),
      ]);
    });
    area += ringArea(kept);
  }
  return area;
}

function ringArea(ring: readonly (readonly [number, number])[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length]!;
    return sum + (x * ny - nx * y) / 2;
  }, 0);
}

function atLevel(lines: readonly Contour[], elevation: number): Contour[] {
  return lines.filter((line) => line.elevation === elevation);
}

describe("contourLines", () => {
  it.each([1, 2, 3, 4, 5, 6])(
    "bounds exactly the ground above each level, flats and levels at corners included (seed %i)",
    (seed) => {
      const tin = hill(seed, 14, 4);
      const lines = contourLines(tin, 1);
      expect(lines.every((line) => line.closed)).toBe(true);
      for (const level of [0, 1, 2, 3]) {
        const bounded = atLevel(lines, level).reduce((sum, { line }) => {
          expect(line[0]).toEqual(line[line.length - 1]);
          return sum + ringArea(line);
        }, 0);
        expect(bounded).toBeCloseTo(areaAbove(tin, level - tin.origin[2]), 9);
      }
    },
  );

  it("gives the corner itself where a level passes through it", () => {
    const tin = tinOf([
      [0, 0, 10.2],
      [4, 0, 10.3],
      [8, 0, 10.4],
      [0, 3, 10.2],
      [4, 3, 10.3],
      [8, 3, 10.4],
    ]);
    const [line, ...more] = atLevel(contourLines(tin, 0.1), 10.3);
    expect(more).toEqual([]);
    const places = (line?.line ?? []).map(
      ([x, y]) => [x + tin.origin[0], y + tin.origin[1]] as const,
    );
    expect(places.length).toBeGreaterThan(1);
    expect(places.every(([x]) => Math.abs(x - 4) < 1e-12)).toBe(true);
    expect(places.map(([, y]) => y).sort()).toEqual([0, 3]);
  });

  it("starts and ends open lines at the edge of the survey, higher ground on the left", () => {
    const tin = tinOf([
      [0, 0, 0],
      [10, 0, 5],
      [10, 10, 5],
      [0, 10, 0],
      [5, 4, 2.6],
    ]);
    const lines = contourLines(tin, 1);
    expect(lines.map((line) => line.elevation)).toEqual([0, 1, 2, 3, 4]);
    for (const { closed, line } of lines) {
      expect(closed).toBe(false);
      expect(line[0]![1]).toBeGreaterThan(line[line.length - 1]![1]);
      for (const [, y] of [line[0]!, line[line.length - 1]!]) {
        expect(Math.min(Math.abs(y + tin.origin[1]), Math.abs(y + tin.origin[1] - 10))).toBe(0);
      }
    }
  });

  it("draws nothing on level ground, whatever the level, and nothing at a lone summit", () => {
    const flat = [
      [0, 0, 3],
      [5, 0, 3],
      [5, 5, 3],
      [0, 5, 3],
    ] as const;
    expect(contourLines(tinOf(flat), 1)).toEqual([]);
    expect(atLevel(contourLines(tinOf([...flat, [2, 2, 4]]), 1), 4)).toEqual([]);
  });

  it("throws at a step that is not more than zero", () => {
    expect(() => contourLines(hill(1, 3, 2), 0)).toThrow(/expected more than 0/);
  });

  it("takes well under 200 ms for 100,000 points", () => {
    const next = chance(7);
    const tin = tinOf(
      Array.from({ length: 100_000 }, () => {
        const [x, y] = [next() * 300, next() * 300];
        return [x, y, 8 * Math.sin(x / 40) * Math.cos(y / 30) + 0.02 * next()] as const;
      }),
    );
    let lines: Contour[] = [];
    // The best of several: other tests share the machine.
    const times = Array.from({ length: 6 }, () => {
      const start = performance.now();
      lines = contourLines(tin, 0.5);
      return performance.now() - start;
    });
    const best = Math.min(...times);
    expect(lines.length).toBeGreaterThan(30);
    expect(best).toBeLessThan(200);
  });
});
