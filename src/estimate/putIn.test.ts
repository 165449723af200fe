import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readSite } from "../site/index.js";
import { estimate } from "./estimate.js";
import { putInOf } from "./putIn.js";
import type { Estimate } from "./types.js";

function exampleOf(name: string): Estimate {
  const read = readSite(readFileSync(`shared/sites/${name}.site.json`, "utf8"));
  if (!read.ok) throw new Error(`${name}: cannot be read`);
  return estimate(read.value, read.value.schemes[0]!.id);
}

describe("what is put in by material", () => {
  it.each(["alder-flat", "quarry-lane"] as const)("adds up to the works of %s", (name) => {
    const made = exampleOf(name);
    const put = putInOf(made);
    const works = made.works.flatMap(({ fill }) => Object.values(fill));
    const sum = (all: readonly number[]): number => all.reduce((s, v) => s + v, 0);
    expect(sum(put.map(({ volume }) => volume))).toBeCloseTo(sum(works), 9);
    expect(put.every(({ volume }) => volume > 0)).toBe(true);
  });

  it("has what is bought for want of own earth apart, as much as is ordered without waste", () => {
    const made = exampleOf("quarry-lane");
    const fill = putInOf(made).find(({ shortfall }) => shortfall > 0);
    const load = made.cost.loads.imports.find(({ material }) => material === fill?.material);
    expect(fill?.volume).toBeGreaterThan(1);
    expect(fill?.volume).toBeCloseTo(load?.placed ?? 0, 9);
    const none = { works: made.works, earth: { ...made.earth, importCompacted: 0 } };
    expect(putInOf(none).some(({ shortfall }) => shortfall > 0)).toBe(false);
  });
});
