import { describe, expect, it } from "vitest";
import { buildTin, elevationAt, type Tin } from "../ground/index.js";
import { ditchesAbove } from "./ditch.js";
import { drainageWith, inflowOf } from "./drainage.js";
import { floodFrom } from "./pits.js";
import { Tracer } from "./trace.js";

/** What is known to be there. */
function present<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("expected a value, got none");
  return value;
}

/** Ground of a grid of points, `step` m apart, about the origin. */
function ground(half: number, step: number, height: (x: number, y: number) => number): Tin {
  const points = [];
  for (let x = -half; x <= half; x += step) {
    for (let y = -half; y <= half; y += step) {
      points.push({ id: `${x} ${y}`, x, y, z: height(x, y) });
    }
  }
  const built = buildTin({ points });
  if ("problem" in built) throw new Error(built.problem.text);
  return built.tin;
}

/** Local coordinates of a place in the site's. */
const local = ({ origin }: Tin, x: number, y: number): [number, number] => [
  x - origin[0],
  y - origin[1],
];

const site = ({ origin }: Tin, at: readonly number[]): [number, number] => [
  present(at[0]) + origin[0],
  present(at[1]) + origin[1],
];

describe("water on a plane", () => {
  const tin = ground(20, 5, (x, y) => 100 + 0.1 * x + 0.2 * y);
  const tracer = new Tracer(tin, floodFrom(tin));

  it("runs straight down its slope to the edge of the survey", () => {
    const way = present(tracer.from(...local(tin, 3, 7)));
    for (const at of way.path) {
      const [x, y] = site(tin, at);
      // Down the gradient (0.1, 0.2) from (3, 7): x − 3 is half of y − 7.
      expect(x - 3 - (y - 7) / 2).toBeCloseTo(0, 9);
    }
    const [x, y] = site(tin, way.path.at(-1) ?? []);
    expect([x, y]).toEqual([expect.closeTo(-10.5, 6), expect.closeTo(-20, 6)]);
    expect(way.hollows).toEqual([]);
  });

  it("brings to a square what lies straight above it", () => {
    const drainage = drainageWith(
      ground(20, 5, (_, y) => 100 + 0.1 * y),
      40_000,
    );
    const square = [
      [-4, -10],
      [4, -10],
      [4, -2],
      [-4, -2],
    ].map(([x, y]) => local(tin, present(x), present(y)));
    // 8 m wide, from y = -2 up to the edge at 20: 176 m².
    expect(inflowOf(drainage, square).area).toBeCloseTo(176, -1);
    expect(Math.abs(inflowOf(drainage, square).area - 176)).toBeLessThan(5);
  });

  it("has no way from beyond the survey", () => {
    expect(tracer.from(500, 500)).toBeNull();
  });
});

describe("hollows", () => {
  // A bowl 2 m deep about the origin in a plane that falls north, with its rim lowest there.
  const bowl = (x: number, y: number): number =>
    100 - 0.05 * y - Math.max(0, 2 - Math.hypot(x, y) / 4);
  const tin = ground(20, 2, bowl);
  const flood = floodFrom(tin);

  it("are filled to the lowest place of their rim", () => {
    const middle = tin.x.findIndex((x, i) => {
      const [sx, sy] = site(tin, [x, tin.y[i]!]);
      return sx === 0 && sy === 0;
    });
    // Along the way north the ground falls 0.05 and rises 0.25 a metre: 0.2 × 8 m above the middle.
    const spill = 98 + 0.2 * 8;
    expect(flood.level[middle]! + tin.origin[2]).toBeCloseTo(spill, 9);
  });

  it("are left by where they spill, and told of with their depth", () => {
    const way = present(new Tracer(tin, flood).from(...local(tin, 1, -5)));
    expect(way.hollows).toHaveLength(1);
    expect(way.hollows[0]!.depth).toBeCloseTo(1.6, 9);
    const [, y] = site(tin, way.path.at(-1) ?? []);
    expect(y).toBeCloseTo(20, 6);
  });

  it("lead out over level ground", () => {
    const flat = ground(10, 5, () => 50);
    const way = present(new Tracer(flat, floodFrom(flat)).from(...local(flat, 1, 1)));
    expect(way.hollows).toEqual([]);
    const [x, y] = site(flat, way.path.at(-1) ?? []);
    expect(Math.max(Math.abs(x), Math.abs(y))).toBeCloseTo(10, 9);
  });
});

describe("a ditch above a work", () => {
  const tin = ground(30, 5, (x, y) => 100 + 0.12 * y + 0.03 * x);
  const outline = [
    [-4, -3],
    [4, -3],
    [4, 3],
    [-4, 3],
  ].map(([x, y]) => local(tin, present(x), present(y)));

  it("falls evenly, from beyond one side to beyond the other, uphill of it", () => {
    const line = present(ditchesAbove(tin, outline, 0.01)[0]);
    const heights = line.map(([x, y]) => present(elevationAt(tin, x, y)));
    heights.slice(1).forEach((z, i) => expect(heights[i]! - z).toBeCloseTo(0.005, 6));
    const along = line.map((at) => site(tin, at));
    expect(Math.max(...along.map(([x]) => x))).toBeGreaterThan(4);
    expect(Math.min(...along.map(([x]) => x))).toBeLessThan(-4);
    for (const [, y] of along) expect(y).toBeGreaterThan(3);
  });

  it("is not drawn on ground flatter than its own fall", () => {
    const flat = ground(30, 5, () => 100);
    expect(ditchesAbove(flat, outline, 0.01)).toEqual([]);
  });
});
