import { describe, expect, it } from "vitest";
import {
  addLayer,
  addProbe,
  addWork,
  changePipe,
  changePoint,
  changeWork,
  findWork,
  freshId,
  moveLimit,
  moveWork,
  removeLayer,
  removeLimit,
  removePoint,
  removeWork,
  renameWork,
  reorderWork,
  setTolerance,
  setUnits,
  stripsOver,
  turnWork,
  withSurvey,
} from "./edits.js";
import { moveOneCorner } from "./corners.js";
import { duplicateWork } from "./copies.js";
import { setPrice } from "./schemeEdits.js";
import { checkSite } from "./read.js";
import type { Site, Tank, Trench } from "./schema.js";
import { plainPad, plainSite, plainStrip, plainTank } from "./site.fixture.js";

const tank: Tank = {
  kind: "tank",
  id: "tank-1",
  name: "Tank 1",
  at: [5, 6],
  bearing: 30,
  body: { length: 3, width: 1.7, height: 1.6 },
  base: 98,
  overdig: 0.3,
  bedding: { depth: 0.15, material: "crushed-gravel" },
  walls: { by: "run", run: 1 },
  backfill: "native",
};

const trench: Trench = {
  kind: "trench",
  id: "trench-1",
  name: "Drain",
  path: [
    [0, 0],
    [4, 0],
    [4, 6],
  ],
  width: 0.6,
  walls: { by: "run", run: 0 },
  bedding: { depth: 0.1, material: "crushed-gravel" },
  zone: { above: 0.15, material: "sand" },
  backfill: "native",
  pipes: [
    {
      id: "pipe-1",
      name: "Drain pipe",
      service: "gravity",
      inside: 0.1,
      outside: 0.114,
      material: "pvc",
      grade: { by: "inverts", start: 99, end: 98.8 },
    },
  ],
};

function slope(): Site {
  return {
    format: "bankyard-site",
    version: 1,
    name: "Slope",
    units: "metric",
    currency: "USD",
    survey: {
      points: [
        { id: "p1", x: 0, y: 0, z: 100 },
        { id: "p2", x: 20, y: 0, z: 100 },
        { id: "p3", x: 20, y: 20, z: 102 },
        { id: "p4", x: 0, y: 20, z: 102 },
      ],
      breaklines: [["p1", "p2", "p3"]],
    },
    ground: {
      layers: [
        { id: "top", name: "Topsoil", material: "topsoil" },
        { id: "soil", name: "Soil", material: "soil" },
        { id: "rock", name: "Rock", material: "rock" },
      ],
      probes: [{ id: "probe-1", x: 5, y: 5, thickness: [0.2, 1] }],
    },
    schemes: [
      { id: "a", name: "A", works: [tank, trench] },
      { id: "b", name: "B", works: [] },
    ],
  };
}

const works = (site: Site) => site.schemes[0]!.works;

describe("edits share what they do not touch", () => {
  it("keeps survey, ground and the other scheme when a work moves", () => {
    const site = slope();
    const next = moveWork(site, "a", "tank-1", [1, -2]);
    expect(findWork(next, "a", "tank-1")).toMatchObject({ at: [6, 4], base: 98 });
    expect(next.survey).toBe(site.survey);
    expect(next.ground).toBe(site.ground);
    expect(next.schemes[1]).toBe(site.schemes[1]);
    expect(works(next)[1]).toBe(works(site)[1]);
    expect(findWork(site, "a", "tank-1")).toMatchObject({ at: [5, 6] });
  });

  it("returns the very same site when there is nothing to change", () => {
    const site = slope();
    expect(moveWork(site, "a", "nothing", [1, 1])).toBe(site);
    expect(moveWork(site, "no-scheme", "tank-1", [1, 1])).toBe(site);
    expect(moveWork(site, "a", "tank-1", [0, 0])).toBe(site);
    expect(removeWork(site, "b", "tank-1")).toBe(site);
    expect(renameWork(site, "a", "tank-1", "Tank 1")).toBe(site);
    expect(setUnits(site, "metric")).toBe(site);
    expect(removePoint(site, "p9")).toBe(site);
    expect(setPrice(site, "a", "gravel", null)).toBe(site);
  });

  it("keeps survey when only a probe is added, and ground when only a point moves", () => {
    const site = slope();
    const probed = addProbe(site, { id: "probe-2", x: 9, y: 9, thickness: [0.3, 0.5] });
    expect(probed.survey).toBe(site.survey);
    expect(probed.schemes).toBe(site.schemes);
    const raised = changePoint(site, "p1", (point) => ({ ...point, z: 101 }));
    expect(raised.ground).toBe(site.ground);
    expect(raised.survey.points[0]?.z).toBe(101);
    expect(raised.survey.points[1]).toBe(site.survey.points[1]);
  });
});

