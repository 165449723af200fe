/**
 * Trenches whose walls stand in every layer at its own slope, against brute force. In the contract's
 * words: in every section square to the path a wall starts at the floor's edge and rises at the run
 * of the layer that it is in; where it comes into a layer that asks for a flatter run it takes that,
 * after a level ledge if asked; it never gets steeper again. The path's ends are vertical.
 *
 * Error. A wall is walked in steps of at most 4 mm in plan and in height, so that it may take a
 * flatter run 4 mm late: that moves it by 4 mm at most, some 0.008 m³ a side and metre if all of it does. Along the
 * path the midpoint rule on sections 0.06 m apart; the area of a section is straight between breaks
 * of ground and layers. Bound used: 0.2 % of the cut + 0.02 m³.
 */
import { describe, expect, it } from "vitest";
import { dug, pipe, total, trench } from "../fixtures/site.js";
import { compare, depthsAbove, midpoints, undulating } from "./undulating.js";

const [SHARE, LEAST] = [0.002, 0.02];
const BETWEEN = 0.06;

/** One side of a section: the ground's layers out from the floor's edge, and their runs. */
interface Side {
  topsAt: (t: number) => readonly number[];
  runs: readonly number[];
  floor: number;
  ledge: number;
  /** m in plan and in height that are walked at a time. */
  step: number;
}

/**
 * Calls `strip` for the wall from the floor's edge out to daylight, or to `until`: distance, width,
 * height.
 */
function walkUp(
  side: Side,
  strip: (t: number, width: number, z: number) => void,
  until = Infinity,
): void {
  const { topsAt, runs, floor, ledge, step } = side;
  const runIn = (t: number, z: number): number => {
    const tops = topsAt(t);
    let found = 0;
    tops.forEach((top, i) => {
      if (top > z) found = runs[i]!;
    });
    return found;
  };
  const standing = topsAt(0);
  let [t, z, run] = [0, floor, 0];
  // What stands upright, from the floor up.
  for (let i = runs.length - 1; i >= 0 && runIn(0, z) === 0; i--) z = Math.max(z, standing[i]!);
  if (z >= standing[0]!) return;
  const level = (end: number): void => {
    while (t < end - 1e-12) {
      const width = Math.min(step, end - t);
      strip(t + width / 2, width, z);
      t += width;
    }
  };
  run = runIn(0, z);
  if (z > floor) level(ledge);
  while (t <= until && z < topsAt(t)[0]!) {
    const flatter = runIn(t, z);
    if (flatter > run) {
      run = flatter;
      level(t + ledge);
      continue;
    }
    const width = step * Math.min(1, run);
    strip(t + width / 2, width, z + width / run / 2);
    t += width;
    z += width / run;
  }
}

/** Height of the wall at a distance beyond the floor's edge, m; Infinity past daylight. */
function wallAt(side: Side, target: number): number {
  if (target <= 0) return side.floor;
  let height = Infinity;
  const read = (t: number, width: number, z: number): void => {
    if (Math.abs(target - t) <= width / 2 + 1e-12) height = z;
  };
  walkUp(side, read, target);
  return height;
}

describe("trenches with walls by layers", () => {
  it.each(Array.from({ length: 12 }, (_, i) => 86_000 + i))("seed %d", (seed) => {
    const ground = undulating(seed, [0, 0.25, 0.5, 0.75, 1, 1.5]);
    const { between, pick } = ground.random;
    const heading = between(0, 6.28);
    const [u, n] = [
      [Math.cos(heading), Math.sin(heading)],
      [-Math.sin(heading), Math.cos(heading)],
    ] as const;
    const length = between(8, 12);
    const [sx, sy] = [between(-3, 3) - (u[0] * length) / 2, between(-3, 3) - (u[1] * length) / 2];
    const place = (s: number, t: number): [number, number] => [
      sx + s * u[0] + t * n[0],
      sy + s * u[1] + t * n[1],
    ];
    const [width, ledge, depth] = [between(0.5, 1), pick([0, 0.3]), between(1.3, 2.6)];
    const [inside, outside, bed, above] = [0.1, 0.11, 0.1, 0.2];
    const wall = (outside - inside) / 2;
    const start = ground.topsAt(...place(0, 0))[0]! - depth;
    const end = ground.topsAt(...place(length, 0))[0]! - depth;

    const count = ground.layers.length;
    const sums = Array.from({ length: count + 3 }, () => 0);
    const sections = Math.ceil(length / BETWEEN);
    for (let k = 0; k < sections; k++) {
      const s = ((k + 0.5) * length) / sections;
      const invert = start + (s / length) * (end - start);
      const floor = invert - wall - bed;
      const add = (tops: readonly number[], plan: number, z: number): void => {
        if (z >= tops[0]!) return;
        const bedded = Math.min(tops[0]!, Math.max(z, floor + bed));
        const zoned = Math.min(tops[0]!, Math.max(bedded, invert + inside + wall + above));
        const amounts = [...depthsAbove(tops, z), bedded - z, zoned - bedded, tops[0]! - zoned];
        amounts.forEach((amount, i) => (sums[i] = sums[i]! + amount * plan));
      };
      const along = length / sections;
      const across = 40;
      for (let i = 0; i < across; i++) {
        const t = ((i + 0.5) / across - 0.5) * width;
        add(ground.topsAt(...place(s, t)), (along * width) / across, floor);
      }
      for (const sign of [1, -1]) {
        const topsAt = (t: number): number[] => ground.topsAt(...place(s, sign * (width / 2 + t)));
        walkUp({ topsAt, runs: ground.runs, floor, ledge, step: 0.004 }, (t, wide, z) => {
          add(topsAt(t), along * wide, z);
        });
      }
    }
    const work = trench({
      path: [place(0, 0), place(length, 0)],
      width,
      walls: { by: "layers", ...(ledge > 0 ? { ledge } : {}) },
      bedding: { depth: bed, material: "crushed-gravel" },
      zone: { above, material: "pea-gravel" },
      pipes: [pipe({ inside, outside, grade: { by: "inverts", start, end } })],
    });
    const { cut, fill, displaced } = dug(ground.site([work])).work();
    const size = total(cut);
    const { faults } = compare(
      [
        ...ground.layers.map((id, i) => {
          return { what: `cut ${id}`, got: cut[id] ?? 0, wanted: sums[i]!, size };
        }),
        { what: "bedding", got: fill["crushed-gravel"]!, wanted: sums[count]!, size },
        { what: "zone", got: fill["pea-gravel"]! + displaced, wanted: sums[count + 1]!, size },
        { what: "backfill", got: fill["native"]!, wanted: sums[count + 2]!, size },
      ],
      SHARE,
      LEAST,
    );
    expect(size).toBeGreaterThan(5);
    expect(faults).toEqual([]);
  });
});

