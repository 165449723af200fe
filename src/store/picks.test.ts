import { describe, expect, it } from "vitest";
import { plainPad, plainSite, plainTank } from "../site/site.fixture.js";
import type { Picked } from "./deskState.js";
import {
  allPicked,
  heldWith,
  lettingGo,
  nameOfAll,
  NO_PICKS,
  picksIn,
  picksOf,
  togglePicked,
  withPicked,
} from "./picks.js";

const tank: Picked = { kind: "work", id: "tank" };
const pad: Picked = { kind: "work", id: "pad" };
const hole: Picked = { kind: "probe", id: "t1" };

describe("picks", () => {
  it("are added as the first, and taken away again", () => {
    const two = togglePicked(togglePicked(NO_PICKS, tank), pad);
    expect(two).toEqual({ selected: pad, also: [tank] });
    expect(togglePicked(two, { ...pad })).toEqual({ selected: tank, also: [] });
    expect(togglePicked(two, { ...tank })).toEqual({ selected: pad, also: [] });
    expect(togglePicked(togglePicked(two, tank), pad)).toEqual(NO_PICKS);
  });

  it("hold nothing twice", () => {
    expect(allPicked(picksOf([tank, pad, { ...tank }]))).toEqual([tank, pad]);
    expect(allPicked(withPicked(picksOf([tank]), [pad, { ...tank }]))).toEqual([tank, pad]);
  });

  it("are all held by a hand on one of them, and let go by a hand on another thing", () => {
    const two = picksOf([tank, pad]);
    expect(heldWith(two, pad)).toEqual({ selected: pad, also: [tank] });
    expect(heldWith(two, hole)).toEqual({ selected: hole, also: [] });
  });

  it("let the others go when one thing is picked alone, and only then", () => {
    const two = picksOf([tank, pad]);
    expect(lettingGo(two, { selected: hole })).toEqual({ selected: hole, also: [] });
    expect(lettingGo(two, { selected: null })).toEqual({ selected: null, also: [] });
    expect(lettingGo(two, { selected: { ...tank } })).toEqual({ selected: tank });
    expect(lettingGo(two, picksOf([hole, pad]))).toEqual(picksOf([hole, pad]));
    expect(lettingGo(two, { notice: "x" })).toEqual({ notice: "x" });
  });

  it("leave out what the site no longer has, and are named together", () => {
    const site = plainSite({ works: [plainTank(), plainPad()], layers: [0.3, 1] });
    const gone: Picked = { kind: "work", id: "gone" };
    expect(picksIn(site, "plan", picksOf([gone, tank, hole]))).toEqual([tank, hole]);
    expect(nameOfAll(site, "plan", [tank])).toBe("Tank");
    expect(nameOfAll(site, "plan", [tank, pad])).toBe("2 works");
    expect(nameOfAll(site, "plan", [tank, hole])).toBe("2 things");
  });
});