describe("works", () => {
  it("moves every place of a trench, and one bend alone", () => {
    const moved = moveWork(slope(), "a", "trench-1", [1, 2]);
    expect(findWork(moved, "a", "trench-1")).toMatchObject({
      path: [
        [1, 2],
        [5, 2],
        [5, 8],
      ],
    });
    const bent = moveOneCorner(slope(), "a", { kind: "work", id: "trench-1" }, 1, [0, -1]);
    expect(findWork(bent, "a", "trench-1")).toMatchObject({
      path: [
        [0, 0],
        [4, -1],
        [4, 6],
      ],
    });
  });

  it("brings bearings into 0 to 360 and leaves a trench as it was", () => {
    expect(findWork(turnWork(slope(), "a", "tank-1", -30), "a", "tank-1")).toMatchObject({
      bearing: 330,
    });
    expect(findWork(turnWork(slope(), "a", "tank-1", 725), "a", "tank-1")).toMatchObject({
      bearing: 5,
    });
    const site = slope();
    expect(turnWork(site, "a", "trench-1", 10)).toBe(site);
  });

  it("copies a trench with pipes of their own, after the original in building order", () => {
    const site = duplicateWork(slope(), "a", "trench-1", [2, 0]);
    const copy = works(site)[2] as Trench;
    expect(copy.id).toBe("trench-2");
    expect(copy.path[0]).toEqual([2, 0]);
    expect(copy.pipes[0]?.id).toBe("pipe-2");
    expect((works(site)[1] as Trench).pipes[0]?.id).toBe("pipe-1");
  });

  it("reorders within bounds and adds last", () => {
    const site = reorderWork(slope(), "a", "trench-1", -3);
    expect(works(site).map((work) => work.id)).toEqual(["trench-1", "tank-1"]);
    const added = addWork(site, "a", { ...tank, id: "tank-2" });
    expect(works(added).at(-1)?.id).toBe("tank-2");
  });

  it("changes one pipe and nothing else", () => {
    const site = slope();
    const next = changePipe(site, "a", "pipe-1", (pipe) => ({ ...pipe, inside: 0.15 }));
    expect((works(next)[1] as Trench).pipes[0]?.inside).toBe(0.15);
    expect(works(next)[0]).toBe(works(site)[0]);
    expect(changeWork(site, "a", "tank-1", (work) => work)).toBe(site);
  });
});

describe("pads with levels and a fall", () => {
  const stepped = plainPad({
    fall: { bearing: 90, slope: 0.02 },
    levels: [
      {
        outline: [
          [10, 0],
          [12, 0],
          [12, 3],
        ],
        top: 98,
      },
    ],
  });
  const site = () => plainSite({ works: [stepped] });

  it("moves the levels with the pad, elevations as they were", () => {
    expect(findWork(moveWork(site(), "plan", "pad", [1, -2]), "plan", "pad")).toMatchObject({
      outline: [
        [-2, -4],
        [4, -4],
        [4, 0],
        [-2, 0],
      ],
      levels: [
        {
          outline: [
            [11, -2],
            [13, -2],
            [13, 1],
          ],
          top: 98,
        },
      ],
    });
    const copied = duplicateWork(site(), "plan", "pad", [5, 0]);
    expect(works(copied)[1]).toMatchObject({
      id: "pad-1",
      levels: [
        {
          outline: [
            [15, 0],
            [17, 0],
            [17, 3],
          ],
        },
      ],
    });
    expect(works(copied)[0]).toBe(stepped);
  });

  it("turns the fall, and leaves a level pad as it was", () => {
    expect(findWork(turnWork(site(), "plan", "pad", -90), "plan", "pad")).toMatchObject({
      fall: { bearing: 270, slope: 0.02 },
    });
    const level = plainSite({ works: [plainPad()] });
    expect(turnWork(level, "plan", "pad", 45)).toBe(level);
  });
});

