// US EPA 832-F-00-079 (2000): solids settle in a septic tank, before what takes its effluent.
import { describe, expect, it } from "vitest";
import type { PipeRun } from "../dig/index.js";
import type { Scheme, Work } from "../site/index.js";
import { plainHouseDrain, plainInletTank } from "./flow.fixture.js";
import { settlingFindings } from "./settling.js";

const house: Work = {
  kind: "building",
  id: "h",
  name: "House",
  outline: [
    [0, -4],
    [0, 4],
    [-6, 4],
    [-6, -4],
  ],
  base: 98.6,
  height: 3,
  outlets: [{ id: "o", name: "Drain outlet", at: [0.5, 0], invert: 98 }],
};
/** A drain along x from the outlet to Tank 1, whose body begins at 28.5 m, or part of that way. */
const drain = (id: string, from: number, to: number): PipeRun =>
  plainHouseDrain({ ...{ id, from, length: to - from }, start: 98, end: 97.3 });
const pump = { tank: "k" } as NonNullable<NonNullable<Scheme["flow"]>["pressure"]>[number];
const told = (runs: PipeRun[], works: Work[], pressure = [pump]) =>
  settlingFindings(runs, { id: "s", name: "S", works, flow: { pressure } });

describe("a pump's tank that takes a building's drain", () => {
  const works = [house, plainInletTank()];

  it("is told that solids reach the pump", () => {
    const [found, ...more] = told([drain("p", 0, 28.5)], works);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ level: "caution", code: "chamber.no-settling", where: "k" });
    expect(found?.text).toContain("from Drain outlet of House with no settling tank before it");
    expect(found?.source).toContain("US EPA 832-F-00-079");
  });

  it("is told so through pipes that join each other", () => {
    expect(told([drain("p", 0, 14), drain("q", 14.5, 28.5)], works)).toHaveLength(1);
    // 1.1 m apart they do not meet.
    expect(told([drain("p", 0, 14), drain("q", 15.1, 28.5)], works)).toEqual([]);
  });

  it("is silent where a tank stands before it", () => {
    const before = plainInletTank({ id: "septic", name: "Septic tank", at: [14, 0] });
    const runs = [drain("p", 0, 12.5), drain("q", 15.5, 28.5)];
    expect(told(runs, [...works, before])).toEqual([]);
  });

  it("is silent without a pump, and where the drain is no building's", () => {
    expect(told([drain("p", 0, 28.5)], works, [])).toEqual([]);
    expect(told([drain("p", 3, 28.5)], works)).toEqual([]);
  });
});