/**
 * The same at a bend, place by place. Outside it both legs' outer walls go on, from a floor that is
 * level, till they meet; inside it the lower of the two legs holds. Squares of 0.1 m, turned from
 * the legs, walls in steps of 1 cm; vertical sides 2 m deep and 40 m long err by some 0.1·2·√(40·0.1)/3 ≈ 0.13 m³ by chance.
 * Bound used: 0.2 % of the cut + 0.13 m³.
 */
describe("a bent trench with walls by layers", () => {
  it.each(Array.from({ length: 5 }, (_, i) => 87_000 + i))("seed %d", (seed) => {
    const ground = undulating(seed, [0.25, 0.5, 0.75, 1, 1.5]);
    const { between, pick } = ground.random;
    const bend: [number, number] = [between(-3, 3), between(-3, 3)];
    const heading = between(0.25, 0.6);
    const turn = pick([-1, 1]) * between(0.3, 1);
    const lengths = [between(5, 6), between(5, 6)] as const;
    const units = [heading, heading + turn].map((a): [number, number] => [
      Math.cos(a),
      Math.sin(a),
    ]);
    const [u, v] = [units[0]!, units[1]!];
    const path: [number, number][] = [
      [bend[0] - lengths[0] * u[0], bend[1] - lengths[0] * u[1]],
      bend,
      [bend[0] + lengths[1] * v[0], bend[1] + lengths[1] * v[1]],
    ];
    const [width, ledge, depth] = [between(0.6, 1), pick([0, 0.3]), between(1.3, 2)];
    const [inside, outside, bed] = [0.1, 0.11, 0.1];
    const start = ground.topsAt(...path[0]!)[0]! - depth;
    const end = ground.topsAt(...path[2]!)[0]! - depth;
    const fall = (end - start) / (lengths[0] + lengths[1]);
    const floorAt = (s: number): number => start + fall * s - (outside - inside) / 2 - bed;

    /** Wall of the leg by way w, on the line of its floor edge to a side (left 1), at a place. */
    const sideWall = (w: readonly number[], sign: number, floor: number, x: number, y: number) => {
      const [nx, ny] = [-sign * w[1]!, sign * w[0]!];
      const out = (x - bend[0]) * nx + (y - bend[1]) * ny - width / 2;
      // No wall is flatter than the flattest layer's, from the floor up to this place.
      const rise = ground.topsAt(x, y)[0]! - floor;
      if (out > rise * Math.max(...ground.runs) + ledge * ground.runs.length) return Infinity;
      const [fx, fy] = [x - out * nx, y - out * ny];
      const topsAt = (t: number): number[] => ground.topsAt(fx + t * nx, fy + t * ny);
      return wallAt({ topsAt, runs: ground.runs, floor, ledge, step: 0.01 }, out);
    };
    const surfaceAt = (x: number, y: number): number => {
      const [dx, dy] = [x - bend[0], y - bend[1]];
      const along = [dx * u[0] + dy * u[1], dx * v[0] + dy * v[1]] as const;
      let lowest = Infinity;
      const leg = (w: readonly number[], floor: number): void => {
        const left = w[0]! * dy - w[1]! * dx;
        lowest = Math.min(lowest, sideWall(w, left > 0 ? 1 : -1, floor, x, y));
      };
      if (along[0] <= 0 && along[0] >= -lengths[0]) leg(u, floorAt(lengths[0] + along[0]));
      if (along[1] >= 0 && along[1] <= lengths[1]) leg(v, floorAt(lengths[0] + along[1]));
      if (along[0] > 0 && along[1] < 0) {
        const outer = turn > 0 ? -1 : 1;
        const walls = [u, v].map((w) => sideWall(w, outer, floorAt(lengths[0]), x, y));
        lowest = Math.min(lowest, Math.max(...walls));
      }
      return lowest;
    };
    const sums = midpoints(bend, 10, 0.1, (x, y) =>
      depthsAbove(ground.topsAt(x, y), surfaceAt(x, y)),
    );
    const work = trench({
      path,
      width,
      walls: { by: "layers", ...(ledge > 0 ? { ledge } : {}) },
      bedding: { depth: bed, material: "crushed-gravel" },
      pipes: [pipe({ inside, outside, grade: { by: "inverts", start, end } })],
    });
    const { cut } = dug(ground.site([work])).work();
    const size = total(cut);
    const rows = ground.layers.map((id, i) => {
      return { what: `cut ${id}`, got: cut[id] ?? 0, wanted: sums[i]!, size };
    });
    const { faults } = compare(rows, 0.002, 0.13);
    expect(size).toBeGreaterThan(10);
    expect(faults).toEqual([]);
  });
});
