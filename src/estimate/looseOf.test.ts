import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { NATIVE, readSite } from "../site/index.js";
import { estimate } from "./estimate.js";
import { looseOf } from "./looseOf.js";

const read = readSite(readFileSync("shared/sites/quarry-lane.site.json", "utf8"));
if (!read.ok) throw new Error(read.problems[0]?.text);
const site = read.value;

describe("looseOf", () => {
  it.each(site.schemes.map(({ id }) => id))("adds up to the balance's sum in %s", (scheme) => {
    const made = estimate(site, scheme);
    const sum = Object.entries(made.cut).reduce(
      (all, [id, bank]) => all + looseOf(site, made, id, bank),
      0,
    );
    expect(sum).toBeCloseTo(made.earth.loose, 9);
  });

  it("counts backfill that is dug again as no less than it was in place", () => {
    const again = site.schemes
      .map(({ id }) => estimate(site, id))
      .filter(({ cut }) => (cut[NATIVE] ?? 0) > 0);
    expect(again.length).toBeGreaterThan(0);
    for (const made of again) expect(looseOf(site, made, NATIVE, 1)).toBeGreaterThan(1);
  });

  it("knows no loose volume of what is not dug", () => {
    const made = estimate(site, site.schemes[0]!.id);
    expect(() => looseOf(site, made, "unheard-of", 1)).toThrow("unheard-of");
  });
});
