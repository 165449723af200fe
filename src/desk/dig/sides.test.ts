import { describe, expect, it } from "vitest";
import type { PlanPoint } from "../../site/index.js";
import { padSides } from "./sides.js";

describe("padSides", () => {
  const square: PlanPoint[] = [
    [10, 10],
    [14, 10],
    [14, 14],
    [10, 14],
  ];
  const names = (outline: PlanPoint[]) => padSides(outline).map(({ name }) => name);

  it("tells which way each side lies, whichever way round the corners run", () => {
    expect(names(square)).toEqual(["South wall", "East wall", "North wall", "West wall"]);
    expect(names(square.toReversed())).toEqual([
      "North wall",
      "East wall",
      "South wall",
      "West wall",
    ]);
    expect(padSides(square)[3]?.aside).toBe("4–1");
  });

  it("names slanting sides and those in the notch of an outline", () => {
    expect(
      names([
        [0, 0],
        [4, 0],
        [0, 4],
      ]),
    ).toEqual(["South wall", "North-east wall", "West wall"]);
    const ell: PlanPoint[] = [
      [0, 0],
      [4, 0],
      [4, 2],
      [2, 2],
      [2, 4],
      [0, 4],
    ];
    expect(names(ell)[2]).toBe("North wall");
    expect(names(ell)[3]).toBe("East wall");
  });
});
