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

describe("a lot line that is drawn", () => {
  it("is the whole lot from four corners on, where none was before", () => {
    expect(closedOf("lot-line", FOUR)).toBe(true);
    expect(closedOf("lot-line", FOUR.slice(0, 3))).toBe(false);
    expect(closedOf("lot-line", [...FOUR.slice(0, 3), FOUR[0]!])).toBe(true);
  });

  it("is one line of several where another is there already; an easement always is", () => {
    const first = withPlacedLimit(plainSite({}), "lot-line", FOUR.slice(0, 2))!.site;
    expect(closedOf("lot-line", FOUR, first)).toBe(false);
    expect(closedOf("easement", FOUR)).toBe(false);
  });
});
