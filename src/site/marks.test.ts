import { describe, expect, it } from "vitest";
import { changeProbe, changeWork, moveWork, removeWork, renameWork, reorderWork } from "./edits.js";
import { hasMark, hiddenThings, locksBroken, setMark, showAll } from "./marks.js";
import { readSite, writeSite } from "./read.js";
import type { Site } from "./schema.js";
import { plainPad, plainSite, plainTank } from "./site.fixture.js";

const tank = { kind: "work", id: "tank" } as const;
const well = { kind: "limit", id: "well" } as const;
const hole = { kind: "probe", id: "t1" } as const;

function site(): Site {
  const plain = plainSite({ works: [plainTank(), plainPad()], layers: [0.3, 1] });
  return { ...plain, limits: [{ id: "well", kind: "well", at: [5, 5], setback: 10 }] };
}

describe("marks", () => {
  it("go on works, probes and limits, and come off without a trace", () => {
    const before = site();
    const on = setMark(before, "plan", [tank, well, hole], "hidden", true);
    expect(hiddenThings(on, "plan")).toEqual([tank, hole, well]);
    expect(hasMark(on, "plan", tank, "locked")).toBe(false);
    expect(showAll(on, "plan")).toEqual(before);
  });

  it("leave the site as it was when nothing changes", () => {
    const before = site();
    expect(setMark(before, "plan", [tank, well, hole], "locked", false)).toBe(before);
    const on = setMark(before, "plan", [tank, well], "locked", true);
    expect(setMark(on, "plan", [tank, well], "locked", true)).toBe(on);
    const point = { kind: "point", id: "p00" } as const;
    expect(setMark(before, "plan", [point], "locked", true)).toBe(before);
  });

  it("share what they do not touch", () => {
    const before = site();
    const on = setMark(before, "plan", [tank], "locked", true);
    expect(on.ground).toBe(before.ground);
    expect(on.survey).toBe(before.survey);
    expect(on.schemes[0]?.works[1]).toBe(before.schemes[0]?.works[1]);
  });

  it("are kept in the file", () => {
    const on = setMark(site(), "plan", [tank, well, hole], "locked", true);
    const read = readSite(writeSite(setMark(on, "plan", [well], "hidden", true)));
    if (!read.ok) throw new Error("expected the site to be read, got problems");
    expect([tank, well, hole].map((one) => hasMark(read.value, "plan", one, "locked"))).toEqual([
      true,
      true,
      true,
    ]);
    expect(hiddenThings(read.value, "plan")).toEqual([well]);
  });
});

describe("locked things", () => {
  const locked = setMark(site(), "plan", [tank, well, hole], "locked", true);

  it("are named when an edit would move, change or remove them", () => {
    expect(locksBroken(locked, moveWork(locked, "plan", "tank", [1, 0]))).toEqual(["Tank"]);
    expect(locksBroken(locked, removeWork(locked, "plan", "tank"))).toEqual(["Tank"]);
    const filled = changeWork(locked, "plan", "tank", (work) => ({ ...work, backfill: "clay" }));
    expect(locksBroken(locked, filled)).toEqual(["Tank"]);
    const pushed = changeProbe(locked, "t1", (probe) => ({ ...probe, x: 3 }));
    expect(locksBroken(locked, pushed)).toEqual(["t1"]);
    expect(locksBroken(locked, { ...locked, limits: [] })).toEqual(["well"]);
  });

  it("may be renamed, unlocked, hidden, reordered, and go with their whole scheme", () => {
    const fine = [
      renameWork(locked, "plan", "tank", "Septic"),
      setMark(locked, "plan", [tank, well, hole], "locked", false),
      setMark(locked, "plan", [tank, well, hole], "hidden", true),
      reorderWork(locked, "plan", "tank", 1),
      moveWork(locked, "plan", "pad", [1, 0]),
      { ...locked, schemes: [] },
    ];
    expect(fine.map((one) => locksBroken(locked, one))).toEqual(fine.map(() => []));
  });

  it("do not keep the ground's layers from being edited", () => {
    const thicker = changeProbe(locked, "t1", (probe) => ({ ...probe, thickness: [0.5, 1] }));
    expect(locksBroken(locked, thicker)).toEqual([]);
  });
});
