import { describe, expect, it } from "vitest";
import { baseGround } from "../ground/index.js";
import type { Site } from "../site/index.js";
import { plainPad, plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import { digScheme, ledgerGap } from "./dig.js";
import { meanBuriedArea } from "./pipeVolume.js";
import type { DigResult } from "./types.js";

/** Digs the site's first scheme, checks the ground and the ledger, and returns the result. */
function dug(site: Site): DigResult {
  const base = baseGround(site);
  if (!base.ok) throw new Error(base.problem.text);
  const scheme = site.schemes[0]!;
  const { result, ground } = digScheme(site, scheme, base.base);
  expect(ledgerGap(scheme, result, ground)).toBeLessThan(1e-9);
  return result;
}

describe("a tank", () => {
  it("in a vertical hole on flat ground: layers, bedding, backfill and displaced by hand", () => {
    const tank = plainTank({ overdig: 0.5 });
    const { works, earth } = dug(plainSite({ works: [tank], layers: [0.3, 1] }));
    const [hole] = works;
    const floor = 4 * 3;
    expect(hole?.cut.topsoil).toBeCloseTo(floor * 0.3, 9);
    expect(hole?.cut.clay).toBeCloseTo(floor * 1, 9);
    expect(hole?.cut["shelf-rock"]).toBeCloseTo(floor * 0.9, 9);
    expect(hole?.fill["pea-gravel"]).toBeCloseTo(floor * 0.2, 9);
    expect(hole?.displaced).toBeCloseTo(3 * 2 * 1.5, 9);
    expect(hole?.fill.native).toBeCloseTo(floor * 2 - 9, 9);
    expect(hole?.daylight).toBeCloseTo(floor, 9);
    expect(hole?.deepest).toBeCloseTo(2.2, 9);
    expect(hole?.floor.lowest).toBeCloseTo(97.8, 9);
    expect(earth.bank).toBeCloseTo(floor * 2.2, 9);
  });

  it("with 1:1 walls is the frustum, and its own earth goes back around it", () => {
    const tank = plainTank({
      walls: { by: "run", run: 1 },
      bedding: { depth: 0, material: "pea-gravel" },
    });
    const { works } = dug(plainSite({ works: [tank] }));
    const frustum = (2 / 6) * (3 * 2 + 4 * (5 * 4) + 7 * 6);
    expect(works[0]?.cut.clay).toBeCloseTo(frustum, 9);
    expect(works[0]?.daylight).toBeCloseTo(42, 9);
    expect(works[0]?.fill.native).toBeCloseTo(frustum - 9, 9);
  });

  it("that stands out of the ground displaces only what is below it", () => {
    const { works } = dug(plainSite({ works: [plainTank({ base: 99 })] }));
    expect(works[0]?.displaced).toBeCloseTo(6, 9);
    expect(works[0]?.fill.native ?? 0).toBeCloseTo(0, 9);
  });

  it("above the ground cuts nothing and says so", () => {
    const { works, findings } = dug(plainSite({ works: [plainTank({ base: 101 })] }));
    expect(works[0]?.cut).toEqual({});
    expect(findings.map((f) => f.code)).toEqual(["dig.above-ground"]);
  });

  it("with benches is cut in steps", () => {
    const walls = { by: "benches" as const, rise: 1, tread: 0.5 };
    const tank = plainTank({ walls, bedding: { depth: 0, material: "pea-gravel" } });
    const { works, findings } = dug(plainSite({ works: [tank] }));
    expect(works[0]?.cut.clay).toBeCloseTo(3 * 2 + 4 * 3, 9);
    expect(findings).toEqual([]);
  });

  it("with benches too small for its depth says so, and soon", () => {
    const walls = { by: "benches" as const, rise: 1e-9, tread: 1e-9 };
    const { findings } = dug(plainSite({ works: [plainTank({ walls })] }));
    expect(findings.map((f) => f.code)).toEqual(["walls.too-many-benches"]);
  });

  it("finds its uphill face taller than its middle", () => {
    const walls = { by: "run" as const, run: 1 };
    const site = plainSite({ height: (x) => 100 + 0.25 * x, works: [plainTank({ walls })] });
    const [hole] = dug(site).works;
    // Floor 97.8; uphill edge at x = 1, so 97.8 + (x − 1) = 100 + 0.25 x there.
    const x = (100 - 97.8 + 1) / 0.75;
    expect(hole?.tallestFace).toBeCloseTo(100 + 0.25 * x - 97.8, 9);
    expect(hole?.tallestFace).toBeGreaterThan(hole?.deepest ?? 0);
  });

  it("whose walls run off the edge of the survey is a stop too, though its floor is inside", () => {
    const tank = plainTank({ at: [17, 0], walls: { by: "run", run: 2 } });
    const { findings } = dug(plainSite({ works: [tank] }));
    expect(findings.map((f) => `${f.level} ${f.code}`)).toEqual(["stop survey.too-small"]);
    expect(findings[0]?.text).toContain("cut off at the edge");
  });

  it("outside the survey's boundary, but inside its points, is a caution", () => {
    const site = plainSite({ works: [plainTank({ at: [10, 0] })] });
    const boundary: [number, number][] = [
      [-20, -20],
      [9, -20],
      [9, 20],
      [-20, 20],
    ];
    const { findings } = dug({ ...site, survey: { ...site.survey, boundary } });
    expect(findings.map((f) => `${f.level} ${f.code}`)).toEqual([
      "caution survey.outside-boundary",
    ]);
  });

  it("too near the edge of the survey is a stop, not a silent cut-off", () => {
    const { findings } = dug(
      plainSite({ works: [plainTank({ at: [19.2, 0], walls: { by: "run", run: 1 } })] }),
    );
    expect(findings.map((f) => `${f.level} ${f.code}`)).toEqual(["stop survey.too-small"]);
  });
});

describe("a trench", () => {
  it("straight and level: cut, bedding, zone less the pipe, backfill", () => {
    const { works, pipes } = dug(plainSite({ works: [plainTrench()] }));
    const [trench] = works;
    const plan = 10 * 0.6;
    const underside = 99 - 0.005;
    const pipe = (Math.PI / 4) * 0.11 ** 2 * 10;
    expect(trench?.cut.clay).toBeCloseTo(plan * (100 - (underside - 0.1)), 9);
    expect(trench?.displaced).toBeCloseTo(pipe, 12);
    expect(trench?.fill["pea-gravel"]).toBeCloseTo(plan * (0.1 + 0.11 + 0.15) - pipe, 9);
    expect(trench?.fill.native).toBeCloseTo(plan * (100 - underside - 0.26), 9);
    expect(pipes[0]?.cover.least).toBeCloseTo(100 - underside - 0.11, 9);
  });

  it("with a right-angled bend is its legs and a square corner, once", () => {
    const path: [number, number][] = [
      [-5, 0],
      [0, 0],
      [0, 5],
    ];
    const { works } = dug(plainSite({ works: [plainTrench({ path })] }));
    const depth = 100 - (99 - 0.105);
    expect(works[0]?.cut.clay).toBeCloseTo(depth * (5.3 * 0.6 + 4.7 * 0.6), 9);
  });

  it("that turns back on itself digs no spike", () => {
    const path: [number, number][] = [
      [-5, 0],
      [5, 0],
      [-5, 0.01],
    ];
    const { works } = dug(plainSite({ works: [plainTrench({ path })] }));
    const straight = 10 * 0.6 * (100 - (99 - 0.105));
    const [cut] = [works[0]?.cut.clay ?? 0];
    expect(cut).toBeGreaterThan(straight);
    expect(cut).toBeLessThan(straight * 1.15);
  });

  it("by cover follows the ground, and a gravity pipe never rises", () => {
    const height = (x: number): number => 100 - 0.1 * Math.abs(x);
    const pipes = (service: "gravity" | "pressure") => [
      {
        id: "pipe",
        name: "Pipe",
        service,
        inside: 0.1,
        outside: 0.11,
        material: "PVC",
        grade: { by: "cover" as const, depth: 0.6 },
      },
    ];
    const run = (service: "gravity" | "pressure") =>
      dug(plainSite({ height, works: [plainTrench({ pipes: pipes(service) })] })).pipes[0]!;
    const pressure = run("pressure");
    expect(pressure.cover.least).toBeCloseTo(0.6, 9);
    expect(pressure.cover.most).toBeCloseTo(0.6, 9);
    const gravity = run("gravity");
    expect(gravity.cover.least).toBeCloseTo(0.6, 9);
    expect(gravity.cover.most).toBeCloseTo(1.1, 9);
    gravity.stations.reduce((last, at) => {
      expect(at.invert).toBeLessThanOrEqual(last + 1e-9);
      return at.invert;
    }, Infinity);
  });

  it("through an earlier backfill digs backfill, not rock", () => {
    const site = plainSite({ works: [plainTank({ base: 97 }), plainTrench()], layers: [0.3, 0.2] });
    const { works } = dug(site);
    const inHole = 2 * 0.6;
    const depth = 100 - (99 - 0.105);
    expect(works[1]?.cut.native).toBeCloseTo(inHole * depth, 9);
    expect(works[1]?.cut["shelf-rock"]).toBeCloseTo(0.6 * 8 * (depth - 0.5), 9);
  });
});

describe("a pad", () => {
  it("half in cut and half in fill on a plane slope", () => {
    const pad = plainPad({ course: { depth: 0.1, material: "crushed-gravel" } });
    const { works } = dug(plainSite({ height: (x) => 99.9 + 0.1 * x, works: [pad] }));
    const half = (3 * 0.3 * 4) / 2;
    expect(works[0]?.cut.clay).toBeCloseTo(half, 9);
    expect(works[0]?.fill.native).toBeCloseTo(half, 9);
    expect(works[0]?.fill["crushed-gravel"]).toBeCloseTo(6 * 4 * 0.1, 9);
  });

  it("whose fill falls outwards 2 : 1: its foot where that meets the ground", () => {
    const course = { depth: 0.1, material: "crushed-gravel" };
    const slope = { height: (x: number): number => 99.9 + 0.1 * x };
    const foot = dug(plainSite({ ...slope, works: [plainPad({ course, fillRun: 2 })] })).works[0]
      ?.fillFoot;
    const xs = (foot ?? []).flat().map(([x]) => x);
    // At the west edge the fill is 0.3 m high: 0.3 - d / 2 = -0.1 d.
    expect(Math.min(...xs)).toBeCloseTo(-3.75, 9);
    expect(Math.max(...xs)).toBeCloseTo(0, 9);
    const cutOnly = plainPad({ top: 99, walls: { by: "run", run: 1 } });
    expect(dug(plainSite({ works: [cutOnly] })).works[0]?.fillFoot).toBeUndefined();
  });

  it("of concave outline with sloped walls: an L is the union of its two rectangles' holes", () => {
    const outline: [number, number][] = [
      [-3, -3],
      [3, -3],
      [3, 0],
      [0, 0],
      [0, 3],
      [-3, 3],
    ];
    const pad = plainPad({ outline, top: 99, walls: { by: "run", run: 1 } });
    const { works } = dug(plainSite({ works: [pad] }));
    // Offset outlines at height t: a 6 × 6 square grown by t, less the notch that shrinks to 3 − t.
    const area = (t: number): number => (6 + 2 * t) ** 2 - 9;
    const exact = (area(0) + 4 * area(0.5) + area(1)) / 6;
    expect(works[0]?.cut.clay).toBeCloseTo(exact, 9);
  });
});

describe("overlapping works", () => {
  it("count nothing twice, in either order", () => {
    const one = plainPad({ id: "one", top: 99 });
    const two = plainPad({
      id: "two",
      top: 99,
      outline: [
        [0, -2],
        [6, -2],
        [6, 2],
        [0, 2],
      ],
    });
    for (const works of [
      [one, two],
      [two, one],
    ]) {
      expect(dug(plainSite({ works })).cut.clay).toBeCloseTo(9 * 4, 9);
    }
  });
});

describe("meanBuriedArea", () => {
  it("is the segment's area where level, and its mean where the ground slopes", () => {
    expect(meanBuriedArea(0.2, 1, 2)).toBeCloseTo(Math.PI * 0.01, 12);
    expect(meanBuriedArea(0.2, 0.1, 0.1)).toBeCloseTo((Math.PI * 0.01) / 2, 12);
    expect(meanBuriedArea(0.2, 0, 0.2)).toBeCloseTo((Math.PI * 0.01) / 2, 12);
    expect(meanBuriedArea(0.2, -1, -0.5)).toBe(0);
    const steps = 20000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const h = 0.03 + ((i + 0.5) / steps) * 0.1;
      sum += meanBuriedArea(0.2, h, h) / steps;
    }
    expect(meanBuriedArea(0.2, 0.03, 0.13)).toBeCloseTo(sum, 9);
  });
});
