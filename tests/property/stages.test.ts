/** Nothing appears or vanishes at any stage of the job: before − cut + fill = after, every material. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { digScheme, stageOf } from "../../src/dig/index.js";
import {
  areaOf,
  integrate,
  minus,
  surfaceOf,
  type Cell,
  type LayeredGround,
} from "../../src/ground/index.js";
import { schemeOf } from "../../src/estimate/index.js";
import { readSite, type Site } from "../../src/site/index.js";
import { lookAt } from "../fixtures/faults.js";
import { movedSite, STILL } from "../fixtures/moved.js";
import { groundOf, siteOf, tank, pad, run, total, trench } from "../fixtures/site.js";
import { LAYERS, PROBES, threeWorks } from "../fixtures/threeWorks.js";

const ALL = { places: 200, stages: true };

describe("conservation and the layers at 200 places, at every stage", () => {
  const parts = threeWorks();
  // An L of right angles, whose walls the scalar model can place by itself.
  const angle = (25 * Math.PI) / 180;
  const ell: [number, number][] = [
    [0, 0],
    [12, 0],
    [12, 4],
    [5, 4],
    [5, 9],
    [0, 9],
  ];
  const outline = ell.map(([x, y]): [number, number] => [
    60 + x * Math.cos(angle) - y * Math.sin(angle),
    42 + x * Math.sin(angle) + y * Math.cos(angle),
  ]);
  const site = siteOf({
    ...parts,
    works: parts.works.map((work) => (work.kind === "pad" ? { ...work, outline } : work)),
  });

  it("three works in Davis's terrain", () => {
    const looked = lookAt(site, ALL);
    expect(looked).toMatchObject({ faults: [] });
    // Most of the places must have been comparable at each of the stages.
    expect("compared" in looked && looked.compared).toBeGreaterThan(4 * 150);
  });

  it("turned, and a million metres away", () => {
    const far = movedSite(site, { ...STILL, turn: 31, east: 1e6, north: 4e6, lift: 500 });
    expect(lookAt(far, ALL)).toMatchObject({ faults: [] });
  });

  it("works that run into each other: a pad, a tank in it, and a trench from the tank", () => {
    const works = [
      pad({
        outline: [
          [40, 40],
          [52, 40],
          [52, 50],
          [40, 50],
        ],
        top: 219,
        walls: run(1),
        course: { depth: 0.2, material: "crushed-gravel" },
      }),
      tank({ at: [46, 45], bearing: 70, base: 217, walls: run(0.5) }),
      trench({
        path: [
          [46, 45],
          [55, 47],
          [60, 40],
        ],
        walls: run(0.3),
        pipes: [
          {
            id: "p",
            name: "p",
            service: "gravity",
            inside: 0.1,
            outside: 0.11,
            material: "pvc",
            grade: { by: "fall", start: 218, fall: 0.02 },
          },
        ],
      }),
    ];
    const { points } = threeWorks();
    const looked = lookAt(siteOf({ points, layers: LAYERS, probes: PROBES, works }), ALL);
    expect(looked).toMatchObject({ faults: [] });
    expect("compared" in looked && looked.compared).toBeGreaterThan(4 * 150);
  });
});

/** m³ between a level and the ground in some cells. */
function under(cells: readonly Cell[], level: number): number {
  return cells.reduce(
    (sum, cell) => sum + integrate(cell, surfaceOf(cell)) - level * areaOf(cell),
    0,
  );
}

/** m³ of a tank in a cell. */
function builtIn(cell: Cell): number {
  const i = cell.layers.findIndex(({ structure }) => structure);
  const [top, bottom] = [cell.tops[i], cell.tops[i - 1]];
  return top && bottom ? integrate(cell, minus(top, bottom)) : 0;
}

/** m³ by which a stage's surface lies under the ground as found, tanks taken for air. */
function sunk(ground: LayeredGround): number {
  const { base } = ground;
  let volume = 0;
  for (const triangle of ground.touchedTriangles()) {
    const cells = ground.cellsOf(triangle);
    volume += under(base.cellsOf(triangle), base.tin.lowest) - under(cells, base.tin.lowest);
    volume += cells.reduce((sum, cell) => sum + builtIn(cell), 0);
  }
  return volume;
}

describe("the surface of a stage of an example", () => {
  const cases = ["alder-flat", "quarry-lane"].flatMap((name): [string, string, Site][] => {
    const file = new URL(`../../shared/sites/${name}.site.json`, import.meta.url);
    const read = readSite(readFileSync(file, "utf8"));
    if (!read.ok) throw new Error(`${name} cannot be read`);
    return read.value.schemes.map(({ id }) => [name, id, read.value]);
  });

  it.each(cases)("lies by the estimate's volumes under that as found: %s, %s", (_, id, site) => {
    const scheme = schemeOf(site, id);
    const dug = digScheme(site, scheme, groundOf(site));
    const { cut, works: whole } = dug.result;
    const natural = site.ground.layers.map(({ material }) => material);
    const estimated = natural.reduce((sum, material) => sum + (cut[material] ?? 0), 0);
    // Else what is dug twice would be counted with the ground as found.
    const put = whole.flatMap(({ kind, fill }) => (kind === "bed" ? [] : Object.keys(fill)));
    expect(put.filter((material) => natural.includes(material))).toEqual([]);
    for (const stage of ["dug", "bedded", "set", "zone", "backfilled"] as const) {
      const { ground, works } = stageOf(site, scheme, dug, stage);
      const standing = works.map(({ kind, fill, displaced, heap }) => {
        if (kind === "bed") return 0;
        return total(fill) + (heap?.volume ?? 0) + (kind === "trench" ? displaced : 0);
      });
      // Once backfilled, what was dug out of earlier fill is in the cuts and stands no more.
      const out = stage === "backfilled" ? total(cut) : estimated;
      expect(sunk(ground), stage).toBeCloseTo(out - standing.reduce((sum, one) => sum + one, 0), 7);
    }
  });
});
