import { describe, expect, it } from "vitest";
import { checkSite } from "./read.js";
import { isLeftOut, printSheet, setPaper, setPlanWindow } from "./sheetsEdits.js";
import { plainSite } from "./site.fixture.js";

const COST = { id: "cost", of: ["cost"] };
const WINDOW = { middle: [10, 20] as [number, number], scale: 240 };

describe("how a plan is printed", () => {
  it("is kept in the file, one choice beside the other", () => {
    const site = printSheet(
      setPlanWindow(setPaper(plainSite({}), "a3"), "layout", WINDOW),
      COST,
      false,
    );
    expect(site.sheets).toEqual({ paper: "a3", windows: { layout: WINDOW }, without: ["cost"] });
    expect(checkSite(JSON.parse(JSON.stringify(site)))).toEqual({ ok: true, value: site });
  });

  it("shows all of a plan again on another paper", () => {
    const site = setPlanWindow(plainSite({}), "layout", WINDOW);
    expect(setPaper(site, "a3").sheets).toEqual({ paper: "a3", windows: {} });
  });

  it("is taken back", () => {
    const site = printSheet(setPlanWindow(plainSite({}), "layout", WINDOW), COST, false);
    expect(setPlanWindow(site, "layout", null).sheets?.windows).toEqual({});
    expect(printSheet(site, COST, true).sheets?.without).toEqual([]);
    expect(printSheet(printSheet(site, COST, false), COST, false).sheets?.without).toEqual([
      "cost",
    ]);
  });

  it("is told by what a sheet shows, and by its id as older files have it", () => {
    const sheet = { id: "sections-2", of: ["section:a:along", "section:a:across"] };
    expect(isLeftOut({ without: ["section:a:along"] }, sheet)).toBe(false);
    expect(isLeftOut({ without: sheet.of.slice() }, { ...sheet, id: "sections" })).toBe(true);
    expect(isLeftOut({ without: ["sections-2"] }, sheet)).toBe(true);
    const old = { ...plainSite({}), sheets: { without: ["sections-2", "cost"] } };
    expect(printSheet(old, sheet, true).sheets?.without).toEqual(["cost"]);
  });

  it("refuses a scale of nothing and a paper that it does not know", () => {
    const bad = { ...plainSite({}), sheets: { windows: { layout: { middle: [0, 0], scale: 0 } } } };
    expect(checkSite(bad).ok).toBe(false);
    expect(checkSite({ ...plainSite({}), sheets: { paper: "napkin" } }).ok).toBe(false);
  });
});
