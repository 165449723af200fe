import { describe, expect, it } from "vitest";
import {
  baseGround,
  groundColumn,
  groundSurface,
  type BaseGround,
  type ColumnLayer,
} from "../ground/index.js";
import { plainPad, plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import type { Site, Work } from "../site/index.js";
import { digScheme } from "./dig.js";
import { digToStage, stageOf, type StageDig } from "./stage.js";
import { EXTENTS, type Extent } from "./work.js";

function baseOf(site: Site): BaseGround {
  const base = baseGround(site);
  if (!base.ok) throw new Error(base.problem.text);
  return base.base;
}

interface At {
  base: BaseGround;
  dig: StageDig;
}

function at(works: Work[], stage: Extent): At {
  const site = plainSite({ works });
  const base = baseOf(site);
  return { base, dig: digToStage(site, site.schemes[0]!, base, stage) };
}

/** The layers at a place from the top down, local heights. */
function layersAt({ base, dig }: At, x: number, y: number): ColumnLayer[] {
  const [ox, oy] = base.tin.origin;
  return groundColumn(dig.ground, x - ox, y - oy) ?? [];
}

/** Elevation of the surface at a place; NaN beyond the survey. */
function topAt(there: At, x: number, y: number): number {
  return (layersAt(there, x, y)[0]?.top ?? NaN) + there.base.tin.origin[2];
}

/** A tank's open hole with upright walls, and a pipe by cover that begins in it. */
const tank = plainTank({ overdig: 0.5 });
const trench = plainTrench({
  path: [
    [0, 0],
    [12, 0],
  ],
  pipes: [
    {
      id: "pipe",
      name: "Pipe",
      service: "pressure",
      inside: 0.1,
      outside: 0.1,
      material: "pvc",
      grade: { by: "cover", depth: 0.5 },
    },
  ],
});

describe("the holes of a stage", () => {
  it("does not follow an open hole down with a trench by cover, which is level on level ground", () => {
    const dug = at([tank, trench], "dug");
    const floor = topAt(dug, 8, 0);
    expect(floor).toBeCloseTo(100 - 0.5 - 0.1 - 0.1, 9);
    // Right beside the hole, 1.5 m from the tank's middle, and within it.
    expect(topAt(dug, 1.501, 0)).toBeCloseTo(floor, 9);
    expect(topAt(dug, 1.499, 0)).toBeCloseTo(97.8, 9);
    const [ox, oy, oz] = dug.base.tin.origin;
    const heights = groundSurface(dug.dig.ground, [
      [1.51 - ox, -oy],
      [11.9 - ox, -oy],
    ]).flatMap((line) => line.map(([, z]) => z + oz));
    expect(heights.length).toBeGreaterThan(1);
    for (const z of heights) expect(z).toBeCloseTo(floor, 9);
  });

  it("lets nothing hang in a hole that is not filled yet: fill on backfill comes with it", () => {
    const pad = plainPad({ top: 100.5, fill: "crushed-gravel" });
    const materials = (stage: Extent): string[] =>
      layersAt(at([tank, pad], stage), 1.2, 0)
        .filter(({ by }) => by >= 0)
        .map(({ material }) => material);
    expect(materials("dug")).toEqual([]);
    expect(materials("bedded")).toEqual(["pea-gravel"]);
    expect(materials("backfilled")).toEqual(["crushed-gravel", "native", "pea-gravel"]);
  });

  it("are those of the whole job, by material, whatever is dug twice", () => {
    // The trench digs out half of the pad's fill again, and all of the tank's backfill above it.
    const works = [plainPad({ top: 100.4, fill: "crushed-gravel" }), tank, trench];
    const site = plainSite({ works, layers: [0.3, 1] });
    const base = baseOf(site);
    const whole = digScheme(site, site.schemes[0]!, base);
    const cutOf = (stage: Extent): number[] =>
      ["topsoil", "clay", "shelf-rock"].map((material) =>
        stageOf(site, site.schemes[0]!, whole, stage).works.reduce(
          (sum, { cut }) => sum + (cut[material] ?? 0),
          0,
        ),
      );
    const { cut } = whole.result;
    for (const stage of EXTENTS.slice(1)) {
      expect(cutOf(stage)).toEqual([cut["topsoil"], cut["clay"], cut["shelf-rock"]]);
    }
    expect(cut["native"]).toBeGreaterThan(0.1);
  });

  it("keeps the ground that the whole job ends with as it is", () => {
    const site = plainSite({ works: [tank, trench] });
    const base = baseOf(site);
    const whole = digScheme(site, site.schemes[0]!, base);
    const read = (): string =>
      JSON.stringify(whole.ground.touchedTriangles().map((t) => whole.ground.cellsOf(t)));
    const before = read();
    for (const stage of EXTENTS) stageOf(site, site.schemes[0]!, whole, stage);
    expect(read()).toBe(before);
  });
});
