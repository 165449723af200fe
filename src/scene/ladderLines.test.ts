import { describe, expect, it } from "vitest";
import type { Estimate } from "../estimate/index.js";
import type { SceneFrame } from "./frame.js";
import { ladderLines } from "./works/LadderModels.js";

const frame = { origin: [10, 20, 90] } as unknown as SceneFrame;
const withLadder = {
  holes: [{ ladders: [{ at: [11, 22], floor: 92, length: 3 }] }],
} as unknown as Estimate;

describe("the lines of a ladder", () => {
  it("stand upright from the floor of the hole to the ladder's top", () => {
    const lines = ladderLines(withLadder, frame);
    const heights = [...lines].filter((_, i) => i % 3 === 2);
    expect(Math.min(...heights)).toBeCloseTo(2, 5);
    expect(Math.max(...heights)).toBeCloseTo(5, 5);
    // Two rails and a rung every 0.3 m.
    expect(lines.length).toBe((2 + 10) * 6);
    expect(lines[1]).toBeCloseTo(2, 5);
  });

  it("are none where no hole asks for one", () => {
    expect(ladderLines(null, frame)).toHaveLength(0);
  });
});
