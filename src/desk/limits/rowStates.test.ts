import { describe, expect, it } from "vitest";
import { setbackTables, type SetbackKept } from "../../estimate/index.js";
import { plainSite } from "../../site/site.fixture.js";
import { kindsToKeepOff, ownStates, rowState, tableThatStands } from "./rowStates.js";

const kept = (over: Partial<SetbackKept>): SetbackKept => ({
  ...{ work: "t", from: "tank", to: "w", toName: "Well", distance: 20, wanted: 15 },
  ...{ source: "x", own: false },
  ...over,
});
const kinds = new Map([
  ["w", "well"],
  ["w2", "well"],
  ["c", "watercourse"],
]);
const row = { from: "tank", to: "well" };

describe("rows of the table of setbacks", () => {
  it("show the least distance over all pairs, and the worst shortfall", () => {
    const all = [
      kept({}),
      kept({ to: "w2", distance: 12 }),
      kept({ to: "c", distance: 1 }),
      kept({ from: "field", distance: 2 }),
    ];
    expect(rowState(row, all, kinds)).toEqual({ least: 12, short: 3 });
    expect(rowState(row, [kept({})], kinds)).toEqual({ least: 20, short: 0 });
  });

  it("are met within half a centimetre, as findings are", () => {
    expect(rowState(row, [kept({ distance: 14.996 })], kinds).short).toBe(0);
    expect(rowState(row, [kept({ distance: 14.99 })], kinds).short).toBeCloseTo(0.01, 9);
  });

  it("have no state where nothing is asked, nor from limits with a setback of their own", () => {
    expect(rowState(row, [], kinds)).toEqual({ least: null, short: 0 });
    const own = kept({ own: true, distance: 4, wanted: 5 });
    expect(rowState(row, [own], kinds)).toEqual({ least: null, short: 0, byOwn: true });
    expect(ownStates([own, kept({})])).toEqual([
      { to: "w", toName: "Well", wanted: 5, state: { least: 4, short: 1 } },
    ]);
  });
});

describe("which table stands", () => {
  const tables = setbackTables();

  it("is the first published one until the site has its own", () => {
    expect(tableThatStands(undefined, tables)).toBe(tables[0]?.id);
  });

  it("is a published one while it is as published, and the site's own once it differs", () => {
    const rows = tables[1]?.rows ?? [];
    expect(tableThatStands([...rows], tables)).toBe(tables[1]?.id);
    expect(tableThatStands(rows.slice(1), tables)).toBe("own");
    expect(tableThatStands([...rows.slice(1), rows[0]!], tables)).toBe("own");
    expect(tableThatStands([], tables)).toBe("own");
  });

  it("counts buildings of the scheme among what is kept off", () => {
    const site = {
      ...plainSite({}),
      limits: [{ id: "w", kind: "well" }],
    };
    expect([...kindsToKeepOff(site, "plan")]).toEqual([["w", "well"]]);
  });
});
