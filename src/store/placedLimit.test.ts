import { describe, expect, it } from "vitest";
import type { PlanPoint } from "../site/index.js";
import { plainSite } from "../site/site.fixture.js";
import { withPlacedLimit } from "./placedLimit.js";

const FOUR: PlanPoint[] = [
  [0, 0],
  [30, 0],
  [30, 20],
  [0, 20],
];

const closedOf = (kind: string, places: readonly PlanPoint[], site = plainSite({})): unknown => {
  const placed = withPlacedLimit(site, kind, places)?.limit;
  return placed !== undefined && "path" in placed ? placed.closed === true : placed;
};

it("keeps a place typed in feet to the hundredth of a foot", () => {
  const typed: PlanPoint = [70 * 0.3048, 62 * 0.3048];
  const well = withPlacedLimit(plainSite({}), "well", [typed])?.limit;
  const at = (well !== undefined && "at" in well ? well.at : undefined) ?? [];
  expect(at.map((m) => m / 0.3048)).toEqual([
    expect.closeTo(70, 2) as number,
    expect.closeTo(62, 2) as number,
  ]);
});

describe("a lot line that is drawn", () => {
  it("is the whole lot from four corners on, where none was before", () => {
    expect(closedOf("lot-line", FOUR)).toBe(true);
    expect(closedOf("lot-line", FOUR.slice(0, 3))).toBe(false);
    expect(closedOf("lot-line", [...FOUR.slice(0, 3), FOUR[0]!])).toBe(true);
  });

  it("is one line of several where another is there already; an easement always is", () => {
    const first = withPlacedLimit(plainSite({}), "lot-line", FOUR.slice(0, 2));
    expect(closedOf("lot-line", FOUR, first?.site)).toBe(false);
    expect(closedOf("easement", FOUR)).toBe(false);
  });
});
