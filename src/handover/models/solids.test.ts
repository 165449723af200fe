import { describe, expect, it } from "vitest";
import { STAGES } from "../../estimate/index.js";
import type { Bed, PlanPoint } from "../../site/index.js";
import { plainSite } from "../../site/site.fixture.js";
import { polygonsOf } from "./geoJson.js";
import { prism, solidsOf, tube } from "./solids.js";

/** Volume of a closed solid by the divergence theorem: positive when its sides face outwards. */
function volume(corners: readonly number[]): number {
  let six = 0;
  for (let i = 0; i < corners.length; i += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = corners.slice(i, i + 9) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/** Every edge of a closed solid is walked once each way. */
function isClosed(corners: readonly number[]): boolean {
  const walked = new Map<string, number>();
  const key = (i: number): string =>
    corners
      .slice(i, i + 3)
      .map((part) => part.toFixed(9))
      .join(" ");
  for (let i = 0; i < corners.length; i += 9) {
    const [a, b, c] = [key(i), key(i + 3), key(i + 6)];
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      walked.set(`${from}>${to}`, (walked.get(`${from}>${to}`) ?? 0) + 1);
    }
  }
  return [...walked].every(([edge, times]) => {
    const [from, to] = edge.split(">");
    return walked.get(`${to}>${from}`) === times;
  });
}

describe("a prism", () => {
  const ell: PlanPoint[] = [
    [0, 0],
    [4, 0],
    [4, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ];

  it("is closed, faces outwards and has base × height, also on an outline that turns inwards", () => {
    // 4 × 1 + 1 × 2 = 6 m², 2 m high.
    expect(volume(prism(ell, 5, 7))).toBeCloseTo(12, 9);
    expect(volume(prism([...ell].reverse(), 5, 7))).toBeCloseTo(12, 9);
    expect(isClosed(prism(ell, 5, 7))).toBe(true);
  });
});

describe("a raised bed", () => {
  const bed: Bed = {
    ...{ kind: "bed", id: "bed", name: "Bed", at: [2, 3], bearing: 30 },
    ...{ length: 6, width: 4, height: 1, wall: 0.2, base: 100 },
    filling: [
      { material: "drain-sand", depth: 0.6 },
      { material: "topsoil", depth: 0.4 },
    ],
  };
  const at = (stage: (typeof STAGES)[number]): ReturnType<typeof solidsOf> =>
    solidsOf(plainSite({ works: [bed] }), bed, stage);

  it("is filled to its top in the end, and closed all over", () => {
    const solids = at("backfilled");
    for (const { corners } of solids) expect(isClosed(corners)).toBe(true);
    const filling = solids.filter(({ kind }) => typeof kind !== "string");
    expect(filling.map(({ kind }) => kind)).toEqual([
      { material: "drain-sand" },
      { material: "topsoil" },
    ]);
    // 5.6 × 3.6 m inside the walls, 0.6 and 0.4 m deep; walls and filling are the whole box.
    expect(volume(filling[0]!.corners)).toBeCloseTo(5.6 * 3.6 * 0.6, 9);
    expect(volume(filling[1]!.corners)).toBeCloseTo(5.6 * 3.6 * 0.4, 9);
    expect(solids.reduce((sum, { corners }) => sum + volume(corners), 0)).toBeCloseTo(24, 9);
  });

  it("stands from the stage that sets it on, without the soil until it is covered", () => {
    expect(STAGES.map((stage) => at(stage).length)).toEqual([0, 0, 0, 0, 2, 2, 3]);
  });
});

describe("a tube", () => {
  it("is closed, faces outwards and has the twelve-sided area × length", () => {
    const radius = 0.1;
    const corners = tube(
      [
        [0, 0, 1],
        [0, 5, 1],
      ],
      radius,
    );
    // Area of a regular 12-gon: n/2 r² sin(2π/n).
    expect(volume(corners)).toBeCloseTo(6 * radius ** 2 * Math.sin(Math.PI / 6) * 5, 9);
    expect(isClosed(corners)).toBe(true);
  });

  it("bends, and stays closed", () => {
    const corners = tube(
      [
        [0, 0, 1],
        [5, 0, 0.9],
        [5, 5, 0.8],
      ],
      0.05,
    );
    expect(isClosed(corners)).toBe(true);
    expect(volume(corners)).toBeGreaterThan(0);
  });

  it("is nothing without a length", () => {
    expect(
      tube(
        [
          [1, 1, 1],
          [1, 1, 1],
        ],
        0.1,
      ),
    ).toEqual([]);
  });
});

describe("rings as polygons", () => {
  const square = (x: number, size: number): [number, number][] => [
    [x, 0],
    [x + size, 0],
    [x + size, size],
    [x, size],
  ];

  it("give each hole to the ring that it lies in", () => {
    const hole = square(12, 2)
      .map(([x, y]): [number, number] => [x, y + 1])
      .reverse();
    expect(polygonsOf([square(0, 5), hole, square(10, 5)])).toEqual([
      [square(0, 5)],
      [square(10, 5), hole],
    ]);
  });
});
