import { describe, expect, it } from "vitest";
import type { PlanPoint } from "../site/index.js";
import { simplified } from "./simplified.js";

describe("a line with fewer places", () => {
  const bent: PlanPoint[] = [
    [0, 0],
    [5, 0.1],
    [10, 0],
    [10, 10],
  ];

  it("leaves out what lies within the distance, and keeps what lies just beyond it", () => {
    expect(simplified(bent, 0.11)).toEqual([bent[0], bent[2], bent[3]]);
    expect(simplified(bent, 0.09)).toEqual(bent);
  });

  it("keeps both ends, and a line that comes back to its start", () => {
    expect(simplified([bent[0]!, bent[1]!], 1)).toEqual([bent[0], bent[1]]);
    const round: PlanPoint[] = [[0, 0], [3, 4], [0, 0]]; // prettier-ignore
    expect(simplified(round, 1)).toEqual(round);
  });
});
