import { describe, expect, it } from "vitest";
import { foundShape } from "../estimate/index.js";
import type { Limit } from "../site/index.js";
import { plainSite } from "../site/site.fixture.js";
import { sceneFrame } from "./frame.js";
import { supportsOf } from "./overhead.js";
import { stageGround } from "./stageGround.js";

/** Ground of 40 × 40 m about the origin that rises 1 in 10 to the east. */
const site = plainSite({ height: (x) => 100 + 0.1 * x });
const frame = sceneFrame(site);
const ground = stageGround(foundShape(site), null, frame.origin);
const line: Limit = {
  ...{ id: "o", kind: "overhead-line", height: 6 },
  path: [
    [-15, 0],
    [15, 5],
    [60, 5],
  ],
};

describe("an overhead line", () => {
  it("hangs as high over the ground at each support as is entered", () => {
    const supports = supportsOf(line, frame, ground) ?? [];
    expect(supports.map(({ wire }) => wire[2] + frame.origin[2])).toEqual([
      expect.closeTo(98.5 + 6),
      expect.closeTo(101.5 + 6),
      // Beyond the survey: as the last that is known.
      expect.closeTo(101.5 + 6),
    ]);
    expect(supports.map(({ foot }) => foot === null)).toEqual([false, false, true]);
  });

  it("is a line on the ground alone without a height, and for every other kind", () => {
    const { id, kind, path = [] } = line;
    expect(supportsOf({ id, kind, path }, frame, ground)).toBeNull();
    expect(supportsOf({ ...line, kind: "drive" }, frame, ground)).toBeNull();
    expect(
      supportsOf(
        {
          ...line,
          path: [
            [90, 0],
            [99, 0],
          ],
        },
        frame,
        ground,
      ),
    ).toBeNull();
  });
});
