import { describe, expect, it } from "vitest";
import { PlanDrawing, RANK } from "./planDrawing.js";

describe("lettering of what lies off a plan", () => {
  const room = { left: 10, top: 10, width: 100, height: 80 };
  const marksFor = (anchor: readonly [number, number]): number => {
    const drawing = new PlanDrawing({ room, middle: [0, 0], scale: 200 });
    drawing.label(RANK.must, { lines: ["Tank"], size: 2.5, anchor, must: true });
    return drawing.finish("Lettering").marks.length;
  };

  it("is left off, so that no leader runs out of the plan", () => {
    expect(marksFor([115, 50])).toBe(0);
    expect(marksFor([105, 50])).toBeGreaterThan(0);
  });
});
