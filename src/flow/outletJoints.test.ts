import { describe, expect, it } from "vitest";
import type { Work } from "../site/index.js";
import { checkPlain, plainHouseDrain, plainInletTank } from "./flow.fixture.js";

const house = (at: [number, number] = [0.5, 0], invert = 98): Work => ({
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
  outlets: [{ id: "o", name: "Drain outlet", at, invert }],
});
const codes = (result: ReturnType<typeof checkPlain>): string[] =>
  result.findings.map((finding) => finding.code);
const drain = (start: number) => plainHouseDrain({ start, end: 97.3 });

describe("a drain at a building's outlet", () => {
  it("is said to start below it, with the move that mends it", () => {
    const result = checkPlain([drain(97.95)], [house(), plainInletTank()]);
    expect(result.flow.outlets).toMatchObject([{ pipe: "p1", building: "h", outlet: "o" }]);
    expect(result.flow.outlets[0]?.off).toBeCloseTo(-0.05, 9);
    expect(codes(result)).toEqual(["pipe.starts-below"]);
    const [check] = result.flow.pipes;
    expect(check?.verdict).toBe("misses its outlet");
    expect(check?.mends[0]).toMatchObject({ kind: "raise-start" });
    expect(check?.mends[0]?.move?.start).toBeCloseTo(0.05, 9);
    expect(result.findings[0]?.text).toBe(
      "House drain starts 50 mm below Drain outlet of House. Raise the near end 50 mm, to Drain outlet of House.",
    );
  });

  it("is said to start above it, with the water that would stand", () => {
    const result = checkPlain([drain(98.05)], [house(), plainInletTank()]);
    expect(codes(result)).toEqual(["pipe.starts-above"]);
    expect(result.findings[0]?.text).toContain("so water would stand there");
  });

  it("lets 10 mm pass, as at tanks, and no more", () => {
    for (const start of [97.991, 98.009]) {
      expect(codes(checkPlain([drain(start)], [house(), plainInletTank()]))).toEqual([]);
    }
    for (const start of [97.989, 98.011]) {
      expect(codes(checkPlain([drain(start)], [house(), plainInletTank()]))).toHaveLength(1);
    }
  });

  it("joins within 1 m in plan only", () => {
    const off = (x: number) => checkPlain([drain(97.5)], [house([x, 0])]).flow.outlets.length;
    expect([off(0.99), off(-0.99), off(1.01)]).toEqual([1, 1, 0]);
  });
});
