import { describe, expect, it } from "vitest";
import { digOf, schemeOf, tankOf, trenchOf, workOf } from "../dig/dig.fixture.js";
import type { Building, Limit, PlanPoint, Scheme } from "../site/index.js";
import { axisToEdge, heldAgainst, notReachedFromOutside, reachAtDepth } from "./canIt.js";
import type { CanContext } from "./canIt.js";
import { catalogueDiggers, diggersOf, ownDiggerFindings } from "./catalogue.js";
import type { Digger } from "./catalogue.js";

function digger(over: Partial<Digger> = {}): Digger {
  const like = catalogueDiggers().find(({ id }) => id === "digger-5-5t");
  if (like === undefined) throw new Error("got no digger-5-5t in the catalogue");
  return { ...like, digDepth: 4, reach: 6, trackLength: 2.4, tailSwing: 1.6, ...over };
}

/** A square ring, counter-clockwise, of that half side about the origin. */
function square(half: number): PlanPoint[] {
  return [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ];
}

/** A square hole 2.4 m deep in level ground at 0, floor 3 m square, top edge 5 m square. */
const HOLE = workOf({
  id: "t",
  cut: { clay: 20 },
  deepest: 2.4,
  tallestFace: 2.4,
  floor: { lowest: -2.4, highest: -2.4 },
  outlines: { daylight: [square(2.5)], toe: [square(1.5)] },
});

function held(one: Digger, over: Partial<CanContext> = {}) {
  const scheme = schemeOf({ works: [tankOf("t")] });
  return heldAgainst(one, {
    scheme,
    dig: digOf([HOLE]),
    units: "metric",
    groundAt: () => 0,
    ...over,
  });
}
const codes = (reasons: readonly { code: string }[]) => reasons.map(({ code }) => code);

describe("reach at depth", () => {
  it("is a quarter ellipse from the reach at the ground to the digging depth", () => {
    const one = digger({ reach: 5, digDepth: 5 });
    expect(reachAtDepth(one, -1)).toBe(5);
    expect(reachAtDepth(one, 0)).toBe(5);
    expect(reachAtDepth(one, 3)).toBeCloseTo(4, 12);
    expect(reachAtDepth(one, 5)).toBe(0);
  });

  it("asks that the near foot of a pit's wall be reached from outside, both sides of it", () => {
    // Standing 0.6096 + 1.2 m back from the edge; the wall's foot is 1 m inside it.
    expect(axisToEdge(digger(), { scheme: {} })).toBeCloseTo(1.8096, 12);
    const atDepth = Math.sqrt(1 - (2.4 / 4) ** 2);
    expect(held(digger({ reach: 2.82 / atDepth }))).toEqual([]);
    const [reason] = held(digger({ reach: 2.8 / atDepth }));
    expect(reason).toMatchObject({ code: "reach", work: "t", unit: "m" });
    expect(reason?.has).toBeCloseTo(2.8, 9);
    expect(reason?.needs).toBeCloseTo(2.8096, 9);
  });

  it("says when a pit can only be dug backing away", () => {
    const fence = (x: number): Limit => ({
      id: `f${x}`,
      kind: "fence",
      path: [
        [x, -50],
        [x, 50],
      ],
    });
    const south: Limit = {
      id: "s",
      kind: "lot-line",
      path: [
        [-50, -3],
        [50, -3],
      ],
    };
    const limits = [fence(-3), fence(3), south];
    const said = (one: Digger, more: Partial<CanContext> = {}) =>
      codes(
        notReachedFromOutside(one, {
          scheme: schemeOf({ works: [tankOf("t")] }),
          ...{ dig: digOf([HOLE]), units: "metric", groundAt: () => 0, ...more },
        }),
      );
    const atDepth = Math.sqrt(1 - (2.4 / 4) ** 2);
    // From all sides the middle of the floor is hardest: 2.5 + 1.8096 m off, less the grid's half step.
    expect(said(digger({ reach: 4.5 / atDepth }))).toEqual([]);
    expect(said(digger({ reach: 3.9 / atDepth }))).toEqual(["machine.dig-backwards"]);
    // From the one side left the far corners of the floor are over 1.8096 + 2.5 + 1.5 m off.
    expect(held(digger(), { limits })).toEqual([]);
    expect(said(digger(), { limits })).toEqual(["machine.dig-backwards"]);
    expect(said(digger({ reach: 9 }), { limits })).toEqual([]);
  });

  it("drives over a flood path, an easement or a drive, but not over a lot line", () => {
    // Its hole lies all but at a line on every side: only what may be driven over leaves it room.
    const round = (kind: string): Limit => ({
      ...{ id: kind, kind, closed: true },
      path: [
        [-2.6, -2.6],
        [2.6, -2.6],
        [2.6, 2.6],
        [-2.6, 2.6],
        [-2.6, -2.6],
      ],
    });
    for (const kind of ["flood-path", "easement", "drive"]) {
      expect(held(digger(), { limits: [round(kind)] })).toEqual([]);
    }
    expect(held(digger(), { limits: [round("lot-line")] })).not.toEqual([]);
  });

  it("reaches a trench standing in line with it", () => {
    const dig = digOf([workOf({ id: "r", kind: "trench", cut: { clay: 9 }, deepest: 3 })]);
    const scheme = schemeOf({ works: [trenchOf("r", 0.6)] });
    const needs = Math.hypot(1.8096, 0.3);
    const at3 = Math.sqrt(1 - (3 / 4) ** 2);
    expect(held(digger({ reach: needs / at3 + 0.01 }), { dig, scheme })).toEqual([]);
    expect(codes(held(digger({ reach: needs / at3 - 0.01 }), { dig, scheme }))).toEqual(["reach"]);
  });
});

