import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { changeWork, readSite, type Site, type Work } from "../site/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { changeBetween } from "./change.js";
import { estimate } from "./estimate.js";

const tank = (run: number): Work => plainTank({ walls: { by: "run", run } });
const siteWith = (run: number, over: Partial<Site["schemes"][number]> = {}): Site => {
  const site = plainSite({ works: [tank(run)], layers: [0.3, 0.9] });
  return { ...site, schemes: [{ ...site.schemes[0]!, ...over }] };
};
const change = (before: Site, after: Site) =>
  changeBetween(estimate(before, "plan"), estimate(after, "plan"), before);

describe("what an edit would change", () => {
  it("is nothing between a scheme and itself", () => {
    const drawn = siteWith(1);
    expect(change(drawn, drawn)).toEqual({
      ...{ cut: 0, rock: 0, spoil: 0, digger: null, said: [], unsaid: [] },
      days: { low: 0, likely: 0, high: 0 },
      cost: { low: 0, likely: 0, high: 0 },
    });
  });

  it("is the difference of two estimates, the other way round with the sign turned", () => {
    const [steep, flat] = [siteWith(0), siteWith(1.5)];
    const there = change(steep, flat);
    const all = (cut: Readonly<Record<string, number>>): number =>
      Object.values(cut).reduce((a, b) => a + b, 0);
    const [was, is] = [estimate(steep, "plan"), estimate(flat, "plan")];
    expect(there.cut).toBeCloseTo(all(is.cut) - all(was.cut), 9);
    expect(there.cut).toBeGreaterThan(5);
    expect(there.cost.likely).toBeCloseTo(is.cost.total.likely - was.cost.total.likely, 9);
    const back = change(flat, steep);
    expect(back.cut).toBeCloseTo(-there.cut, 9);
    expect(back.said).toEqual(there.unsaid);
    expect(back.unsaid).toEqual(there.said);
  });

  it("tells the stops and cautions that it brings and that it settles, not their changed figures", () => {
    const { said, unsaid } = change(siteWith(0), siteWith(1.5));
    expect(unsaid.map(({ code }) => code)).toContain("walls.too-steep");
    expect(said.map(({ code }) => code)).not.toContain("walls.too-steep");
    for (const { level } of [...said, ...unsaid]) expect(level).not.toBe("note");
  });

  it("tells when another digger would dig", () => {
    const by = (digger: string): Site => siteWith(1, { machines: { digger } });
    expect(change(by("digger-5-5t"), by("digger-5-5t")).digger).toBeNull();
    const { digger } = change(by("digger-5-5t"), by("digger-8t"));
    expect(digger?.before).toContain("5.5 t");
    expect(digger?.after).toContain("8 t");
  });

  it("sees before the press that no crane stand would be left beside a wider hole", () => {
    const read = readSite(readFileSync("shared/sites/alder-flat.site.json", "utf8"));
    if (!read.ok) throw new Error("the example cannot be read");
    const now = estimate(read.value, "gravity");
    const walls = now.holes.find(({ work }) => work === "tank-1")?.change;
    if (walls === undefined || walls === null) throw new Error("the tank's walls want nothing");
    const sloped = changeWork(read.value, "gravity", "tank-1", (work) =>
      "walls" in work ? { ...work, walls } : work,
    );
    const { said, unsaid } = changeBetween(now, estimate(sloped, "gravity"), sloped);
    expect(said[0]).toMatchObject({ level: "stop", code: "lift.no-stand", where: "tank-1" });
    expect(unsaid.map(({ code }) => code)).toContain("walls.too-steep");
  });
});
