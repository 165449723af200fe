import { beforeAll, describe, expect, it, vi } from "vitest";
import { estimate } from "../../estimate/index.js";
import { readSite } from "../../site/index.js";
import { examples } from "../../store/index.js";
import { found, searchEntries } from "./searchIndex.js";

const read = readSite(await examples[0]!.read());
if (!read.ok) throw new Error("expected the first example to open");
const site = read.value;
const schemeId = site.schemes[0]!.id;
const open = { site, schemeId, estimate: estimate(site, schemeId) };

describe("the search over the desk", () => {
  beforeAll(() => {
    vi.stubGlobal("navigator", { userAgent: "test" });
    return () => vi.unstubAllGlobals();
  });

  const first = (query: string): string | undefined =>
    found(open, searchEntries(open), query)[0]?.id;

  it("has everything once", () => {
    const ids = searchEntries(open).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("finds each kind of thing by its name", () => {
    const scheme = site.schemes[0]!;
    for (const work of scheme.works) {
      expect(first(work.name)).toBe(`work ${work.id}`);
      for (const pipe of work.kind === "trench" ? work.pipes : []) {
        expect(first(pipe.name)).toBe(`pipe ${pipe.id}`);
      }
    }
    for (const probe of site.ground.probes) expect(first(probe.id)).toBe(`probe ${probe.id}`);
    for (const { id, name } of open.estimate.cost.lines) {
      expect(found(open, searchEntries(open), name).map((one) => one.id)).toContain(`price ${id}`);
    }
    expect(first("flow")).toBe("leaf flow");
    expect(first("night")).toBe("action light-dark");
    expect(first("tank place")).toBe("action place-tank");
    expect(first("invert")).toBe("term invert");
    expect(first("truckloads")).toBe("section cost Truckloads");
  });

  it("finds a point by its id, alone or after the word, and by its note", () => {
    const point = site.survey.points.at(-1);
    if (point === undefined) throw new Error("expected a point");
    expect(first(point.id)).toBe(`point ${point.id}`);
    expect(first(`Point ${point.id}`)).toBe(`point ${point.id}`);
    const noted = { ...point, id: "x-77", note: "top of the bank" };
    const more = { ...open, site: { ...site, survey: { ...site.survey, points: [noted] } } };
    expect(found(more, [], "of the bank").map(({ id }) => id)).toEqual(["point x-77"]);
  });

  it("shows what there is to do before anything is typed, also with no site", () => {
    const kinds = new Set(found(null, searchEntries(null), " ").map(({ kind }) => kind));
    expect(kinds).toEqual(new Set(["leaf", "action"]));
    expect(found(open, searchEntries(open), "qqq zzz")).toEqual([]);
  });
});
