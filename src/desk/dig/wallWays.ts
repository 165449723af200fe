import type { Walls } from "../../site/index.js";
import { words } from "../../words/index.js";

/** The ways of cutting walls as the form offers them: one slope and each side's own are one in the file. */
export const WALL_WAYS = [
  { id: "run", name: words.digLeaf.oneSlope },
  { id: "sides", name: words.digLeaf.eachSideOwn },
  { id: "layers", name: words.digLeaf.eachLayerOwn },
  { id: "benches", name: words.digLeaf.benches },
] as const;

export type WallWay = (typeof WALL_WAYS)[number]["id"];

/** Walls as last typed, by way, so that going to another way and back loses nothing. */
export type KeptWalls = Readonly<Partial<Record<WallWay, Walls>>>;

/** Which way these walls are cut. */
export function wallWayOf(walls: Walls): WallWay {
  return walls.by === "run" && walls.sides !== undefined ? "sides" : walls.by;
}

/** What a form knows when it goes to another way of wall. */
interface OtherWay {
  way: WallWay;
  /** Walls of before, this form's latest included. */
  kept: KeptWalls;
  /** How many sides the hole has. */
  sides: number;
  /** Rise and tread of a bench that nobody has typed, m. */
  bench: number;
}

/** The slope last typed for all sides, run per rise; 1 when none was. */
function slopeOf({ run, sides }: KeptWalls): number {
  const last = run ?? sides;
  return last?.by === "run" ? last.run : 1;
}

/**
 * The walls cut another way: as they were typed last time, or else with figures to start from. A
 * slope for all sides starts each side's own; sides kept for another number of corners are let go.
 */
export function wallsOtherWay({ way, kept, sides, bench }: OtherWay): Walls {
  const before = kept[way];
  const run = slopeOf(kept);
  switch (way) {
    case "run":
      return { by: "run", run };
    case "sides": {
      const own = before?.by === "run" ? before.sides : undefined;
      return {
        by: "run",
        run,
        sides: own?.length === sides ? own : Array.from({ length: sides }, () => run),
      };
    }
    case "layers":
      return before ?? { by: "layers" };
    case "benches":
      return before ?? { by: "benches", rise: bench, tread: bench };
  }
}
