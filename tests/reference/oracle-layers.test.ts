/**
 * Trenches whose walls stand in every layer at its own slope, against brute force. In the contract's
 * words: in every section square to the path a wall starts at the floor's edge and rises at the run
 * of the layer that it is in; where it comes into a layer that asks for a flatter run it takes that,
 * after a level ledge if asked; it never gets steeper again. The path's ends are vertical.
 *
 * Error. A wall is walked in steps of at most 2 mm in plan and in height, so that it may take a
 * flatter run 2 mm late: that moves it by 2 mm at most, some 2 mm × 2 m² a side and metre. Along the
 * path the midpoint rule on sections 0.04 m apart; the area of a section is straight between breaks
 * of ground and layers. Bound used: 0.3 % of the cut + 0.02 m³.
 */
import { describe, expect, it } from "vitest";
import { dug, pipe, total, trench } from "../fixtures/site.js";
import { compare, depthsAbove, undulating } from "./undulating.js";

const [SHARE, LEAST] = [0.003, 0.02];
const WALK = 0.002;
const BETWEEN = 0.04;

/** One side of a section: the ground's layers out from the floor's edge, and their runs. */
interface Side {
  topsAt: (t: number) => readonly number[];
  runs: readonly number[];
  floor: number;
  ledge: number;
}

/** Calls `strip` for the wall from the floor's edge out to daylight: distance, width, height. */
function walkUp(side: Side, strip: (t: number, width: number, z: number) => void): void {
  const { topsAt, runs, floor, ledge } = side;
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
  const level = (until: number): void => {
    while (t < until - 1e-12) {
      const width = Math.min(WALK, until - t);
      strip(t + width / 2, width, z);
      t += width;
    }
  };
  run = runIn(0, z);
  if (z > floor) level(ledge);
  while (z < topsAt(t)[0]!) {
    const flatter = runIn(t, z);
    if (flatter > run) {
      run = flatter;
      level(t + ledge);
      continue;
    }
    const width = WALK * Math.min(1, run);
    strip(t + width / 2, width, z + width / run / 2);
    t += width;
    z += width / run;
  }
}

describe("trenches with walls by layers", () => {
  it.each(Array.from({ length: 20 }, (_, i) => 86_000 + i))("seed %d", (seed) => {
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
        walkUp({ topsAt, runs: ground.runs, floor, ledge }, (t, wide, z) => {
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
    const { worst, faults } = compare(
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
    if (process.env["ORACLE"])
      console.log(seed, ground.runs.join(" "), ledge, size.toFixed(2), worst.toExponential(1));
    expect(size).toBeGreaterThan(5);
    expect(faults).toEqual([]);
  });
});
