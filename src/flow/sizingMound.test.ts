import { describe, expect, it } from "vitest";
import type { Bed, Scheme, Site } from "../site/index.js";
import { moundFindings, moundSizes } from "./sizingMound.js";

const BED: Bed = {
  kind: "bed",
  id: "b",
  name: "Sand bed",
  at: [10, 20],
  bearing: 90,
  length: 12.2,
  width: 3.2,
  height: 1,
  wall: 0.1,
  base: 100,
  filling: [
    { material: "drain-sand", depth: 0.5 },
    { material: "pea-gravel", depth: 0.2 },
    { material: "topsoil", depth: 0.1 },
  ],
};
const NO_FIELD = { areaWanted: null, bottom: 0 };

function schemeOf(bed: Bed, flow: Scheme["flow"] = {}): { site: Site; scheme: Scheme } {
  const scheme: Scheme = { id: "s", name: "S", works: [bed], flow };
  const site: Site = {
    format: "bankyard-site",
    version: 1,
    name: "Test",
    units: "metric",
    currency: "USD",
    survey: { points: [] },
    ground: { layers: [], probes: [] },
    schemes: [scheme],
  };
  return { site, scheme };
}

function only(bed: Bed, ground: (place: readonly [number, number]) => number) {
  const { site, scheme } = schemeOf(bed);
  const [mound, ...more] = moundSizes(site, scheme, ground, NO_FIELD);
  expect(more).toEqual([]);
  return mound;
}

describe("mounds of a scheme's beds", () => {
  it("reads the fall square to the long side only, whichever way it goes", () => {
    expect(only(BED, ([x, y]) => 100 + 0.5 * x + 0.1 * y)?.slope).toBeCloseTo(0.1, 9);
    expect(only(BED, ([, y]) => 100 - 0.1 * y)?.slope).toBeCloseTo(0.1, 9);
    expect(only({ ...BED, bearing: 0 }, ([x]) => 100 + 0.2 * x)?.slope).toBeCloseTo(0.2, 9);
  });
  it("on the level: bed inside and 3 × height on all sides", () => {
    const size = only(BED, () => 100)?.size;
    expect(size?.length.value).toBeCloseTo(12 + 2 * 3 * (0.5 + 0.2 + 0.4572), 9);
    expect(size?.width.value).toBeCloseTo(3 + 2 * 3 * (0.5 + 0.2 + 0.3048), 9);
  });
  it("gives none for a bed with nothing under its gravel, nor beyond the survey", () => {
    expect(only({ ...BED, filling: [{ material: "drain-sand", depth: 1 }] }, () => 100)).toBe(
      undefined,
    );
    expect(only(BED, () => NaN)).toBeUndefined();
  });
  it("reaches down to the soil that the field wants, shared by bottom area", () => {
    const { site, scheme } = schemeOf(BED, { field: ["b"] });
    const field = { areaWanted: 300, bottom: 2 * 12 * 3 };
    const [mound] = moundSizes(site, scheme, () => 100, field);
    // Half of 300 m² over 12 m, of which the bed is 3; J as on the level.
    expect(mound?.size?.width.value).toBeCloseTo(150 / 12 + 3 * (0.5 + 0.2 + 0.3048), 9);
  });
  it("says so where the ground is as steep as the sides", () => {
    const steep = only(BED, ([, y]) => 100 + 0.4 * y);
    expect(steep?.size).toBeNull();
    expect(moundFindings(steep === undefined ? [] : [steep])).toMatchObject([
      { code: "sizing.mound-too-steep", where: "b" },
    ]);
    const gentle = only(BED, ([, y]) => 100 + 0.3 * y);
    expect(moundFindings(gentle === undefined ? [] : [gentle])).toEqual([]);
    expect(gentle?.size).not.toBeNull();
    expect(moundFindings([{ bed: "b", name: "B", slope: 0, size: null }])).toHaveLength(1);
  });
});
