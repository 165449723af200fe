import { describe, expect, it } from "vitest";
import type { Trench } from "../site/index.js";
import { insideOutline, signedArea } from "../ground/index.js";
import { alongPath, invertLine, rectangle, spoilCone, strip, subdivide } from "./workShapes.js";

describe("rectangle", () => {
  it("points its long side along the bearing and runs counter-clockwise", () => {
    const east = rectangle([10, 10], 90, 6, 2);
    expect(Math.max(...east.map((p) => p[0]))).toBeCloseTo(13, 9);
    expect(Math.max(...east.map((p) => p[1]))).toBeCloseTo(11, 9);
    expect(signedArea(east)).toBeCloseTo(12, 9);
  });
});

describe("strip", () => {
  it("has the area of its legs along a straight path, and mitres a square bend", () => {
    expect(
      Math.abs(
        signedArea(
          strip(
            [
              [0, 0],
              [10, 0],
            ],
            2,
          ),
        ),
      ),
    ).toBeCloseTo(20, 9);
    const bent = strip(
      [
        [0, 0],
        [10, 0],
        [10, 10],
      ],
      2,
    );
    // Two legs of 10 × 2 less the corner counted twice (1 × 1 inside) plus the mitre (1 × 1).
    expect(Math.abs(signedArea(bent))).toBeCloseTo(40, 9);
    expect(insideOutline(bent, 10.9, -0.9)).toBe(true);
  });
});

describe("paths", () => {
  it("finds the middle by length and keeps bends when divided", () => {
    expect(
      alongPath(
        [
          [0, 0],
          [2, 0],
          [2, 6],
        ],
        0.5,
      ),
    ).toEqual([2, 2]);
    const fine = subdivide(
      [
        [0, 0],
        [2, 0],
        [2, 1],
      ],
      0.5,
    );
    expect(fine).toContainEqual([2, 0]);
    expect(fine).toHaveLength(7);
  });
});

describe("invertLine", () => {
  const trench: Trench = {
    kind: "trench",
    id: "t",
    name: "T",
    path: [
      [0, 0],
      [6, 0],
      [6, 4],
    ],
    width: 0.5,
    walls: { by: "run", run: 0 },
    bedding: { depth: 0.1, material: "gravel" },
    zone: { above: 0.15, material: "gravel" },
    backfill: "native",
    pipes: [],
  };
  const pipe = {
    id: "p",
    name: "P",
    service: "gravity" as const,
    inside: 0.1,
    outside: 0.12,
    material: "pvc",
  };

  it("is uniform in plan distance for inverts and for fall", () => {
    const inverts = { ...pipe, grade: { by: "inverts" as const, start: 5, end: 4 } };
    expect(invertLine(trench, inverts, () => 9).map((p) => p[2])).toEqual([5, 4.4, 4]);
    const fall = { ...pipe, grade: { by: "fall" as const, start: 5, fall: 0.02 } };
    expect(invertLine(trench, fall, () => 9).at(-1)?.[2]).toBeCloseTo(4.8, 9);
  });

  it("keeps its cover from the ground to the top outside of the pipe", () => {
    const cover = { ...pipe, grade: { by: "cover" as const, depth: 0.6 } };
    for (const [x, , z] of invertLine(trench, cover, ([at]) => 10 + at)) {
      const top = z + pipe.inside / 2 + pipe.outside / 2;
      expect(10 + x - top).toBeCloseTo(0.6, 9);
    }
  });
});

describe("spoilCone", () => {
  // 76.5 bank m³ swelling by 12% at 32° stands 10.156 m across and 3.173 m high: the worked figures
  // kept for this formula (Nunnally, Construction Methods and Management, spoil banks; second hand).
  it("gives the published diameter and height", () => {
    const cone = spoilCone(76.5 * 1.12, 32);
    expect(cone.diameter).toBeCloseTo(10.156, 2);
    expect(cone.height).toBeCloseTo(3.173, 2);
  });

  it("holds its volume", () => {
    const { diameter, height } = spoilCone(40, 37);
    expect((Math.PI * diameter ** 2 * height) / 12).toBeCloseTo(40, 1);
  });
});
