import { expect, test } from "vitest";
import { sayRun, wallSlopes } from "./wallSlopes.js";

const hole = [
  [0, 100],
  [2, 100],
  [3, 99],
  [3.5, 98.5],
  [3.5, 97],
  [6, 97],
  [8, 101],
  [12, 101.2],
] as const;

test("each straight wall once, with its run for one of rise", () => {
  const walls = wallSlopes([hole], 0, 12, 0.3);
  expect(walls.map(({ run }) => run)).toEqual([1, 0, 0.5]);
  expect(walls[0]!.at).toEqual([2.75, 99.25]);
});

test("low steps and what lies beyond are not named", () => {
  expect(wallSlopes([hole], 4, 5.9, 0.3)).toEqual([]);
  expect(wallSlopes([hole], 0, 12, 2)).toHaveLength(1);
});

test.each([
  [0.75, "¾ : 1"],
  [0.7501, "¾ : 1"],
  [0.01, "vertical"],
  [1.5, "1½ : 1"],
] as const)("a run of %d is said %s", (run, said) => {
  expect(sayRun(run, "us")).toBe(said);
});
