import { describe, expect, it } from "vitest";
import { plainPad, plainStrip } from "../site/site.fixture.js";
import { localWork } from "./place.js";

const ORIGIN = [100, 200, 50] as const;

describe("localWork", () => {
  it("brings a pad's levels into the local frame, and leaves its fall", () => {
    const pad = plainPad({
      fall: { bearing: 30, slope: 0.02 },
      levels: [
        {
          outline: [
            [100, 200],
            [101, 200],
            [101, 203],
          ],
          top: 52,
        },
      ],
    });
    expect(localWork(pad, ORIGIN)).toMatchObject({
      top: 50,
      fall: { bearing: 30, slope: 0.02 },
      levels: [
        {
          outline: [
            [0, 0],
            [1, 0],
            [1, 3],
          ],
          top: 2,
        },
      ],
    });
    expect(localWork(plainPad(), ORIGIN)).not.toHaveProperty("levels");
  });

  it("moves a strip's own outline, and leaves one over a work", () => {
    const local = localWork(plainStrip({ depth: 0.2 }), ORIGIN);
    expect(local).toMatchObject({
      depth: 0.2,
      area: {
        outline: [
          [-104, -204],
          [-96, -204],
          [-96, -196],
          [-104, -196],
        ],
      },
    });
    const over = plainStrip({ area: { by: "work", work: "pad", beyond: 1 } });
    expect(localWork(over, ORIGIN)).toEqual(over);
  });
});
