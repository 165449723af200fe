import { describe, expect, it } from "vitest";
import { digOf, schemeOf, tankOf, trenchOf, workOf } from "../dig/dig.fixture.js";
import type { PlanPoint } from "../site/index.js";
import { axisToEdge, type CanContext } from "./canIt.js";
import { catalogueDiggers } from "./catalogue.js";
import { diggerPlace } from "./diggerPlace.js";

const DIGGER = catalogueDiggers()[2]!;
const BACK = axisToEdge(DIGGER, { scheme: {} });

function square(half: number, [x, y]: PlanPoint = [0, 0]): PlanPoint[] {
  return [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];
}

const HOLE = workOf({
  id: "t",
  deepest: 2,
  outlines: { daylight: [square(2.5)], toe: [square(1.5)] },
});

function placed(over: Partial<CanContext> = {}) {
  const scheme = schemeOf({ works: [tankOf("t")] });
  return diggerPlace(DIGGER, HOLE, { scheme, dig: digOf([HOLE]), units: "metric", ...over });
}

describe("where a digger stands", () => {
  it("is the set-back and half its tracks from the hole's edge, pointing at the floor's middle", () => {
    const place = placed();
    expect(place?.towards).toEqual([0, 0]);
    const [x, y] = place?.at ?? [0, 0];
    expect(Math.max(Math.abs(x), Math.abs(y))).toBeCloseTo(2.5 + BACK, 9);
  });

  it("is not in another work's hole or heap where another side is free", () => {
    // Holes on three sides: only the west is left.
    const middles: PlanPoint[] = [
      [6, 0],
      [0, 6],
      [0, -6],
    ];
    const others = middles.map((middle, i) =>
      workOf({ id: `o${i}`, outlines: { daylight: [square(3, middle)], toe: [] } }),
    );
    const at = placed({ dig: digOf([HOLE, ...others]) })?.at;
    expect(at?.[0]).toBeCloseTo(-2.5 - BACK, 9);
  });

  it("is nowhere where every side is barred, and for a work that is not dug", () => {
    // Level from west to east only: far too steep to stand on anywhere.
    expect(placed({ groundAt: ([, y]) => 2 * y })).toBeNull();
    const scheme = schemeOf({ works: [tankOf("t")] });
    const none = workOf({ id: "t" });
    expect(diggerPlace(DIGGER, none, { scheme, dig: digOf([none]), units: "metric" })).toBeNull();
  });

  it("is beyond the end of a trench, in line with it", () => {
    const trench = trenchOf("d", 0.6);
    const dug = workOf({
      id: "d",
      deepest: 1,
      outlines: {
        daylight: [
          [
            [0, -0.3],
            [10, -0.3],
            [10, 0.3],
            [0, 0.3],
          ],
        ],
        toe: [],
      },
    });
    const scheme = schemeOf({ works: [trench] });
    const place = diggerPlace(DIGGER, dug, { scheme, dig: digOf([dug]), units: "metric" });
    expect(Math.abs((place?.at[0] ?? 0) - 5)).toBeCloseTo(5 + BACK, 9);
    expect(place?.at[1]).toBeCloseTo(0, 9);
  });
});
