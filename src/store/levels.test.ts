import { describe, expect, it } from "vitest";
import type { Pad } from "../site/index.js";
import { plainPad, plainSite } from "../site/site.fixture.js";
import { levelDistance, nextLevel } from "./levels.js";

/** Falls to the east at 1 in 5. */
const hillside = plainSite({ height: (x) => 100 - x / 5 });
const pad = (change: Partial<Pad> = {}): Pad => plainPad(change) as Pad;

describe("the next level of a stepped pad", () => {
  it("lies straight down the slope, at the ground there", () => {
    const level = nextLevel(hillside, pad(), 8);
    expect(level?.outline).toEqual([
      [5, -2],
      [11, -2],
      [11, 2],
      [5, 2],
    ]);
    // The mean of the ground at x = 5 and x = 11.
    expect(level?.top).toBeCloseTo(100 - 8 / 5, 9);
  });

  it("follows the level that was added last", () => {
    const first = nextLevel(hillside, pad(), 7);
    const second = nextLevel(hillside, pad({ levels: first === null ? [] : [first] }), 7);
    expect(second?.outline[0]).toEqual([11, -2]);
  });

  it("leaves room for the bank between the levels", () => {
    // Extent 6 m down the slope; a bank at 2 : 1 on ground of 1 in 5 takes 2/5 of the distance.
    const distance = levelDistance(hillside, pad({ fillRun: 2 }));
    expect(distance).toBeCloseTo(10, 9);
    // Without a bank the levels meet.
    expect(levelDistance(hillside, pad())).toBeCloseTo(6, 9);
  });

  it("says nothing beyond the survey", () => {
    expect(nextLevel(hillside, pad(), 30)).toBeNull();
    const away = pad({
      outline: [
        [50, 0],
        [52, 0],
        [52, 2],
      ],
    });
    expect(levelDistance(hillside, away)).toBeNull();
  });
});
