import { describe, expect, it } from "vitest";
import { Segments } from "./segments.js";
import { Stretches } from "./stretches.js";

/** What is left of the line from (0, 0) to (10, 0) m, as west and east ends in order. */
function leftOf(...taken: (readonly [number, number])[]): [number, number][] {
  const left = new Stretches();
  left.add(0, 1);
  for (const [low, high] of taken) left.remove(low, high);
  const lines = new Segments();
  left.addTo(lines, 0, 0, 10, 0, 1e-9);
  return Array.from({ length: lines.count }, (_, i): [number, number] => [
    lines.ends[4 * i]!,
    lines.ends[4 * i + 2]!,
  ]).sort((a, b) => a[0] - b[0]);
}

describe("stretches of a line", () => {
  it("keep all when nothing that lies on them is taken", () => {
    expect(leftOf([-1, 0], [1, 2])).toEqual([[0, 10]]);
  });

  it("lose an end, the middle, or all", () => {
    expect(leftOf([-0.5, 0.25])).toEqual([[2.5, 10]]);
    expect(leftOf([0.25, 0.5])).toEqual([
      [0, 2.5],
      [5, 10],
    ]);
    expect(leftOf([0, 1])).toEqual([]);
  });

  it("lose whole pieces among several, in whatever order they were made", () => {
    expect(leftOf([0.25, 0.5], [0.625, 0.75], [0.5, 0.8])).toEqual([
      [0, 2.5],
      [8, 10],
    ]);
    expect(leftOf([0.625, 0.75], [0.25, 0.5], [-1, 0.3])).toEqual([
      [5, 6.25],
      [7.5, 10],
    ]);
  });

  it("leave out crumbs shorter than asked", () => {
    expect(leftOf([1e-11, 0.5])).toEqual([[5, 10]]);
  });
});
