/** Nothing appears or vanishes at any stage of the job: before − cut + fill = after, every material. */
import { describe, expect, it } from "vitest";
import { lookAt } from "../fixtures/faults.js";
import { movedSite, STILL } from "../fixtures/moved.js";
import { siteOf, tank, pad, run, trench } from "../fixtures/site.js";
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
