import { expect, test } from "vitest";
import { spreadInRow } from "./spread.js";

/** Park and Miller's generator, so that a failure can be run again. */
function drawing(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])(
  "things keep their order, apart and inside (seed %d)",
  (seed) => {
    const draw = drawing(seed);
    const wishes = Array.from({ length: 9 }, () => ({
      at: 100 * draw(),
      size: 2 + 6 * draw(),
    })).sort((a, b) => a.at - b.at);
    const middles = spreadInRow(wishes, 1, 0, 100);
    middles.slice(1).forEach((middle, i) => {
      const between = (wishes[i]!.size + wishes[i + 1]!.size) / 2 + 1;
      expect(middle - middles[i]!).toBeGreaterThanOrEqual(between - 1e-6);
    });
    expect(middles[0]! - wishes[0]!.size / 2).toBeGreaterThanOrEqual(-1e-6);
    expect(middles.at(-1)! + wishes.at(-1)!.size / 2).toBeLessThanOrEqual(100 + 1e-6);
  },
);

test("what is far enough apart stays where it would like to be", () => {
  const wishes = [10, 30, 50].map((at) => ({ at, size: 4 }));
  expect(spreadInRow(wishes, 1, 0, 100)).toEqual([10, 30, 50]);
});

test("two at one place stand to both sides of it", () => {
  const wishes = [50, 50].map((at) => ({ at, size: 4 }));
  expect(spreadInRow(wishes, 2, 0, 100)).toEqual([47, 53]);
});
