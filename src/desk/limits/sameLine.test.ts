import { describe, expect, it } from "vitest";
import type { Limit, PlanPoint } from "../../site/index.js";
import { sameLine } from "./sameLine.js";

describe("a lot line that is there already", () => {
  const path: PlanPoint[] = [
    [0, 0],
    [30, 0],
    [30, 20],
  ];
  const lot: Limit = { id: "lot", kind: "lot-line", closed: true, path };

  it("is known by its places, and one moved, open or longer is another", () => {
    const moved = path.map(([x, y]): PlanPoint => [x, y + 0.002]);
    expect(sameLine([lot], path, true)).toBe(lot);
    expect(sameLine([lot], moved, true)).toBeNull();
    expect(sameLine([lot], path, false)).toBeNull();
    expect(sameLine([lot], [...path, [0, 20]], true)).toBeNull();
  });
});
