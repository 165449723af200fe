import { expect, it } from "vitest";
import type { PairJudged } from "../../handover/index.js";
import { isOther, withMark } from "./stakeMarks.js";

const mark = (point: string) => ({
  choice: { point },
  name: point,
  at: [0, 0] as [number, number],
});
const used: PairJudged = { pair: [mark("a"), mark("b")], worst: 50, flat: 0, longest: 9 };

it("picks one mark and keeps the other, which the program may have chosen", () => {
  expect(withMark({ offset: 2 }, 0, { point: "c" }, { used })).toEqual({
    offset: 2,
    marks: [{ point: "c" }, { point: "b" }],
  });
  expect(withMark({}, 1, { point: "c" }, { used }).marks).toEqual([{ point: "a" }, { point: "c" }]);
});

it("changes the two when one is picked twice, and leaves the pair to the program", () => {
  expect(isOther(0, { point: "b" }, { used })).toBe(true);
  expect(isOther(1, { point: "b" }, { used })).toBe(false);
  expect(isOther(0, null, { used })).toBe(false);
  expect(withMark({}, 0, { point: "b" }, { used }).marks).toEqual([{ point: "b" }, { point: "a" }]);
  expect(withMark({ marks: [{ point: "a" }, { point: "b" }] }, 1, null, { used })).toEqual({});
});
