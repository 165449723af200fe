// Machines, days and money on the page: rock that comes nearer in one probe changes hours, wear, days,
// hire and range; the next probe can be placed; three schemes stand side by side.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { chanceOf } from "../../src/chance/index.js";
import { estimate } from "../../src/estimate/index.js";
import { changeProbe, readSite, setMachines, type Site } from "../../src/site/index.js";
import { openApp, waitForFrames } from "./harness.js";

const SCHEME = "pumped";
const RUNS = 5000;

function example(): Site {
  const file = new URL("../../shared/sites/alder-flat.site.json", import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error("the example cannot be read");
  return read.value;
}

async function toLeaf(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name, exact: true }).click();
}

/** What the Machines leaf shows of the job. */
async function jobShown(page: Page): Promise<{ days: number; hire: string; price: number }> {
  await toLeaf(page, "Machines");
  const hire = page.locator("[data-hire^='digger-']").first();
  return {
    days: Number(await page.locator("[data-job-days]").getAttribute("data-job-days")),
    hire: (await hire.getAttribute("data-cover")) ?? "",
    price: Number(await hire.getAttribute("data-price")),
  };
}

function jobOf(site: Site): { days: number; price: number; wear: number; hours: number } {
  const { machines, cost } = estimate(site, SCHEME);
  const hire = machines.job.hires.find(({ id }) => id === machines.digger.id);
  const wear = cost.lines.filter(({ id }) => id.endsWith("-wear"));
  return {
    days: machines.job.schedule.likely.workingDays,
    price: hire?.plans.likely.price ?? NaN,
    wear: wear.reduce((sum, { amount }) => sum + amount.likely, 0),
    hours: machines.hours.likely,
  };
}

/** The likely total of the simulation, when it is of the site as it is. */
async function totalDrawn(page: Page): Promise<number> {
  await toLeaf(page, "Cost");
  await page.locator('[data-chance="now"]').waitFor({ timeout: 60_000 });
  const table = page.locator("[data-chance-total]");
  return Number(await table.getAttribute("data-chance-total"));
}

async function wearShown(page: Page): Promise<number> {
  const lines = page.locator("[data-cost-line$='-wear']");
  const amounts = await lines.evaluateAll((all) =>
    all.map((line) => Number((line as HTMLElement).dataset["amount"])),
  );
  return amounts.reduce((sum, amount) => sum + amount, 0);
}

describe("machines, days and money", () => {
  it("follow the rock in one probe, hours, wear, days, hire and range", async () => {
    // With the digger settled, or another might take its place when the rock comes nearer.
    const site = setMachines(example(), SCHEME, { digger: "digger-3-5t" });
    const { page, screenshot } = await openApp({ width: 1440, height: 900 });
    await waitForFrames(page);
    await toLeaf(page, "Machines");
    await page.locator('[data-field="digger"]').selectOption("digger-5-5t");
    await page.locator('[data-field="digger"]').selectOption("digger-3-5t");
    const before = await jobShown(page);
    expect(before.price).toBeCloseTo(jobOf(site).price, 6);
    await screenshot("machines-desk");
    await toLeaf(page, "Cost");
    expect(await wearShown(page)).toBeCloseTo(jobOf(site).wear, 6);
    await screenshot("cost-desk");
    // The hard rock comes up to a foot and a half at the tank.
    const thickness = [0.15, 0.15, 0.15];
    const changed = changeProbe(site, "probe-2", (probe) => ({ ...probe, thickness }));
    await toLeaf(page, "Survey");
    await page.locator(".row", { hasText: "probe-2" }).click();
    for (const [layer, index] of [
      ["top", 0],
      ["loam", 1],
      ["weathered", 2],
    ] as const) {
      const field = page.locator(`[data-field="thickness-${layer}"]`);
      await field.fill(`${thickness[index]} m`);
      await field.press("Enter");
    }
    const after = await jobShown(page);
    const expected = jobOf(changed);
    expect(after.price).toBeCloseTo(expected.price, 6);
    expect(after.days).toBe(expected.days);
    expect(after.days).toBeGreaterThan(before.days);
    expect(after.hire).not.toBe(before.hire);
    expect(expected.hours).toBeGreaterThan(jobOf(site).hours);
    const drawn = chanceOf(changed, SCHEME, RUNS);
    expect(await totalDrawn(page)).toBeCloseTo(drawn.total.likely, 6);
    expect(await wearShown(page)).toBeCloseTo(expected.wear, 6);
    expect(expected.wear).toBeGreaterThan(jobOf(site).wear);
    const at = await page.locator("[data-next-probe]").getAttribute("data-next-probe");
    expect(JSON.parse(at ?? "null")).toEqual(
      drawn.nextProbe?.at.map((each) => expect.closeTo(each, 6) as number),
    );
    await page.getByTestId("next-probe-tag").waitFor();
  });

  it("stand side by side for all schemes, on one screen of a phone", async () => {
    const site = example();
    const { page, screenshot } = await openApp({ width: 390, height: 844, touch: true });
    await waitForFrames(page);
    await toLeaf(page, "Cost");
    await page.getByTestId("compare").locator("summary").click();
    const table = page.locator(".table.ways");
    await table.waitFor();
    const totals = await table
      .locator("tr", { hasText: "Cost, every likely figure" })
      .locator("td")
      .evaluateAll((cells) => cells.map((cell) => Number((cell as HTMLElement).dataset["value"])));
    expect(totals).toEqual(
      site.schemes.map(
        ({ id }) => expect.closeTo(estimate(site, id).cost.total.likely, 6) as number,
      ),
    );
    const box = await table.boundingBox();
    expect(box?.width).toBeLessThanOrEqual(390);
    await table.scrollIntoViewIfNeeded();
    await screenshot("compare-phone");
    await page.getByRole("button", { name: "Copy this scheme, to change it" }).click();
    await expect
      .poll(() => table.locator("thead th[data-scheme]").count())
      .toBe(site.schemes.length + 1);
  });
});
