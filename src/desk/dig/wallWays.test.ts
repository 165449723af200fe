import { describe, expect, it } from "vitest";
import type { Walls } from "../../site/index.js";
import { wallsOtherWay, wallWayOf } from "./wallWays.js";
import type { KeptWalls, WallWay } from "./wallWays.js";

/** Goes through ways one after the other as the form does; walls as they end. */
function through(first: Walls, ways: readonly WallWay[], sides = 4): Walls {
  let walls = first;
  let kept: KeptWalls = {};
  for (const way of ways) {
    kept = { ...kept, [wallWayOf(walls)]: walls };
    walls = wallsOtherWay({ way, kept, sides, bench: 1.2 });
  }
  return walls;
}

describe("going to another way of wall and back", () => {
  it.each<[string, Walls]>([
    ["a slope", { by: "run", run: 1.75 }],
    ["each side's slope", { by: "run", run: 1.75, sides: [0, 1, 2, 3] }],
    ["layers with a ledge", { by: "layers", ledge: 0.5 }],
    ["benches", { by: "benches", rise: 1, tread: 0.8, first: 0.6 }],
  ])("keeps %s", (_, walls) => {
    const others = (["run", "sides", "layers", "benches"] as const).filter(
      (way) => way !== wallWayOf(walls),
    );
    expect(through(walls, [...others, wallWayOf(walls)])).toEqual(walls);
  });

  it("starts each side at the slope of all", () => {
    expect(through({ by: "run", run: 0.75 }, ["sides"], 3)).toEqual({
      by: "run",
      run: 0.75,
      sides: [0.75, 0.75, 0.75],
    });
  });

  it("lets go of sides that no longer fit the corners", () => {
    const kept: KeptWalls = { sides: { by: "run", run: 2, sides: [1, 1, 1] } };
    expect(wallsOtherWay({ way: "sides", kept, sides: 4, bench: 1 })).toMatchObject({
      sides: [2, 2, 2, 2],
    });
  });

  it("starts benches at the size that it is given", () => {
    expect(through({ by: "layers" }, ["benches"])).toEqual({
      by: "benches",
      rise: 1.2,
      tread: 1.2,
    });
  });
});
