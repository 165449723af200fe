// The crane lift in the Machines leaf: taken away and set anew, its best place is the one that the
// engine gives; a load chart that is too small stops the lift, and undo brings the old one back.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { estimate } from "../../src/estimate/index.js";
import { changeScheme, readSite, type Lift, type Site } from "../../src/site/index.js";
import { newLift } from "../../src/desk/machines/newLift.js";
import { openApp, waitForFrames } from "./harness.js";

const SCHEME = "pumped";

function example(): Site {
  const file = new URL("../../shared/sites/alder-flat.site.json", import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error("the example cannot be read");
  return read.value;
}

function bestOf(site: Site, lift?: Lift): string | null | undefined {
  const set =
    lift === undefined
      ? site
      : changeScheme(site, SCHEME, (one) => ({ ...one, machines: { ...one.machines, lift } }));
  return estimate(set, SCHEME).lift?.best;
}

async function bestShown(page: Page): Promise<string | null> {
  return page.locator("[data-stand-lift][data-best=true]").getAttribute("data-stand-lift");
}

describe("the crane lift", () => {
  it("is set, held against a chart, and undone", async () => {
    const site = example();
    const { page, screenshot } = await openApp({ width: 1440, height: 900 });
    await waitForFrames(page);
    await page.getByRole("button", { name: "Machines", exact: true }).click();
    const stop = page.locator("[data-lift] [data-finding='lift.no-stand']");
    expect(await bestShown(page)).toBe(bestOf(site));
    expect(await stop.count()).toBe(0);

    await page.getByRole("button", { name: "Do without a crane" }).click();
    await page.locator("[data-lift=none]").waitFor();
    await page.getByRole("button", { name: "Set the tank with a crane truck" }).click();
    await page.locator("[data-stand-lift=stand-1]").waitFor();
    const tank = site.schemes
      .find(({ id }) => id === SCHEME)
      ?.works.find((work) => work.kind === "tank");
    if (tank?.kind !== "tank") throw new Error("the example has no tank");
    const lift = newLift(site, estimate(site, SCHEME).works, tank);
    expect(await page.locator("[data-stand-lift]").count()).toBe(lift.stands.length);
    const best = bestOf(site, lift);
    expect(best).toBeTruthy();
    expect(await bestShown(page)).toBe(best);
    await page.locator("[data-lift]").scrollIntoViewIfNeeded();
    await screenshot("lift-set");

    await page.locator("[data-field=crane]").selectOption({ label: "Chart of the crane on offer" });
    await page.locator("[data-part=load-chart] summary").click();
    await page.locator("[data-field=load-chart]").fill("20\t4,000\n40\t2,000");
    await page.getByRole("button", { name: "Use this chart" }).click();
    await stop.waitFor();
    expect(await page.locator("[data-stand-lift][data-works=true]").count()).toBe(0);
    await screenshot("lift-stopped");

    await page.locator("[data-lift] h2").click();
    await page.keyboard.press("Control+z");
    await stop.waitFor({ state: "detached" });
    expect(await bestShown(page)).toBe(best);
  });
});