describe("what else a digger is held against", () => {
  const machines = (given: Scheme["machines"]) =>
    schemeOf({ works: [tankOf("t")], ...(given && { machines: given }) });

  it("takes the tallest face where that is more than the deepest cut", () => {
    const dig = digOf([{ ...HOLE, tallestFace: 4.01 }]);
    expect(held(digger(), { dig })[0]).toMatchObject({ code: "depth", needs: 4.01, has: 4 });
  });

  it("the way in: width, slope and what the ground may carry", () => {
    const one = digger({ width: 2, mostSlope: 0.25, groundPressure: 30_000 });
    const lift = {
      crane: { by: "catalogue" as const, id: "boom-truck-15t" },
      rigging: 0,
      stands: [],
    };
    const fits = machines({
      access: { width: 2, slope: 0.25 },
      lift: { ...lift, groundBearing: 3e4 },
    });
    expect(held(one, { scheme: fits })).toEqual([]);
    const not = machines({
      access: { width: 1.99, slope: 0.5 },
      lift: { ...lift, groundBearing: 29_000 },
    });
    expect(codes(held(one, { scheme: not }))).toEqual([
      "access-slope",
      "ground-pressure",
      "access-width",
    ]);
  });

  it("the truck's side, only where surplus is hauled", () => {
    const dig = digOf([HOLE], { surplusLoose: 10 });
    expect(codes(held(digger({ dumpHeight: 2.4 }), { dig }))).toEqual(["dump-height"]);
    expect(held(digger({ dumpHeight: 2.5 }), { dig })).toEqual([]);
    const pile = {
      kind: "pile" as const,
      id: "p",
      name: "Pile",
      at: [30, 0] as PlanPoint,
      material: "clay",
    };
    const scheme = schemeOf({ works: [tankOf("t"), pile] });
    expect(held(digger({ dumpHeight: 1 }), { dig, scheme })).toEqual([]);
  });

  it("the slope that it must stand on", () => {
    const one = digger({ mostSlope: 0.25 });
    expect(codes(held(one, { groundAt: ([x]) => 0.24 * x }))).not.toContain("stand-slope");
    const [reason] = held(one, { groundAt: ([x]) => 0.26 * x });
    expect(reason).toMatchObject({ code: "stand-slope", has: 0.25, work: "t" });
    expect(reason?.needs).toBeCloseTo(0.26, 9);
  });

  it("an overhead line within its reach and the distance to keep", () => {
    const line = (y: number): Limit => ({
      id: "l",
      kind: "overhead-line",
      voltage: 12_000,
      path: [
        [-50, y],
        [50, y],
      ],
    });
    // Standing 4.3096 m south of the middle it needs 6 + 3.048 m from the line.
    const far = 6 + 3.048 - 4.3096;
    expect(codes(held(digger(), { limits: [line(far - 0.01)] }))).toEqual(["stand-line"]);
    expect(codes(held(digger(), { limits: [line(far + 0.01)] }))).not.toContain("stand-line");
  });

  it("a building that its tail would strike, but not one before its arm", () => {
    const building = (id: string, south: number, north: number): Building => ({
      kind: "building",
      id,
      name: id,
      outline: [
        [-9, south],
        [9, south],
        [9, north],
        [-9, north],
      ],
      base: 0,
      height: 3,
    });
    // The trench ends at the house; 1.8096 m off it the digger has the shed at y = 0.4 behind it.
    const path: PlanPoint[] = [
      [0, 3.99],
      [0, 4],
    ];
    const dig = digOf([workOf({ id: "r", kind: "trench", cut: { clay: 9 }, deepest: 1 })]);
    const works = [
      building("house", 4, 8),
      building("shed", -4, 0.4),
      { ...trenchOf("r", 0.6), path },
    ];
    const scheme = schemeOf({ works });
    expect(held(digger({ tailSwing: 1.77 }), { dig, scheme })).toEqual([]);
    expect(codes(held(digger({ tailSwing: 1.81 }), { dig, scheme }))).toEqual(["stand-building"]);
    const open = schemeOf({ works: works.filter(({ id }) => id !== "shed") });
    expect(held(digger({ tailSwing: 1.9 }), { dig, scheme: open })).toEqual([]);
  });
});

describe("the person's own diggers", () => {
  it("stand in for a row of the catalogue or come after it, and keep what they do not give", () => {
    const scheme = schemeOf({
      machines: {
        diggers: [
          { id: "digger-8t", like: "digger-8t", reach: 7.5 },
          { id: "mine", like: "digger-3-5t", name: "Mine", digDepth: 3.4 },
        ],
      },
    });
    const all = diggersOf(scheme);
    expect(all.map(({ id }) => id)).toEqual([...catalogueDiggers().map(({ id }) => id), "mine"]);
    expect(all.find(({ id }) => id === "digger-8t")).toMatchObject({ reach: 7.5, digDepth: 4.5 });
    expect(all.at(-1)).toMatchObject({ name: "Mine", digDepth: 3.4, reach: 5.1 });
    expect(ownDiggerFindings(scheme)).toEqual([]);
  });

  it("say so when they are like none, or given twice", () => {
    const scheme = schemeOf({
      machines: {
        diggers: [
          { id: "a", like: "steam-shovel" },
          { id: "a", like: "digger-8t" },
        ],
      },
    });
    expect(codes(ownDiggerFindings(scheme))).toEqual(["machine.unknown-like", "machine.twice"]);
  });
});
