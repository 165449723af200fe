import { describe, expect, it } from "vitest";
import { contourLines } from "./contours.js";
import { buildTin, elevationAt, slopeAt, type Tin } from "./tin.js";

type Rows = [string, number, number, number][];

function points(rows: Rows): { id: string; x: number; y: number; z: number }[] {
  return rows.map(([id, x, y, z]) => ({ id, x, y, z }));
}

function tinOf(rows: Rows, breaklines: string[][] = []): Tin {
  const built = buildTin({ points: points(rows), breaklines });
  if ("problem" in built) throw new Error(built.problem.text);
  return built.tin;
}

function problemOf(rows: Rows): string | null {
  const built = buildTin({ points: points(rows) });
  return "problem" in built ? built.problem.code : null;
}

const square: Rows = [
  ["a", 0, 0, 10],
  ["b", 10, 0, 11],
  ["c", 10, 10, 13],
  ["d", 0, 10, 12],
];

describe("buildTin", () => {
  it("winds triangles and hull counter-clockwise and covers the hull", () => {
    const tin = tinOf([...square, ["e", 4, 5, 11]]);
    let total = 0;
    for (let t = 0; t < tin.triangles.length; t += 3) {
      const [a, b, c] = [tin.triangles[t]!, tin.triangles[t + 1]!, tin.triangles[t + 2]!];
      const twice =
        (tin.x[b]! - tin.x[a]!) * (tin.y[c]! - tin.y[a]!) -
        (tin.x[c]! - tin.x[a]!) * (tin.y[b]! - tin.y[a]!);
      expect(twice).toBeGreaterThan(0);
      total += twice / 2;
    }
    expect(total).toBeCloseTo(100, 12);
    expect(tin.hull.length).toBe(4);
  });

  it("gives the plane's height and slope between points", () => {
    const tin = tinOf(square);
    const at = (x: number, y: number): number | null => {
      const z = elevationAt(tin, x - tin.origin[0], y - tin.origin[1]);
      return z === null ? null : z + tin.origin[2];
    };
    expect(at(2, 3)).toBeCloseTo(10 + 0.1 * 2 + 0.2 * 3, 12);
    expect(at(0, 0)).toBeCloseTo(10, 12);
    expect(at(10, 5)).toBeCloseTo(12, 12);
    expect(at(10.01, 5)).toBeNull();
    const slope = slopeAt(tin, 0, 0);
    expect(slope?.slope).toBeCloseTo(Math.hypot(0.1, 0.2), 12);
    expect(slope?.fallsTowards).toBeCloseTo(180 + (Math.atan2(0.1, 0.2) * 180) / Math.PI, 9);
  });

  it("welds points at one place, says so, and keeps the first height", () => {
    const built = buildTin({ points: points([...square, ["e", 10, 10.0005, 20]]) });
    if ("problem" in built) throw new Error("expected a ground");
    expect(built.tin.x.length).toBe(4);
    expect(built.findings.map((f) => `${f.code} ${f.where}`)).toEqual(["survey.two-heights e"]);
  });

  it("splits breaklines where they cross, at the mean height, and follows both", () => {
    const built = buildTin({
      points: points(square),
      breaklines: [
        ["a", "c"],
        ["b", "d"],
      ],
    });
    if ("problem" in built) throw new Error("expected a ground");
    expect(built.tin.x.length).toBe(5);
    expect(built.tin.z[4]! + built.tin.origin[2]).toBeCloseTo((11.5 + 11.5) / 2, 12);
    expect(built.tin.triangles.length / 3).toBe(4);
    expect(built.findings[0]?.code).toBe("survey.breaklines-cross");
  });

  it("splits a breakline that passes through a point", () => {
    const tin = tinOf([...square, ["m", 5, 5, 9], ["n", 5, 1, 10]], [["a", "c"]]);
    const edges = new Set<string>();
    for (let t = 0; t < tin.triangles.length; t += 3) {
      for (let k = 0; k < 3; k++) {
        const [p, q] = [tin.triangles[t + k]!, tin.triangles[t + ((k + 1) % 3)]!];
        edges.add([tin.ids[p]!, tin.ids[q]!].sort().join());
      }
    }
    expect(edges.has("a,m")).toBe(true);
    expect(edges.has("c,m")).toBe(true);
  });

  it.each([3, 4, 5, 6])("lets %i breaklines cross at one place and share its vertex", (count) => {
    const ring = Array.from({ length: 2 * count }, (_, i): Rows[number] => {
      const angle = (i * Math.PI) / count;
      return [`r${i}`, 10 * Math.cos(angle), 10 * Math.sin(angle), i % 2];
    });
    const across = Array.from({ length: count }, (_, i) => [`r${i}`, `r${i + count}`]);
    expect(tinOf(ring, across).x.length).toBe(2 * count + 1);
  });

  it("names what keeps a ground from being built", () => {
    expect(problemOf(square.slice(0, 2))).toBe("too-few-points");
    expect(
      problemOf([
        ["a", 0, 0, 1],
        ["b", 0, 0, 1],
        ["c", 1, 1, 1],
      ]),
    ).toBe("too-few-points");
    expect(
      problemOf([
        ["a", 0, 0, 1],
        ["b", 1, 1, 1],
        ["c", 2, 2, 1],
      ]),
    ).toBe("in-line");
    expect(
      problemOf([
        ["a", 0, 0, 1],
        ["b", 50, 0.0004, 1],
        ["c", 100, 0, 1],
      ]),
    ).toBe("in-line");
    expect(
      problemOf([
        ["a", 0, 0, 1],
        ["b", 1, NaN, 1],
        ["c", 2, 5, 1],
      ]),
    ).toBe("not-a-number");
    expect(
      problemOf([
        ["a", 0, 0, 1],
        ["b", 5e7, 1, 1],
        ["c", 2, 5, 1],
      ]),
    ).toBe("absurd-spread");
  });
});

describe("contourLines", () => {
  it("joins the legs of a hill into closed lines and of a slope into open ones", () => {
    const hill = tinOf([
      ...square.map(([id, x, y]): Rows[number] => [id, x, y, 0]),
      ["top", 5, 5, 3],
    ]);
    const rings = contourLines(hill, 1);
    expect(rings.map((ring) => ring.elevation)).toEqual([0, 1, 2]);
    expect(rings.every((ring) => ring.closed)).toBe(true);
    const slope = contourLines(tinOf(square), 0.5);
    expect(slope.map((line) => line.elevation)).toEqual([10.5, 11, 11.5, 12, 12.5]);
    expect(slope.every((line) => !line.closed)).toBe(true);
    for (const { elevation, line } of slope) {
      for (const [x, y] of line)
        expect(10 + 0.1 * (x + 5) + 0.2 * (y + 5)).toBeCloseTo(elevation, 9);
    }
  });
});
