import { expect, test } from "vitest";
import { crossingsInPlan } from "./planCrossings.js";

const path = [
  [0, 0],
  [10, 0],
  [10, 10],
] as const;

test("stations along the line, in order, a bend's once", () => {
  const other = [
    [4, -1],
    [4, 1],
    [12, 1],
    [12, 6],
    [0, 6],
  ] as const;
  expect(crossingsInPlan(path, other)).toEqual([4, 11, 16]);
  const through = [
    [9, -1],
    [11, 1],
  ] as const;
  expect(crossingsInPlan(path, through)).toEqual([10]);
});

test("lines side by side do not cross", () => {
  const beside = [
    [0, 1],
    [9, 1],
  ] as const;
  expect(crossingsInPlan(path, beside)).toEqual([]);
});
