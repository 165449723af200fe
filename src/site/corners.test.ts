import { describe, expect, it } from "vitest";
import {
  addCorner,
  cornerKept,
  cornersOf,
  moveOneCorner,
  removeCorner,
  sideCount,
  type Corners,
} from "./corners.js";
import { findWork } from "./edits.js";
import type { Thing } from "./marks.js";
import type { Limit, PlanPoint, Site, Work } from "./schema.js";
import { plainPad, plainSite, plainStrip, plainTank, plainTrench } from "./site.fixture.js";

const building: Work = {
  kind: "building",
  id: "house",
  name: "House",
  outline: [
    [0, 0],
    [8, 0],
    [8, 6],
    [0, 6],
  ],
  base: 100,
  height: 3,
};
const open: Limit = {
  id: "lot",
  kind: "lot-line",
  path: [
    [0, 0],
    [9, 0],
    [9, 9],
  ],
};
const closed: Limit = { ...open, id: "area", closed: true, path: [...(open.path ?? []), [0, 9]] };

function site(): Site {
  const works = [plainPad(), plainTrench(), plainStrip(), plainTank(), building];
  return { ...plainSite({ works }), limits: [open, closed] };
}

const work = (id: string): Thing => ({ kind: "work", id });
const limit = (id: string): Thing => ({ kind: "limit", id });
const THINGS = [
  work("pad"),
  work("trench"),
  work("strip"),
  work("house"),
  limit("lot"),
  limit("area"),
];

function allOf(now: Site, thing: Thing): Corners {
  const corners = cornersOf(now, "plan", thing);
  if (corners === null) throw new Error(`got no corners of ${thing.id}, expected some`);
  return corners;
}

const placesOf = (now: Site, thing: Thing): readonly PlanPoint[] => allOf(now, thing).places;

describe("adding a corner", () => {
  it.each(THINGS)("puts it into every side of $id, and nothing else changes", (thing) => {
    const before = site();
    const was = placesOf(before, thing);
    const sides = sideCount(allOf(before, thing));
    expect(sides).toBe(thing.id === "trench" || thing.id === "lot" ? was.length - 1 : was.length);
    for (let side = 0; side < sides; side++) {
      const next = addCorner(before, "plan", thing, side, [33, 44]);
      expect(placesOf(next, thing)).toEqual(was.toSpliced(side + 1, 0, [33, 44]));
      expect(next.survey).toBe(before.survey);
    }
    expect(addCorner(before, "plan", thing, sides, [33, 44])).toBe(before);
    expect(addCorner(before, "plan", thing, -1, [33, 44])).toBe(before);
  });

  it("gives both parts of a pad's side the wall that the side had", () => {
    const pad = plainPad({ walls: { by: "run", run: 1, sides: [0, 1, 2, 3] } });
    const next = addCorner(plainSite({ works: [pad] }), "plan", work("pad"), 2, [0, 3]);
    const after = findWork(next, "plan", "pad");
    expect(after).toMatchObject({ walls: { by: "run", run: 1, sides: [0, 1, 2, 2, 3] } });
  });

  it("does nothing to what has no corners, or is not there", () => {
    const before = site();
    expect(addCorner(before, "plan", work("tank"), 0, [1, 1])).toBe(before);
    expect(addCorner(before, "plan", work("nothing"), 0, [1, 1])).toBe(before);
    expect(addCorner(before, "plan", limit("nothing"), 0, [1, 1])).toBe(before);
  });
});

describe("taking a corner away", () => {
  it.each(THINGS)("is the way back from adding one to $id", (thing) => {
    const before = site();
    const next = addCorner(before, "plan", thing, 1, [9.5, 4]);
    const back = removeCorner(next, "plan", thing, 2);
    expect(placesOf(back, thing)).toEqual(placesOf(before, thing));
  });

  it.each(THINGS)("stops at the least number that $id needs", (thing) => {
    let now = site();
    const { least, places } = allOf(now, thing);
    for (let tries = 0; tries < places.length + 2; tries++) {
      now = removeCorner(now, "plan", thing, 0);
    }
    expect(placesOf(now, thing)).toHaveLength(least);
    expect(cornerKept(allOf(now, thing), 0)).toEqual({ code: "too-few", least });
    expect(removeCorner(now, "plan", thing, 0)).toBe(now);
  });

  it("takes the wall of the side that goes, and keeps the others with their sides", () => {
    const pad = plainPad({ walls: { by: "run", run: 1, sides: [0, 1, 2, 3] } });
    const next = removeCorner(plainSite({ works: [pad] }), "plan", work("pad"), 2);
    expect(findWork(next, "plan", "pad")).toMatchObject({ walls: { sides: [0, 1, 3] } });
  });

  it("refuses when the outline would cross itself, and says how", () => {
    // Two arms on a foot: without either end of the foot a side would run through an arm's wall at
    // x = 4.
    const outline: PlanPoint[] = [
      [0, 0],
      [6, 0],
      [6, 6],
      [5, 6],
      [5, 1],
      [4, 1],
      [4, 5],
      [0, 5],
    ];
    const before = plainSite({ works: [plainPad({ outline })] });
    const refused = outline.flatMap((_, i) => {
      const kept = cornerKept(allOf(before, work("pad")), i);
      if (kept === null) return [];
      expect(kept).toMatchObject({ code: "crosses" });
      expect(removeCorner(before, "plan", work("pad"), i)).toBe(before);
      return [i];
    });
    expect(refused).toEqual([0, 1]);
  });
});

describe("moving a corner", () => {
  it.each(THINGS)("moves that of $id and no other", (thing) => {
    const before = site();
    const was = placesOf(before, thing);
    const next = moveOneCorner(before, "plan", thing, 1, [0.5, -0.25]);
    const [x, y] = was[1]!;
    expect(placesOf(next, thing)).toEqual(was.with(1, [x + 0.5, y - 0.25]));
    expect(moveOneCorner(before, "plan", thing, 99, [1, 1])).toBe(before);
  });
});
