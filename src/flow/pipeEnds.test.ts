import { describe, expect, it } from "vitest";
import type { Work } from "../site/index.js";
import { checkPlain, plainHouseDrain, plainInletTank } from "./flow.fixture.js";

const house: Work = {
  kind: "building",
  id: "h",
  name: "House",
  outline: [
    [-8, -4],
    [-0.3, -4],
    [-0.3, 4],
    [-8, 4],
  ],
  base: 99,
  height: 3,
};
const drain = plainHouseDrain({ start: 98, end: 97.3 });
/** A soakaway from x = `from` that ends in the ground. */
const soakaway = (from: number) =>
  plainHouseDrain({ start: 97.25, end: 96.9, id: "p2", name: "Soakaway", trench: "t2", from });

function said(...given: Parameters<typeof checkPlain>) {
  const { flow, findings } = checkPlain(...given);
  return { codes: findings.map((each) => each.code), flow, text: findings[0]?.text };
}

describe("the ends of gravity pipes", () => {
  it("say nothing of a drain into a tank and a soakaway out of it", () => {
    expect(said([drain, soakaway(31.5)], [house, plainInletTank()]).codes).toEqual([]);
  });

  it("say how far a drain ends from a tank that was moved 5.18 m away", () => {
    const result = said([drain], [house, plainInletTank({ at: [30 + 5.18, 0] })]);
    expect(result.codes).toEqual(["pipe.ends-at-nothing"]);
    expect(result.text).toBe(
      "House drain ends at no tank, bed or other pipe, 5.18 m from Tank 1. Carry its path on to Tank 1, or bring the tank to it.",
    );
    expect(result.flow.pipes[0]?.verdict).toBe("ends at nothing");
    expect(result.flow.pipes[0]?.mends).toMatchObject([{ kind: "reach-tank" }]);
    expect(result.flow.pipes[0]?.mends[0]?.by).toBeCloseTo(5.18, 9);
  });

  it("say so of a drain from a building that is far from every tank", () => {
    const result = said([drain], [house, plainInletTank({ at: [60, 0] })]);
    expect(result.text).toBe(
      "House drain ends at no tank, bed or other pipe. Carry its path to what it should join.",
    );
  });

  it("say so of a soakaway that starts just short of its tank", () => {
    const result = said([drain, soakaway(34.5)], [house, plainInletTank()]);
    expect(result.codes).toEqual(["pipe.starts-at-nothing"]);
    expect(result.text).toContain(
      "Soakaway starts at no building, tank or other pipe, 3.00 m from",
    );
  });

  it("let a pipe start 0.51 m from the end of another, as at a distribution box", () => {
    const outlet = plainHouseDrain({ start: 97.25, end: 96.9, id: "p2", trench: "t2", from: 31.5 });
    const next = plainHouseDrain({ start: 96.9, end: 96.55, id: "p3", trench: "t3", from: 60.51 });
    expect(said([drain, outlet, next], [house, plainInletTank()]).codes).toEqual([]);
    const apart = plainHouseDrain({ start: 96.9, end: 96.55, id: "p3", trench: "t3", from: 61.1 });
    expect(said([drain, outlet, apart], [house, plainInletTank()]).codes).toEqual([
      "pipe.ends-at-nothing",
    ]);
  });

  it("ask for the second of two tanks while nothing enters it", () => {
    const second = plainInletTank({ id: "k2", name: "Tank 2", at: [65, 0], base: 95.6 });
    const between = soakaway(31.5);
    const result = said([drain, between], [house, plainInletTank(), second]);
    expect(result.text).toContain(
      "Soakaway ends at no tank, bed or other pipe, 3.50 m from Tank 2",
    );
  });

  it("let a drain end in a bed, in daylight, or start where no house is drawn", () => {
    const far = plainInletTank({ at: [60, 0] });
    const bed: Work = {
      kind: "bed",
      id: "b",
      name: "Bed",
      at: [31, 0],
      bearing: 90,
      length: 4,
      width: 3,
      height: 0.6,
      wall: 0.1,
      base: 97,
      filling: [],
    };
    expect(said([drain], [house, far, bed]).codes).toEqual([]);
    const [start, end] = drain.stations;
    if (start === undefined || end === undefined) throw new Error("expected two stations");
    const daylight = { ...drain, stations: [start, { ...end, ground: 97.35 }] };
    expect(said([daylight], [house, far]).codes).toEqual([]);
    expect(said([drain], [plainInletTank()]).codes).toEqual([]);
  });

  it("say nothing in a scheme without a tank, nor of pressure pipes and conduits", () => {
    expect(said([drain], [house]).codes).toEqual([]);
    const conduit = plainHouseDrain({ start: 98, end: 97.3, service: "conduit" });
    expect(said([conduit], [house, plainInletTank({ at: [60, 0] })]).codes).toEqual([]);
  });
});