describe("strips", () => {
  const over = plainStrip({ id: "over", area: { by: "work", work: "pad", beyond: 1 } });
  const site = () => plainSite({ works: [over, plainStrip(), plainPad(), plainTank()] });

  it("moves one with an outline of its own, by a corner too", () => {
    const moved = findWork(moveWork(site(), "plan", "strip", [1, 0]), "plan", "strip");
    expect(moved).toMatchObject({
      area: {
        outline: [
          [-3, -4],
          [5, -4],
          [5, 4],
          [-3, 4],
        ],
      },
    });
    const bent = findWork(
      moveOneCorner(site(), "plan", { kind: "work", id: "strip" }, 2, [0, 1]),
      "plan",
      "strip",
    );
    expect(bent).toMatchObject({
      area: {
        outline: [
          [-4, -4],
          [4, -4],
          [4, 5],
          [-4, 4],
        ],
      },
    });
  });

  it("leaves one over a work where its work is", () => {
    const before = site();
    expect(moveWork(before, "plan", "over", [1, 1])).toBe(before);
    expect(moveOneCorner(before, "plan", { kind: "work", id: "over" }, 0, [1, 1])).toBe(before);
    expect(duplicateWork(before, "plan", "over", [1, 1])).toBe(before);
  });

  it("goes with the work that it lies over, and with no other", () => {
    expect(stripsOver(site(), "plan", "pad")).toEqual([over]);
    const left = removeWork(site(), "plan", "pad");
    expect(works(left).map((work) => work.id)).toEqual(["strip", "tank"]);
    expect(works(removeWork(site(), "plan", "tank"))).toHaveLength(3);
    expect(checkSite(left).ok).toBe(true);
  });

  it("is put at its place in the building order", () => {
    const more = addWork(site(), "plan", plainStrip({ id: "third" }), 1);
    expect(works(more).map((work) => work.id)).toEqual(["over", "third", "strip", "pad", "tank"]);
  });
});

describe("survey and layers", () => {
  it("sets how near points are one, and forgets it again", () => {
    const site = slope();
    const typed = setTolerance(site, 0.02);
    expect(typed.survey.tolerance).toBe(0.02);
    expect(typed.survey.points).toBe(site.survey.points);
    expect(setTolerance(typed, null)).toEqual(site);
    expect(setTolerance(site, null)).toBe(site);
  });

  it("takes a point out of its breakline, and a breakline of one away", () => {
    expect(removePoint(slope(), "p2").survey.breaklines).toEqual([["p1", "p3"]]);
    expect(removePoint(removePoint(slope(), "p2"), "p3").survey.breaklines).toEqual([]);
  });

  it("keeps one thickness for each layer but the last in every probe", () => {
    const more = addLayer(slope(), { id: "clay", name: "Clay", material: "clay" }, 1);
    expect(more.ground.probes[0]?.thickness).toEqual([0.2, 0, 1]);
    const bottom = addLayer(slope(), { id: "deep", name: "Deep", material: "rock" }, 3);
    expect(bottom.ground.probes[0]?.thickness).toEqual([0.2, 1, 0]);
    expect(removeLayer(slope(), "top").ground.probes[0]?.thickness).toEqual([1]);
    expect(removeLayer(slope(), "rock").ground.probes[0]?.thickness).toEqual([0.2]);
  });

  it("puts the site on another survey and drops the old boundary and breaklines", () => {
    const points = [{ id: "n1", x: 1, y: 1, z: 1 }];
    expect(withSurvey(slope(), points).survey).toEqual({ points });
  });

  it("finds the first id that nothing uses", () => {
    expect(freshId(slope(), "tank")).toBe("tank-2");
    expect(freshId(slope(), "pipe", ["pipe-2"])).toBe("pipe-3");
    expect(freshId(slope(), "pad")).toBe("pad-1");
  });
});

describe("limits", () => {
  const drip = {
    id: "creek",
    kind: "watercourse",
    path: [
      [0, 0],
      [4, 0],
    ] as [number, number][],
  };
  const before: Site = {
    ...plainSite({}),
    limits: [{ id: "well", kind: "well", at: [5, 5] }, drip],
  };

  it("move as a place or a line, and are taken away", () => {
    const moved = moveLimit(moveLimit(before, "well", [1, -1]), "creek", [0, 2]);
    expect(moved.limits?.[0]?.at).toEqual([6, 4]);
    expect(moved.limits?.[1]?.path).toEqual([
      [0, 2],
      [4, 2],
    ]);
    expect(removeLimit(before, "creek").limits).toEqual([before.limits?.[0]]);
  });

  it("that the site lacks leave it as it was", () => {
    expect(moveLimit(before, "none", [1, 1])).toBe(before);
    expect(removeLimit(before, "none")).toBe(before);
    expect(moveLimit(plainSite({}), "none", [1, 1])).not.toHaveProperty("limits");
  });
});
