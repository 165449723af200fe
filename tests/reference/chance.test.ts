// The simulation against what can be worked out without it: sums of known distributions, its own
// seed, the real dig of a site whose layers were changed by hand, and a probe that is really added.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  chanceModel,
  runChance,
  shapeOf,
  summarise,
  type Chance,
  type ChanceModel,
} from "../../src/chance/index.js";
import { cataloguePrices } from "../../src/cost/index.js";
import { digScheme } from "../../src/dig/index.js";
import { groundOf } from "../../src/estimate/index.js";
import { thicknessAt } from "../../src/ground/index.js";
import { readSite, type Site } from "../../src/site/index.js";

function example(): Site {
  const file = new URL("../../shared/sites/alder-flat.site.json", import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error("the example cannot be read");
  return read.value;
}

function priceRow(id: string): { id: string; low: number; likely: number; high: number } {
  const row = cataloguePrices().get(id);
  if (row === undefined) throw new Error(`got no price "${id}"`);
  return row;
}

function simulated(model: ChanceModel, runs: number): Chance {
  return summarise(shapeOf(model), [runChance(model, 0, runs)]);
}

/** The same site with every layer but the last thicker by `by` m at every probe. */
function thicker(site: Site, by: number): Site {
  const probes = site.ground.probes.map((probe) => ({
    ...probe,
    thickness: probe.thickness.map((each) => each + by),
  }));
  return { ...site, ground: { ...site.ground, probes } };
}

describe("the ground under doubt", () => {
  const site = example();

  it("is the dig itself where nothing is in doubt", () => {
    const model = chanceModel(site, "pumped");
    for (const [i, work] of model.rock.works().entries()) {
      for (const [id, volume] of Object.entries(model.dig.works[i]!.cut)) {
        expect(work.cut[id]).toBeCloseTo(volume, 9);
      }
    }
  });

  it.each([-0.3, -0.1, 0.15])("follows the real dig when every layer is %d m thicker", (by) => {
    const model = chanceModel(site, "pumped");
    for (const doubt of model.rock.doubts) doubt.fill(by);
    const changed = thicker(site, by);
    const { result } = digScheme(changed, changed.schemes[0]!, groundOf(changed));
    const sum = (works: typeof result.works, id: string): number =>
      works.reduce((total, work) => total + (work.cut[id] ?? 0), 0);
    const sampled = model.rock.works();
    for (const id of ["topsoil", "sandy-loam", "weathered-rock", "shelf-rock"]) {
      // Of some 75 m³ of natural ground; the columns sample it.
      expect(Math.abs(sum(sampled, id) - sum(result.works, id))).toBeLessThan(0.5);
    }
    expect(sum(result.works, "weathered-rock")).not.toBeCloseTo(
      sum(model.dig.works, "weathered-rock"),
      0,
    );
  });
});

describe("the simulation", () => {
  it("gives the same runs for the same seed, in whatever pieces they are made", () => {
    const site = example();
    const model = chanceModel(site, "gravity", 7);
    const whole = summarise(shapeOf(model), [runChance(model, 0, 60)]);
    const again = chanceModel(site, "gravity", 7);
    const pieces = [runChance(again, 40, 20), runChance(again, 0, 25), runChance(again, 25, 15)];
    const joined = summarise(shapeOf(again), pieces);
    expect(joined.total).toEqual(whole.total);
    expect(joined.drivers).toEqual(whole.drivers);
    const other = chanceModel(site, "gravity", 8);
    expect(simulated(other, 60).total).not.toEqual(whole.total);
    expect(() => summarise(shapeOf(model), [runChance(model, 1, 5)])).toThrow("expected 0");
  });

  it("adds triangles up as their closed forms do", () => {
    // A tank on the ground: nothing is dug or filled, so only four prices are in the total.
    const site = example();
    const tank = site.schemes[0]!.works.find((work) => work.kind === "tank");
    if (tank === undefined) throw new Error("got no tank");
    const standing = { ...tank, base: tank.base + 50, bedding: { ...tank.bedding, depth: 0 } };
    const scheme = { id: "only", name: "Only a tank", works: [standing] };
    const model = chanceModel({ ...site, schemes: [scheme] }, "only");
    const { total, drivers } = simulated(model, 5000);
    const rows = ["tank-to-1000-gal", "tank-set", "permit"].map((id) => priceRow(id));
    const mean = rows.reduce((sum, { low, likely, high }) => sum + (low + likely + high) / 3, 0);
    const variance = rows.reduce(
      (sum, { low: a, likely: b, high: c }) =>
        sum + (a * a + b * b + c * c - a * b - a * c - b * c) / 18,
      0,
    );
    const sd = Math.sqrt(variance);
    // Four standard errors: sd ÷ √5000 of a mean, sd ÷ √10000 of a deviation.
    expect(Math.abs(total.mean - mean)).toBeLessThan((4 * sd) / Math.sqrt(5000));
    expect(Math.abs(total.sd - sd)).toBeLessThan((4 * sd) / Math.sqrt(10000));
    // Each price's share of the variance is its own variance over the sum.
    for (const { id, low: a, likely: b, high: c } of rows) {
      const own = (a * a + b * b + c * c - a * b - a * c - b * c) / 18 / variance;
      expect(drivers.find((one) => one.id === `price:${id}`)?.share).toBeCloseTo(own, 1);
    }
    expect(drivers.find((one) => one.id === "rock")?.share).toBe(0);
  });

  it("learns nothing from depths that are guessed, nor from below where a probe stopped", () => {
    const site = example();
    const withProbe = (change: Partial<Site["ground"]["probes"][number]>): Site => {
      const probes = site.ground.probes.map((probe) =>
        probe.id === "probe-2" ? { ...probe, ...change } : probe,
      );
      return { ...site, ground: { ...site.ground, probes } };
    };
    const rockOf = (one: Site) => simulated(chanceModel(one, "gravity"), 600).rock;
    const known = rockOf(site);
    const note = `Not measured yet: ${site.ground.layers
      .slice(0, -1)
      .map(({ name }) => name)
      .join("; ")}`;
    expect(rockOf(withProbe({ note })).sd).toBeGreaterThan(1.5 * known.sd);
    // Loam that may only be thicker pushes the rock down, out of the hole.
    expect(rockOf(withProbe({ stoppedIn: "loam" })).mean).toBeLessThan(0.7 * known.mean);
  });

  it("grows surer when the probe that it suggests is made, about as much as it said", () => {
    const site = example();
    // With prices known for certain the rock is what is left to learn.
    const prices = [...cataloguePrices().values()].map(({ id, likely }) => ({ id, price: likely }));
    const schemes = site.schemes.map((scheme) => ({ ...scheme, prices }));
    const before = chanceModel({ ...site, schemes }, "pumped");
    const chance = simulated(before, 3000);
    const next = chance.nextProbe;
    if (next === null) throw new Error("got no place for a probe");
    expect(next.rockShare).toBeGreaterThan(0.05);
    const [ox, oy] = before.base.tin.origin;
    const [x, y] = next.at;
    const thickness = thicknessAt(before.base.regions, x - ox, y - oy);
    const probes = [...site.ground.probes, { id: "next", x, y, thickness }];
    const probed = { ...site, schemes, ground: { ...site.ground, probes } };
    const after = simulated(chanceModel(probed, "pumped"), 3000);
    expect(after.rock.sd).toBeLessThan(chance.rock.sd);
    expect(after.rock.sd / next.rockAfter).toBeGreaterThan(0.85);
    expect(after.rock.sd / next.rockAfter).toBeLessThan(1.15);
  });
});
