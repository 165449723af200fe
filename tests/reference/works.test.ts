/** What works do to each other and what they displace: unions, identities, closed forms. */
import { describe, expect, it } from "vitest";
import { davisPoints } from "../fixtures/davis.js";
import {
  apart,
  dug,
  pad,
  pipe,
  planePoints,
  run,
  siteOf,
  tank,
  total,
  trench,
} from "../fixtures/site.js";
import { earthOf, integrateColumns } from "./columns.js";
import { holeChange, hollowOver } from "./shapes.js";

const EXACT = 1e-12;
const flat = planePoints(0, 0, 0);

describe("overlapping works", () => {
  const square = (x: number, y: number, size: number): [number, number][] => [
    [x, y],
    [x + size, y],
    [x + size, y + size],
    [x, y + size],
  ];

  it("vertical walls on flat ground: the union's volume, whatever the order", () => {
    const one = pad({ id: "one", outline: square(0, 0, 6), top: -2, walls: run(0) });
    const two = pad({ id: "two", outline: square(4, 3, 6), top: -3, walls: run(0) });
    const first = dug(siteOf({ points: flat, works: [one, two] }));
    const second = dug(siteOf({ points: flat, works: [two, one] }));
    // The overlap is 2 × 3; the deeper pad takes it whole.
    expect(apart(total(first.result.cut), 36 * 2 + 36 * 3 - 6 * 2)).toBeLessThan(EXACT);
    expect(apart(total(first.work("two").cut), 36 * 3 - 6 * 2)).toBeLessThan(EXACT);
    expect(first.gap).toBeLessThan(1e-11);
    expect(second.gap).toBeLessThan(1e-11);
  });

  it.each([1, 60])(
    "a pad beside a deeper pit fills down into it, ground surveyed in %d squares a side",
    (parts) => {
      const grid = Array.from({ length: (parts + 1) ** 2 }, (_, i): [number, number, number] => [
        -30 + (60 / parts) * (i % (parts + 1)),
        -30 + (60 / parts) * Math.floor(i / (parts + 1)),
        0,
      ]);
      const pit = pad({ id: "pit", outline: square(4, 3, 6), top: -3, walls: run(0) });
      const one = pad({ id: "one", outline: square(0, 0, 6), top: -2, walls: run(0) });
      const { work, gap } = dug(siteOf({ points: grid, works: [pit, one] }));
      // 2 × 3 of the pad lie over the pit, 1 m deep; two sides fall 2:1 into it, mitred.
      const sides = (2 * 1 * (2 + 3)) / 2 + (4 * 1) / 3;
      expect(apart(work("one").fill["native"]!, 6 + sides)).toBeLessThan(EXACT);
      expect(gap).toBeLessThan(1e-11);
    },
  );

  it("sloped walls in Davis's terrain: the union, by columns, whatever the order", () => {
    const points = davisPoints(0.25);
    const layers = ["topsoil", "clay", "limestone"];
    const probes = [[40, 40, 0.3, 1.4]] as const;
    const one = pad({ id: "one", outline: square(56, 38, 6), top: 219.8, walls: run(1) });
    const two = pad({ id: "two", outline: square(60, 41, 6), top: 219.8, walls: run(1) });
    const first = dug(siteOf({ points, layers, probes, works: [one, two] }));
    const second = dug(siteOf({ points, layers, probes, works: [two, one] }));
    const earth = earthOf(
      points.map(({ x, y, z }) => [x, y, z]),
      3,
      [[40, 40, 0.3, 1.4]],
    );
    const hollows = [one, two].map((each) => hollowOver(each.outline, 219.8));
    const { sums } = integrateColumns(earth, holeChange(hollows, 1), [46, 28, 76, 57]);
    layers.forEach((material, i) => {
      expect(apart(first.result.cut[material]!, sums[i]!)).toBeLessThan(1e-6);
      expect(apart(first.result.cut[material]!, second.result.cut[material]!)).toBeLessThan(1e-11);
    });
    expect(total(first.work("two").cut)).toBeLessThan(total(second.work("two").cut) - 1);
    expect(Math.max(first.gap, second.gap)).toBeLessThan(1e-11);
  });

  it("a trench through an earlier backfill digs backfill, not rock", () => {
    const layers = ["topsoil", "limestone"];
    const probes = [[0, 0, 0.2]] as const;
    const hole = tank({ body: { length: 0.5, width: 0.5, height: 0.4 }, base: -3, overdig: 1.5 });
    const across = trench({
      path: [
        [-8, 0],
        [8, 0],
      ],
    });
    const { work, gap } = dug(siteOf({ points: flat, layers, probes, works: [hole, across] }));
    const { cut } = work("trench");
    expect(apart(cut["native"]!, 3.5 * 0.6 * 1.105)).toBeLessThan(EXACT);
    expect(apart(cut["topsoil"]!, 12.5 * 0.6 * 0.2)).toBeLessThan(EXACT);
    expect(apart(cut["limestone"]!, 12.5 * 0.6 * 0.905)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(1e-11);
  });

  it("the same trench twice digs only what the first put back, and as much", () => {
    const twin = trench({ id: "twin", pipes: [pipe({ id: "other" })] });
    const { work, gap } = dug(siteOf({ points: flat, works: [trench(), twin] }));
    expect(apart(total(work("twin").cut), total(work("trench").cut))).toBeLessThan(EXACT);
    expect(work("twin").cut["common-earth"]).toBeUndefined();
    expect(gap).toBeLessThan(1e-11);
  });

  it("a hole that runs into a set tank leaves it standing and says so", () => {
    const beside = pad({ outline: square(0, -4, 8), top: -1.2, walls: run(0) });
    const { work, result, gap } = dug(siteOf({ points: flat, works: [tank(), beside] }));
    expect(result.findings.map((f) => f.code)).toContain("dig.meets-structure");
    // Half the tank (0.9 m of its width) stands in the pad, 0.9 m of it above the subgrade and the
    // fill above it up to the ground is dug: 64 × 1.2 − 0.9 × 3 × (1.2 − 0.3).
    expect(apart(total(work("pad").cut), 64 * 1.2 - 0.9 * 3 * 0.9)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(1e-11);
  });
});

describe("what is displaced", () => {
  it.each([0, 0.75])("cut of a tank hole = bedding + tank + backfill, walls run %f", (slope) => {
    const { work } = dug(
      siteOf({ points: flat, works: [tank({ bearing: 17, walls: run(slope) })] }),
    );
    const { cut, fill, displaced } = work();
    expect(apart(displaced, 3 * 1.8 * 1.7)).toBeLessThan(EXACT);
    expect(apart(total(cut), total(fill) + displaced)).toBeLessThan(EXACT);
    const bed = (at: number): number => (3.6 + 2 * slope * at) * (2.4 + 2 * slope * at);
    const bedding = (0.15 / 6) * (bed(0) + 4 * bed(0.075) + bed(0.15));
    expect(apart(fill["crushed-gravel"]!, bedding)).toBeLessThan(EXACT);
  });

  it("a tank that stands partly out displaces only its part below the ground", () => {
    const { work, gap } = dug(
      siteOf({ points: flat, works: [tank({ base: -1.1, bearing: 50, walls: run(0.5) })] }),
    );
    expect(apart(work().displaced, 3 * 1.8 * 1.1)).toBeLessThan(EXACT);
    expect(apart(total(work().cut), total(work().fill) + work().displaced)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(1e-11);
  });

  it("a tank on a slope that leaves one end out: the wedge below the ground", () => {
    // Ground z = y/2 along the tank (bearing 0, length 4, underside at 0): buried for y > 0.
    const { work } = dug(
      siteOf({
        points: planePoints(0, 0.5, 0),
        works: [tank({ body: { length: 4, width: 2, height: 3 }, base: 0 })],
      }),
    );
    expect(apart(work().displaced, (2 * 2 * 1) / 2)).toBeLessThan(EXACT);
  });

  it.each([0, 0.01, 0.3])("a buried pipe, fall %f: π/4·od²·L·√(1 + fall²)", (fall) => {
    const grade = { by: "fall", start: -1, fall } as const;
    const { work, gap } = dug(
      siteOf({ points: flat, works: [trench({ pipes: [pipe({ grade })] })] }),
    );
    const exact = (Math.PI / 4) * 0.11 ** 2 * 16 * Math.hypot(1, fall);
    expect(apart(work().displaced, exact)).toBeLessThan(EXACT);
    const { cut, fill, displaced } = work();
    expect(apart(total(cut), total(fill) + displaced)).toBeLessThan(EXACT);
    expect(gap).toBeLessThan(1e-11);
  });

  it("trench fills, vertical walls on flat ground: three boxes less the pipe", () => {
    const { work } = dug(siteOf({ points: flat, works: [trench()] }));
    const { fill, displaced } = work();
    expect(apart(fill["crushed-gravel"]!, 16 * 0.6 * 0.1)).toBeLessThan(EXACT);
    expect(apart(fill["pea-gravel"]! + displaced, 16 * 0.6 * (0.11 + 0.15))).toBeLessThan(EXACT);
    expect(apart(fill["native"]!, 16 * 0.6 * (1.105 - 0.36))).toBeLessThan(EXACT);
  });

  it("a pipe half out of the ground displaces its half below", () => {
    const grade = { by: "inverts", start: -0.05, end: -0.05 } as const;
    const { work } = dug(siteOf({ points: flat, works: [trench({ pipes: [pipe({ grade })] })] }));
    expect(apart(work().displaced, ((Math.PI / 4) * 0.11 ** 2 * 16) / 2)).toBeLessThan(EXACT);
  });
});

describe("pipe by cover", () => {
  it("keeps its cover below a falling ground and its floor follows", () => {
    const works = [trench({ pipes: [pipe({ grade: { by: "cover", depth: 0.6 } })] })];
    const { work, result } = dug(siteOf({ points: planePoints(-0.05, 0, 3), works }));
    const laid = result.pipes[0]!;
    expect(laid.fall).toBeCloseTo(0.05, 12);
    expect(laid.cover.least).toBeCloseTo(0.6, 12);
    expect(laid.cover.most).toBeCloseTo(0.6, 12);
    expect(apart(total(work().cut), 16 * 0.6 * 0.81)).toBeLessThan(EXACT);
  });
});
