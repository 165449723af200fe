import { describe, expect, it } from "vitest";
import type { Site } from "../site/index.js";
import { waterTable } from "./waterTable.js";

const layers = [{ id: "clay", name: "Clay", material: "clay" }];
const probe = (id: string, x: number, water?: number): Site["ground"]["probes"][number] => ({
  id,
  x,
  y: 0,
  thickness: [],
  ...(water !== undefined && { water }),
});
const under = (probes: Site["ground"]["probes"]) => waterTable({ layers, probes }, [0, 0, 0]);

describe("water between the probes that met it", () => {
  it("is not known where none met any", () => {
    expect(under([probe("a", 0), probe("b", 10)])).toBeNull();
  });

  it("is as deep everywhere as the only one met it", () => {
    expect(under([probe("a", 0, 2), probe("b", 10)])?.(50, 50)).toBe(2);
  });

  it("runs straight from one to the other, past a probe that says nothing of it", () => {
    const at = under([probe("a", 0, 1), probe("dry", 5), probe("b", 10, 3)]);
    expect(at?.(5, 0)).toBeCloseTo(2, 12);
    expect(at?.(20, 7)).toBeCloseTo(3, 12);
  });
});
