import { describe, expect, it } from "vitest";
import { estimate, foundShape, nearestLimits, setbackBands } from "../estimate/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { sceneFrame } from "./frame.js";
import { limitMarksOf, runsOnGround } from "./marksOfLimits.js";
import { stageGround } from "./stageGround.js";

/** Ground of 40 × 40 m about the origin, a tank there, and a well 30 m east: off the survey. */
const site = {
  ...plainSite({ works: [plainTank({ id: "t" })] }),
  limits: [
    { id: "w", kind: "well", name: "Well", at: [10, 0] as [number, number] },
    { id: "far", kind: "spring", setback: 5, at: [100, 0] as [number, number] },
  ],
};
const frame = sceneFrame(site);
const ground = stageGround(foundShape(site), null, frame.origin);
const scheme = site.schemes[0]!;
const [ox, oy] = frame.origin;
const given = { bands: [], lines: [], steep: null, setbacks: true, field: null };

describe("marks of setbacks on the ground", () => {
  it("leave out what lies beyond the survey, and part a line that leaves it", () => {
    const across = runsOnGround(
      [
        [-30, 0],
        [30, 0],
      ],
      frame,
      ground,
    );
    expect(across).toHaveLength(1);
    for (const [x] of across[0]!) expect(Math.abs(x + ox)).toBeLessThanOrEqual(20 + 1e-9);
    const bends = runsOnGround(
      [
        [0, 0],
        [30, 0],
        [30, 5],
        [0, 5],
      ],
      frame,
      ground,
    );
    expect(bends).toHaveLength(2);
  });

  it("show bands with their tags on the ground, and none for what is off it", () => {
    const bands = setbackBands(site, scheme);
    expect(bands.map(({ to }) => to)).toEqual(["w", "far"]);
    const marks = limitMarksOf({ ...given, bands }, "metric", frame, ground);
    expect(marks.tags.map(({ text }) => text)).toEqual(["15.24 m tank from Well"]);
    for (const [x, y, z] of marks.tags[0]!.seats) {
      expect(Math.hypot(x + ox - 10, y + oy)).toBeCloseTo(15.24, 1);
      expect(Math.abs(z + frame.origin[2] - 100)).toBeLessThan(0.2);
    }
    for (let i = 0; i < marks.bands.length; i += 3) {
      const far = Math.hypot(marks.bands[i]! + ox - 10, marks.bands[i + 1]! + oy);
      // Chords between places half a metre apart.
      expect(Math.abs(far - 15.24)).toBeLessThan(0.02);
    }
  });

  it("show a line that falls short as wrong", () => {
    const { setbacks } = estimate(site, scheme.id);
    const lines = nearestLimits(site, scheme, setbacks);
    const marks = limitMarksOf({ ...given, lines }, "metric", frame, ground);
    expect(marks.tags).toMatchObject([{ wrong: true }]);
    expect(marks.short.length).toBeGreaterThan(0);
    expect(marks.lines).toHaveLength(0);
  });
});
