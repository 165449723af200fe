// The Flow leaf of the example at both sizes, and the raised bed dragged two metres uphill: lift,
// operating point, dose time and findings follow, and are those that the engine gives for the place.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { estimate } from "../../src/estimate/index.js";
import { findWork, readSite, type Site } from "../../src/site/index.js";
import { withMoved } from "../../src/store/moved.js";
import { openApp, waitForFrames } from "./harness.js";

const SCHEME = "pumped";

function example(): Site {
  const file = new URL("../../shared/sites/alder-flat.site.json", import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error("the example cannot be read");
  return read.value;
}

interface Duty {
  lift: number;
  flow: number;
  head: number;
  run: number;
}

/** The duty as the leaf holds it, SI. */
async function dutyShown(page: Page): Promise<Duty> {
  const section = page.locator("[data-pressure]");
  const read = async (name: string): Promise<number> =>
    Number((await section.getAttribute(`data-${name}`)) ?? NaN);
  return {
    lift: await read("lift"),
    flow: await read("flow"),
    head: await read("head"),
    run: await read("run"),
  };
}

function dutyOf(site: Site): Duty & { findings: string[] } {
  const { flow, findings } = estimate(site, SCHEME);
  const system = flow.pressure[0];
  return {
    lift: system?.lift.value ?? NaN,
    flow: system?.flow.value ?? NaN,
    head: system?.head.value ?? NaN,
    run: system?.dose?.runTime?.value ?? NaN,
    findings: findings.map((one) => one.code),
  };
}

/** How far the bed that the leaf names lies from a place, m east and north. */
async function bedMoved(page: Page, from: readonly [number, number]): Promise<[number, number]> {
  const place = await page.locator("[data-bed-at]").first().getAttribute("data-bed-at");
  const [east = NaN, north = NaN] = (place ?? "").split(" ").map(Number);
  return [east - from[0], north - from[1]];
}

async function findingsShown(page: Page): Promise<string[]> {
  return page
    .locator("[data-pressure] [data-finding]")
    .evaluateAll((cards) => cards.map((card) => card.getAttribute("data-finding") ?? ""));
}

describe("the flow of the example", () => {
  it.each([
    { name: "desk", width: 1440, height: 900, touch: false },
    { name: "phone", width: 390, height: 844, touch: true },
  ])("is drawn on a $name", async ({ name, ...screen }) => {
    const { page, screenshot } = await openApp(screen);
    await waitForFrames(page);
    await page.getByRole("button", { name: "Flow", exact: true }).click();
    await page.locator("[data-drawing=way] svg").waitFor();
    await page.locator("[data-chart=pump]").waitFor();
    await screenshot(`flow-${name}`);
    const sideways = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(sideways).toBe(0);
    await page.locator("[data-chart=pump]").scrollIntoViewIfNeeded();
    await screenshot(`flow-${name}-pump`);
    await page.getByText("Doses and floats").scrollIntoViewIfNeeded();
    await screenshot(`flow-${name}-floats`);
    expect(await dutyShown(page)).toEqual(
      expect.objectContaining({ flow: expect.closeTo(dutyOf(example()).flow, 12) as number }),
    );
  });

  it("follows the raised bed two metres uphill", async () => {
    const site = example();
    const { page, screenshot } = await openApp({ width: 1440, height: 900 });
    await waitForFrames(page);
    const bed = findWork(site, SCHEME, "sand-bed");
    if (bed?.kind !== "bed") throw new Error("the example has no bed");
    await page.getByRole("button", { name: "Flow", exact: true }).click();
    const before = await dutyShown(page);
    expect(before.lift).toBeCloseTo(dutyOf(site).lift, 9);
    expect(await findingsShown(page)).not.toContain("dose.small");

    const label = await page.getByTestId("scene-label-sand-bed").boundingBox();
    if (label === null) throw new Error("the bed has no label");
    const [x, y] = [label.x + label.width / 2, label.y + label.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    let moved: [number, number] = [0, 0];
    for (let step = 1; step <= 60 && moved[1] < 2; step += 1) {
      await page.mouse.move(x, y - 3 * step);
      await page.waitForTimeout(30);
      moved = await bedMoved(page, bed.at);
    }
    await page.mouse.up();
    await page.waitForTimeout(300);
    expect(moved[1]).toBeGreaterThanOrEqual(2);
    await screenshot("flow-bed-uphill");

    const after = await dutyShown(page);
    const wanted = dutyOf(withMoved(site, SCHEME, { kind: "work", id: "sand-bed" }, moved));
    expect(after.lift).toBeGreaterThan(before.lift + 0.1);
    expect(after.flow).toBeLessThan(before.flow);
    expect(after.run).toBeGreaterThan(before.run);
    for (const key of ["lift", "flow", "head", "run"] as const) {
      expect(Math.abs(after[key] / wanted[key] - 1), key).toBeLessThan(1e-6);
    }
    expect(await findingsShown(page)).toContain("dose.small");
    expect(wanted.findings).toContain("dose.small");
    console.log("bed moved", moved, "before", before, "after", after);
  });
});
