import { describe, expect, it } from "vitest";
import { plainSite, plainTank } from "../../site/site.fixture.js";
import { exampleJob, MADE_AT } from "../job.fixture.js";
import { estimate } from "../../estimate/index.js";
import { acceptFinding } from "../../site/index.js";
import { money } from "../../units/index.js";
import { words } from "../../words/index.js";
import { amountText } from "../amountText.js";
import type { AmountKind } from "../amountText.js";
import { figureGroups } from "./figures.js";
import { escapeHtml } from "./html.js";
import { makeReport } from "./makeReport.js";
import { slicesOf } from "./slices.js";

/** Every object of an estimate that has a formula. */
function quantitiesIn(value: unknown, found = new Set<object>()): Set<object> {
  if (typeof value !== "object" || value === null) return found;
  if ("formula" in value && "inputs" in value) found.add(value);
  for (const inside of Object.values(value)) quantitiesIn(inside, found);
  return found;
}

describe("a volume by sections", () => {
  it("is the frustum of a hole with sloping walls, within what slices can tell", () => {
    // Level ground at 100, floor at 97.9, walls 1 : 1: (A₀ + A₁ + √(A₀A₁)) h / 3 holds for similar
    // ends only, so the prismoidal formula: h/6 (A₀ + 4 Aₘ + A₁), exact for plane walls.
    const tank = plainTank({ walls: { by: "run", run: 1 } });
    const site = plainSite({ works: [tank] });
    const made = slicesOf(site, site.schemes[0]!.id, tank.id);
    const [work] = estimate(site, site.schemes[0]!.id).works;
    const depth = 100 - (work?.floor.lowest ?? NaN);
    if (tank.kind !== "tank") throw new Error("expected a tank");
    const [a, b] = [tank.body.length + 2 * tank.overdig, tank.body.width + 2 * tank.overdig];
    const area = (rise: number): number => (a + 2 * rise) * (b + 2 * rise);
    const prismoid = (depth / 6) * (area(0) + 4 * area(depth / 2) + area(depth));
    expect(made?.exact).toBeCloseTo(prismoid, 6);
    expect(Math.abs((made?.volume ?? NaN) / prismoid - 1)).toBeLessThan(0.005);
  });

  it.each(["alder-flat", "quarry-lane"])("agrees with the estimate of %s within 2%", (name) => {
    const { site, schemeId } = exampleJob(name);
    const made = site.schemes[0]!.works.flatMap(({ id }) => slicesOf(site, schemeId, id) ?? []);
    expect(made.length).toBeGreaterThan(3);
    for (const { work, volume, exact } of made) {
      expect([work, Math.abs(volume / exact - 1) < 0.02]).toEqual([work, true]);
    }
  });

  it("is none for a work that digs nothing", () => {
    const { site, schemeId } = exampleJob("alder-flat");
    const pile = site.schemes[0]!.works.find(({ kind }) => kind === "pile");
    expect(slicesOf(site, schemeId, pile?.id ?? "")).toBeNull();
  });
});

describe("the report", () => {
  it.each(["alder-flat", "quarry-lane"])("opens every figure of %s that has a working", (name) => {
    const { site, estimate: made } = exampleJob(name);
    const shown = new Set<object>(
      figureGroups(site, made).flatMap(({ figures }) => figures.map(({ quantity }) => quantity)),
    );
    const formulas = new Set([...shown].map((quantity) => JSON.stringify(quantity)));
    const missing = [...quantitiesIn(made)].filter(
      (quantity) => !formulas.has(JSON.stringify(quantity)),
    );
    expect(missing.map((quantity) => (quantity as { formula: string }).formula)).toEqual([]);
  });

  it.each(["alder-flat", "quarry-lane"])(
    "lets each line of the cost of %s be done again from what is printed, within 1%",
    (name) => {
      const { site, estimate: made } = exampleJob(name);
      const printed = (value: number, unit: string, kind: AmountKind): number =>
        Number(amountText(value, unit, site, kind).replace(/[^\d.-]/g, "")) || NaN;
      const amounts = figureGroups(site, made)
        .flatMap(({ figures }) => figures)
        .filter(({ quantity }) => quantity.formula === words.workings.lineAmount);
      expect(amounts.length).toBeGreaterThan(8);
      for (const { name: of, quantity, ...kind } of amounts) {
        const product = quantity.inputs.reduce(
          (all, { value, unit }) => all * (unit === "lump" ? 1 : printed(value, unit, kind)),
          1,
        );
        expect([of, Math.abs(product / quantity.value - 1) < 0.01]).toEqual([of, true]);
      }
    },
  );

  it("gives fuel in gallons, and so many an hour that the hours can be multiplied", () => {
    const { site, estimate: made } = exampleJob("alder-flat");
    const fuel = figureGroups(site, made)
      .flatMap(({ figures }) => figures)
      .find(({ name }) => name === "Diesel fuel");
    expect(fuel?.liquid).toBe(true);
    const inputs = fuel?.quantity.inputs.map(({ value, unit }) =>
      amountText(value, unit, site, { liquid: true }),
    );
    expect(inputs).toEqual(["31.9 h", "1.32 gal/h"]); // 31.9 × 1.32 = 42.1 gal
  });

  it("says its total, when it was made, and every caution and finding", async () => {
    const job = exampleJob("alder-flat");
    const [file] = await makeReport(job);
    const page = String(file?.data);
    expect(page).toContain(MADE_AT);
    const total = money("USD").print(job.estimate.cost.total.likely, "us", { digits: 2 });
    expect(page).toContain(total);
    for (const caution of job.estimate.cautions) expect(page).toContain(escapeHtml(caution));
    for (const { text } of job.estimate.findings) expect(page).toContain(escapeHtml(text));
  });

  it("lets no name of a site's become part of the page", async () => {
    const job = exampleJob("quarry-lane", (site) => ({ ...site, name: '<img src=x onerror="1">' }));
    const [file] = await makeReport(job);
    expect(String(file?.data)).not.toContain("<img");
  });
});

describe("a finding taken on", () => {
  it("is printed with what it said then, where its figures have changed since", async () => {
    const job = exampleJob("alder-flat");
    const finding = job.estimate.findings.find(({ code }) => code === "main.sags");
    if (finding === undefined) throw new Error("got no main.sags, expected it in the example");
    const printed = async (then: typeof finding): Promise<string> => {
      const site = acceptFinding(job.site, job.schemeId, then, { reason: "as agreed" });
      const [file] = await makeReport({ ...job, site, estimate: estimate(site, job.schemeId) });
      return String(file?.data);
    };
    expect(await printed(finding)).not.toContain("have changed since");
    const changed = await printed({ ...finding, text: finding.text.replace("7.0 ft", "9.0 ft") });
    expect(changed).toMatch(/Taken on: as agreed \(Its figures have changed since[^<]*9\.0 ft/);
  });
});
