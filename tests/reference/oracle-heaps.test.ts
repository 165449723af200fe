/**
 * Heaps of surplus on undulating ground against brute force. A heap is a pyramid of 24 faces at the
 * angle of repose about its middle, on the ground as the works left it, with a flat top where its
 * height is held; it must hold the surplus: cut × loose, for nothing goes back here. The oracle
 * finds the height by halving the volume of max(0, heap − ground) by the midpoint rule.
 *
 * Error: the integrand is continuous with slopes below G = 1.2, so the midpoint rule errs by no
 * more than 0.3826·G·N·h³ on N squares that a break meets (proved in midpoint.test.ts); with h =
 * 0.1 m and some 30 breaks of 5 m, N ≈ 2000, that is 0.9 m³ if no two errors cancelled, and some
 * 0.02 m³ as they do at random. Bound used: 0.1 % + 0.02 m³, and 0.002 m for the height.
 */
import { describe, expect, it } from "vitest";
import type { Pile } from "../../src/site/index.js";
import { dug, pad, run, total } from "../fixtures/site.js";
import { holds, midpoints, turnedBox, undulating, type Place } from "./undulating.js";

const H = 0.1;
const HALF = 9;

function heapFaces(tangent: number, x: number, y: number): number {
  let out = -Infinity;
  for (let k = 0; k < 24; k++) {
    const angle = (Math.PI * k) / 12;
    out = Math.max(out, x * Math.cos(angle) + y * Math.sin(angle));
  }
  return tangent * out;
}

interface Spread {
  volume: number;
  area: number;
}

describe("a heap on undulating ground holds the surplus", () => {
  it.each(Array.from({ length: 14 }, (_, i) => 83_000 + i))("seed %d", (seed) => {
    const ground = undulating(seed);
    const { between, pick } = ground.random;
    const at: [number, number] = [between(4, 7), between(-5, 5)];
    const repose = pick([30, 37, 42]);
    // Now and then the heap reaches into the pit that it comes from.
    const from: Place = [at[0] - pick([10, 10, 4]), at[1] + between(-2, 2)];
    const outline = turnedBox(from, between(0.25, 1.3), [-2.5, -1.5, 2.5, 1.5]);
    const floor = ground.topsAt(...from)[0]! - between(1.6, 2.4);
    const height = pick([undefined, undefined, 1.2]);
    const pile: Pile = {
      kind: "pile",
      id: "pile",
      name: "Pile",
      at,
      material: "e0",
      repose,
      ...(height !== undefined ? { height } : {}),
    };
    // Filled to its top where the ground is lower: it nowhere is, so all that is cut is left over.
    const pit = pad({ outline, top: floor, walls: run(0), fillRun: 0 });
    const { work, result } = dug(ground.site([pit, pile]));
    expect(total(work("pad").fill)).toBe(0);
    const [cut] = midpoints(from, 4, 0.025, (x, y) => [
      holds(outline, x, y) ? ground.topsAt(x, y)[0]! - floor : 0,
    ]);
    const surplus = 1.25 * (cut ?? NaN);
    expect(Math.abs(result.earth.surplusLoose - surplus)).toBeLessThan(0.002 * surplus);

    const columns: { under: number; slope: number }[] = [];
    const tangent = Math.tan((repose * Math.PI) / 180);
    const base = ground.topsAt(...at)[0]!;
    midpoints(at, HALF, H, (x, y) => {
      const under = holds(outline, x, y) ? floor : ground.topsAt(x, y)[0]!;
      columns.push({ under: under - base, slope: heapFaces(tangent, x - at[0], y - at[1]) });
      return [];
    });
    const spreadAt = (apex: number): Spread => {
      let [volume, area] = [0, 0];
      for (const { under, slope } of columns) {
        const deep = Math.min(height ?? Infinity, apex - slope) - under;
        if (deep <= 0) continue;
        volume += deep * H * H;
        area += H * H;
      }
      return { volume, area };
    };
    // The engine's own surplus from here on: the heap's shape is what is checked, not the cut.
    const wanted = result.earth.surplusLoose;
    let [low, high] = [0, 8];
    while (high - low > 1e-9) {
      const middle = (low + high) / 2;
      if (spreadAt(middle).volume < wanted) low = middle;
      else high = middle;
    }
    const { area } = spreadAt(high);
    const { heap } = work("pile");
    if (!heap) throw new Error("got no heap, expected one");
    expect(high).toBeLessThan(7);
    expect(Math.abs(heap.volume - wanted)).toBeLessThan(1e-6 * wanted);
    expect(Math.abs(heap.height - Math.min(high, height ?? Infinity))).toBeLessThan(0.002);
    expect(Math.abs(heap.area - area)).toBeLessThan(0.003 * area);
    // The heap as the engine shaped it, filled up by the oracle.
    if (height === undefined) {
      const { volume } = spreadAt(heap.height);
      expect(Math.abs(volume - wanted)).toBeLessThan(0.001 * wanted + 0.02);
    }
  });
});
