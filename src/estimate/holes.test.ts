// Layered walls: 29 CFR 1926 Subpart P, Appendix A (c)(4) (second), the widths derived from it.
// Short term: Appendix B, Table B-1, note (second). Ways out: 29 CFR 1926.651(c)(2) (read). Ladder
// 3 ft above the edge: 29 CFR 1926.1053 (read). Water: 1926.651(h) (recalled).
import { describe, expect, it } from "vitest";
import type { Layer, Site, Work } from "../site/index.js";
import { plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import { estimate } from "./estimate.js";

const FOOT = 0.3048;

type Soil = NonNullable<Layer["soil"]>;
const C: Soil = { ground: "soil", grain: "granular" };
const A: Soil = {
  ground: "soil",
  grain: "cohesive",
  strength: "high",
  water: "dry",
  fissured: false,
  shaken: false,
  disturbed: false,
  dips: "no",
};
const B: Soil = { ...A, strength: "middle" };
const STABLE: Soil = { ground: "rock", rock: "stable" };

/** A site of two layers, the upper so thick, each with its soil as typed. */
function layered(
  thick: number,
  soils: readonly [Soil | undefined, Soil],
  works: Work[],
  over?: object,
): Site {
  const plain = plainSite({ works, ...over });
  const layer = (id: string, material: string, soil?: Soil): Layer => ({
    ...{ id, name: id, material },
    ...(soil !== undefined && { soil }),
  });
  return {
    ...plain,
    ground: {
      layers: [layer("upper", "clay", soils[0]), layer("lower", "sandy-loam", soils[1])],
      probes: [{ id: "t1", x: 0, y: 0, thickness: [thick] }],
    },
  };
}

const safetyOf = (site: Site) => estimate(site, "plan");

/** A pit with a floor 8 ft wide and so deep, long to the north, in ground at 100 m. */
const pit = (depth: number, over: Parameters<typeof plainTank>[0] = {}): Work =>
  plainTank({
    body: { length: 6, width: 8 * FOOT, height: 1 },
    base: 100 - depth + 0.1,
    bedding: { depth: 0.1, material: "pea-gravel" },
    ...over,
  });

/** Width of the opening east to west, m. */
function dugWidth(site: Site): number {
  const rings = safetyOf(site).works[0]?.outlines?.daylight ?? [];
  const east = rings.flatMap((ring) => ring.map(([x]) => x));
  return Math.max(...east) - Math.min(...east);
}

describe("where a hole's layers and its tallest face are measured", () => {
  // Rises 1 in 5 to the north; the pit's floor ends 3 m north of the origin, at 98 m.
  const slope = { height: (_: number, y: number) => 100 + 0.2 * y };
  const works = (run: number): Work[] => [pit(2, { walls: { by: "run", run } })];

  it("is one place in walls that are upright, and on level ground", () => {
    for (const site of [layered(1, [C, A], works(0), slope), layered(1, [C, A], works(1))]) {
      const [hole] = safetyOf(site).holes;
      expect(hole?.layersOver).toBeCloseTo(hole?.face ?? 0, 6);
    }
  });

  it("on a slope is the floor's edge for the layers, and for the face where the wall comes out", () => {
    const [hole] = safetyOf(layered(1, [C, A], works(1), slope)).holes;
    // 2 m deep at the middle, 0.2 × 3 m more over the edge; the wall at 1 : 1 meets 1 in 5 after f/0.8.
    expect(hole?.layersOver).toBeCloseTo(2.6, 6);
    expect(hole?.face).toBeCloseTo(2.6 / 0.8, 6);
    const thick = hole?.layers.map(({ thickness }) => thickness) ?? [];
    expect(thick.reduce((a, b) => a + b, 0)).toBeCloseTo(2.6, 6);
  });

  it("takes the slope's higher ground for no backfill of an earlier hole", () => {
    const trench = plainTrench({
      ...{ id: "old", width: 0.4 },
      path: [
        [-8, 0],
        [8, 0],
      ],
    });
    const [, hole] = safetyOf(layered(1, [C, A], [trench, ...works(1)], slope)).holes;
    expect(hole?.layers.map(({ layer }) => layer)).toEqual(["upper", "lower"]);
  });
});

describe("what the layers of a hole want of its walls", () => {
  it.each<[string, Soil, Soil, number]>([
    ["3 ft of type C over 5 ft of stable rock", C, STABLE, 17],
    ["3 ft of type C over 5 ft of type A", C, A, 24.5],
    ["3 ft of type A over 5 ft of type C", A, C, 32],
  ])("8 ft floor, 8 ft deep: %s", (_, upper, lower, top) => {
    const works = [pit(8 * FOOT, { walls: { by: "layers" } })];
    const site = layered(3 * FOOT, [upper, lower], works);
    const [hole] = safetyOf(site).holes;
    expect((hole?.width?.wanted ?? 0) / FOOT).toBeCloseTo(top, 6);
    expect((hole?.width?.drawn ?? 0) / FOOT).toBeCloseTo(top, 6);
    expect(dugWidth(site) / FOOT).toBeCloseTo(top, 6);
    expect(hole?.change).toBeNull();
  });

  it("offers each layer its own slope where the walls are drawn steeper", () => {
    const walls = { by: "run", run: 0.5 } as const;
    const { holes, findings } = safetyOf(layered(1, [C, STABLE], [pit(2, { walls })]));
    expect(holes[0]?.layers.map(({ wanted, drawn }) => [wanted, drawn])).toEqual([
      [1.5, 0.5],
      [0, 0.5],
    ]);
    expect(holes[0]?.change).toEqual({ by: "layers" });
    expect(findings.map(({ code }) => code)).toContain("walls.too-steep");
  });

  it("goes by the material while nobody has typed the soil", () => {
    const { holes } = safetyOf(layered(1, [undefined, C], [pit(2)]));
    expect(holes[0]?.layers.map((each) => [each.class, each.own])).toEqual([
      ["untyped", 1],
      ["type-c", 1.5],
    ]);
  });

  it("looks at the tallest face of sloping ground", () => {
    const height = (x: number) => 100 + x / 4;
    const { holes } = safetyOf(layered(1, [C, A], [pit(2)], { height }));
    expect(holes[0]?.face).toBeCloseTo(2 + FOOT, 6);
    const thick = holes[0]?.layers.map((each) => each.thickness) ?? [];
    expect(thick[0]! + thick[1]!).toBeCloseTo(2 + FOOT, 6);
  });
});

describe("type A soil open for a day", () => {
  const at = (feet: number, openDay: boolean, upper: Soil = A) =>
    safetyOf(layered(9, [upper, A], [pit(feet * FOOT, { openDay })])).holes[0];

  it("stands at ½ : 1 to 12 ft and not beyond", () => {
    expect(at(12, true)?.layers[0]?.wanted).toBe(0.5);
    expect(at(12.1, true)?.layers[0]?.wanted).toBe(0.75);
    expect(at(12, false)?.layers[0]?.wanted).toBe(0.75);
  });

  it("and no other soil does", () => {
    expect(at(8, true, B)?.shortTerm).toBe(false);
    expect(at(8, true, B)?.layers[0]?.wanted).toBe(1);
  });
});

describe("rock that stands", () => {
  const codesOf = (soils: [Soil, Soil], thick: number) =>
    safetyOf(layered(thick, soils, [pit(2)])).findings;

  it("is let off where somebody typed it as stable all the way, and says so", () => {
    const codes = codesOf([STABLE, STABLE], 1).map(({ code }) => code);
    expect(codes).toContain("walls.stable-rock");
    expect(codes).not.toContain("walls.protect");
  });

  it("is not let off once soil lies over it", () => {
    const protect = codesOf([C, STABLE], 0.5).find(({ code }) => code === "walls.protect");
    expect(protect?.text).toContain("not let off, since soil lies over it");
  });

  it("is not let off where it is fractured", () => {
    const fractured: Soil = { ground: "rock", rock: "fractured", water: "dry", dips: "no" };
    const codes = codesOf([fractured, STABLE], 1).map(({ code }) => code);
    expect(codes).toContain("walls.protect");
  });
});

describe("benches", () => {
  const codesOf = (soil: Soil, first: number, rise: number) =>
    safetyOf(
      layered(
        9,
        [soil, soil],
        [pit(4, { walls: { by: "benches", first: first * FOOT, rise: rise * FOOT, tread: 3 } })],
      ),
    )
      .findings.map(({ code }) => code)
      .filter((code) => /bench/.test(code));

  it("of type A are 4 ft at the foot and 5 ft above, at most", () => {
    expect(codesOf(A, 4, 5)).toEqual([]);
    expect(codesOf(A, 4.1, 5)).toEqual(["walls.bench-high"]);
    expect(codesOf(A, 4, 5.1)).toEqual(["walls.bench-high"]);
  });

  it("of type B are 4 ft at most, and only where it is cohesive", () => {
    expect(codesOf(B, 4, 4)).toEqual([]);
    expect(codesOf(B, 4, 4.1)).toEqual(["walls.bench-high"]);
    expect(codesOf({ ...A, grain: "silt" }, 4, 4)).toEqual(["walls.no-benches"]);
  });

  it("are barred in type C", () => {
    expect(codesOf(C, 3, 3)).toEqual(["walls.no-benches"]);
  });
});

describe("water that a probe met", () => {
  const wet = (water: number, soils: [Soil, Soil] = [A, A]) => {
    const site = layered(1, soils, [pit(2)]);
    const probes = site.ground.probes.map((probe) => ({ ...probe, water }));
    return safetyOf({ ...site, ground: { ...site.ground, probes } });
  };
  const said = (water: number) => wet(water).findings.some(({ code }) => code === "water.in-hole");

  it("is told where it stands over the floor, and not below", () => {
    expect(said(1.99)).toBe(true);
    expect(said(2.01)).toBe(false);
  });

  it("makes the soil under it type C, and so all that lies over that", () => {
    const { holes } = wet(1.5);
    expect(holes[0]?.layers.map((each) => [each.class, each.wanted])).toEqual([
      ["type-a", 1.5],
      ["type-c", 1.5],
    ]);
    expect(holes[0]?.change).toEqual({ by: "run", run: 1.5 });
  });

  it("leaves rock as it is that somebody has found stable", () => {
    expect(wet(1.5, [A, STABLE]).holes[0]?.layers[1]?.class).toBe("stable-rock");
  });
});

describe("ladders", () => {
  const trench = (length: number, depth: number): Work => {
    const plain = plainTrench({
      path: [
        [-length / 2, 0],
        [length / 2, 0],
      ],
    });
    if (plain.kind !== "trench") throw new Error("expected a trench");
    const invert = 100 - depth + 0.1 + 0.005;
    const grade = { by: "inverts", start: invert, end: invert } as const;
    return { ...plain, pipes: plain.pipes.map((pipe) => ({ ...pipe, grade })) };
  };
  const ladders = (work: Work, half = 40) =>
    safetyOf(layered(9, [A, A], [work], { half })).holes[0]?.ladders ?? [];

  it("are wanted from 4 ft", () => {
    expect(ladders(trench(10, 4 * FOOT))).toHaveLength(1);
    expect(ladders(trench(10, 3.99 * FOOT))).toHaveLength(0);
  });

  it("stand within 25 ft of everyone along a trench, 3 ft above its edge", () => {
    expect(ladders(trench(50 * FOOT, 6 * FOOT))).toHaveLength(1);
    const two = ladders(trench(51 * FOOT, 6 * FOOT));
    expect(two).toHaveLength(2);
    expect(two[0]?.length).toBeCloseTo(9 * FOOT, 6);
    expect(two[1]!.at[0] - two[0]!.at[0]).toBeCloseTo(25.5 * FOOT, 0);
  });

  it("stand where a trench is deep, not where it has run out", () => {
    // The ground falls from 1.5 m over the floor at the west end to 0.5 m at the east.
    const height = (x: number) => 99 - x / 20;
    const all = safetyOf(layered(9, [A, A], [trench(20, 2)], { half: 40, height })).holes[0];
    expect(all?.ladders).toHaveLength(1);
    // Deep from −10 to 20 × (1 − 1.2192) = −4.38: its middle is at −7.2.
    expect(all?.ladders[0]?.at[0]).toBeCloseTo(-7.2, 0);
  });

  it("are as many round a pit as its floor's edge asks for", () => {
    const edge = (length: number) => pit(2, { body: { length, width: 3, height: 1 } });
    expect(ladders(edge(4.6))).toHaveLength(1);
    expect(ladders(edge(4.7))).toHaveLength(2);
  });
});
