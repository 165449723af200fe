import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readSite } from "../site/index.js";
import type { Site } from "../site/index.js";
import { NO_STAKES, readStakes, stakesOf, withStakes } from "./stakesKept.js";

function example(name: string): Site {
  const file = new URL(`../../shared/sites/${name}.site.json`, import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error(`${name}: cannot be read`);
  return read.value;
}

const site = example("alder-flat");
const mark = (i: number) => ({ point: site.survey.points[i]!.id });
const marks = [mark(0), mark(1)] as const;
const reloaded = (kept: typeof NO_STAKES) =>
  readStakes(JSON.stringify({ ...kept.spacings, pairs: kept.pairs }));

describe("how points are set out", () => {
  it("is the same after a reload: spacings on every site, marks on theirs", () => {
    const kept = reloaded(withStakes(NO_STAKES, site, { offset: 2, interval: 5, marks }));
    expect(stakesOf(kept, site)).toEqual({ offset: 2, interval: 5, marks });
    expect(stakesOf(kept, example("quarry-lane"))).toEqual({ offset: 2, interval: 5 });
  });

  it("forgets marks that stand elsewhere, though a point of that name is there", () => {
    const kept = withStakes(NO_STAKES, site, { marks });
    const points = site.survey.points.map((one, i) => (i === 0 ? { ...one, x: one.x + 1 } : one));
    const moved = { ...site, survey: { ...site.survey, points } };
    expect(stakesOf(kept, moved).marks).toBeUndefined();
    expect(stakesOf(kept, { ...site, name: "Another name" }).marks).toEqual(marks);
  });

  it("has one pair for a site, the last picked, and none once that is given back", () => {
    const other = [mark(0), mark(2)] as const;
    const twice = withStakes(withStakes(NO_STAKES, site, { marks }), site, { marks: other });
    expect(stakesOf(twice, site).marks).toEqual(other);
    expect(stakesOf(withStakes(twice, site, {}), site).marks).toBeUndefined();
  });

  it("passes over what is no choice of ours", () => {
    for (const text of [null, "{", "null", '"x"', '{"offset":-1,"pairs":[{"marks":[1,2]}]}'])
      expect(readStakes(text)).toEqual(NO_STAKES);
  });
});
