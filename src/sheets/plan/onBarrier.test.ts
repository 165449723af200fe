import { expect, test } from "vitest";
import type { PlanPoint } from "../../site/index.js";
import { jobOf } from "./plan.fixture.js";
import { onBarrier } from "./onBarrier.js";
import { plainSite, plainTank } from "../../site/site.fixture.js";

const { estimate } = jobOf(plainSite({ works: [plainTank()] }), "letter");
const square: PlanPoint[] = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];
const heaped = {
  ...estimate.works[0]!,
  name: "Heap",
  heap: { volume: 8, height: 1, area: 16, toe: [square] },
};
const none = { diggers: [], cranes: [] };

const names = (...line: PlanPoint[]): string[] => {
  const barriers = [line.map(([x, y]) => [x, y, 100] as const)];
  return onBarrier({ land: { ...estimate.land, barriers }, works: [heaped] }, none);
};

test("a heap that the barrier crosses, ends in or lies under is named; one beside it is not", () => {
  expect(names([-1, 2], [5, 2])).toEqual(["Heap"]);
  expect(names([-1, 2], [2, 2])).toEqual(["Heap"]);
  expect(names([1, 2], [2, 2])).toEqual(["Heap"]);
  expect(names([-1, 5], [5, 5])).toEqual([]);
});
