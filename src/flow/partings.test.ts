import { describe, expect, it } from "vitest";
import { partingsOf } from "./partings.js";
import type { PipeCheck } from "./types.js";

type Drawn = Parameters<typeof partingsOf>[0][number];

/** A pipe from one place to another, of the field or not. */
function pipe(id: string, from: [number, number], to: [number, number], field: boolean): Drawn {
  const station = (at: [number, number], along: number): PipeCheck["stations"][number] => ({
    ...{ station: along, at, ground: 1, invert: 0 },
  });
  const stations = [station(from, 0), station(to, Math.hypot(to[0] - from[0], to[1] - from[1]))];
  return { id, service: "gravity", field, stations };
}

describe("where the water parts to a field", () => {
  const drain = pipe("drain", [0, 0], [10, 0], false);
  const north = pipe("north", [10.5, 0.3], [20, 5], true);
  const south = pipe("south", [10.4, -0.5], [20, -5], true);

  it("is at the end of the drain, by which two pipes of the field begin", () => {
    expect(partingsOf([drain, north, south])).toEqual([
      { at: [10, 0], into: ["drain"], out: ["north", "south"] },
    ]);
    const second = pipe("second", [0, 9], [10.2, 0.2], false);
    expect(partingsOf([drain, second, north, south])[0]?.into).toEqual(["drain", "second"]);
  });

  it("is nowhere for one pipe, for pipes of no field, and for pipes that begin elsewhere", () => {
    expect(partingsOf([drain, north])).toEqual([]);
    expect(partingsOf([drain, { ...north, field: false }, south])).toEqual([]);
    expect(partingsOf([drain, north, pipe("far", [12, 0], [20, 0], true)])).toEqual([]);
  });
});
