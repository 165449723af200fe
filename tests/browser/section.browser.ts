// A person cuts the ground open: two taps draw the line, the panel shows what the engine gives for
// it, the stage slider and the line's ends change it at once, and Escape puts it away.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { sectionAlong, STAGES, type Stage } from "../../src/estimate/index.js";
import { readSite, type Site } from "../../src/site/index.js";
import { openApp, settledBox, waitForFrames } from "./harness.js";

function example(): Site {
  const file = new URL("../../shared/sites/alder-flat.site.json", import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error("the example cannot be read");
  return read.value;
}

/** Taps or clicks the scene at shares of its size, as it lies just now. */
async function pointAt(page: Page, touch: boolean, x: number, y: number): Promise<void> {
  const box = await page.getByTestId("scene").boundingBox();
  if (box === null) throw new Error("the scene has no size");
  const [left, top] = [box.x + x * box.width, box.y + y * box.height];
  if (touch) await page.touchscreen.tap(left, top);
  else await page.mouse.click(left, top);
}

async function toStage(page: Page, stage: Stage): Promise<void> {
  const slider = page.locator("#stage-slider");
  await slider.focus();
  await page.keyboard.press("Home");
  for (let i = 0; i < STAGES.indexOf(stage); i++) await page.keyboard.press("ArrowRight");
}

interface Shown {
  readonly line: [number, number][];
  readonly areas: number[];
  readonly stage: string;
  readonly datum: number;
}

/**
 * What the panel shows: its line, and the areas by material, m², down to its datum. All are read at
 * one moment: the datum follows the panel's size, which may still be settling.
 */
async function shown(page: Page): Promise<Shown> {
  return page.getByTestId("section-panel").evaluate((panel) => ({
    datum: Number(panel.dataset["datum"]),
    line: JSON.parse(panel.dataset["line"] ?? "[]") as [number, number][],
    stage: panel.dataset["stage"] ?? "",
    areas: [...panel.querySelectorAll<SVGPathElement>(".section-area")].map((area) =>
      Number(area.dataset["area"]),
    ),
  }));
}

/** Holds the panel against the engine, asked for the same line and stage down to the same datum. */
async function expectEngine(page: Page, site: Site): Promise<void> {
  const { line, areas, stage, datum } = await shown(page);
  const section = sectionAlong(site, site.schemes[0]!.id, stage as Stage, line, datum);
  expect(areas.length).toBeGreaterThan(1);
  expect(areas).toEqual(section.areas.map(({ area }) => expect.closeTo(area, 6) as number));
}

it.each([
  { name: "desk-light", width: 1440, height: 900, touch: false, theme: "light" as const },
  { name: "phone-dark", width: 390, height: 844, touch: true, theme: "dark" as const },
])("draws a section, $name", async ({ name, touch, ...options }) => {
  const site = example();
  const { page, screenshot } = await openApp({ ...options, touch });
  await waitForFrames(page);
  await page.getByRole("button", { name: "Section", exact: true }).click();
  await page.getByTestId("section-hint").waitFor();
  await pointAt(page, touch, 0.3, touch ? 0.55 : 0.5);
  await page.getByText("Now choose where it ends.").waitFor();
  await pointAt(page, touch, 0.66, touch ? 0.55 : 0.48);
  const panel = page.getByTestId("section-panel");
  await panel.waitFor();
  // The tap that drew the line pressed nothing of the panel that came up under it.
  await page.waitForTimeout(400);
  expect(await page.evaluate(() => document.activeElement?.closest(".section-panel"))).toBeNull();
  await expectEngine(page, site);
  for (const stage of ["found", "backfilled", "dug"] as const) {
    await toStage(page, stage);
    await page.waitForFunction(
      (wanted) =>
        document.querySelector<HTMLElement>(".section-panel")?.dataset["stage"] === wanted,
      stage,
    );
    await expectEngine(page, site);
    await screenshot(`section-${name}-${stage}`);
  }
  const box = await panel.boundingBox();
  if (box === null) throw new Error("the panel has no size");
  expect(box.x).toBeGreaterThanOrEqual(0);
  expect(box.x + box.width).toBeLessThanOrEqual(options.width);
  expect(box.y + box.height).toBeLessThanOrEqual(options.height);
  await page.getByTestId("section-end-A").focus();
  const before = await shown(page);
  await page.keyboard.press("Shift+ArrowUp");
  await page.keyboard.press("ArrowRight");
  const after = await shown(page);
  expect(after.line[0]![1]).toBeGreaterThan(before.line[0]![1]);
  expect(after.line[0]![0]).toBeGreaterThan(before.line[0]![0]);
  expect(after.line[1]).toEqual(before.line[1]);
  await expectEngine(page, site);
  await page.keyboard.press("Escape");
  await expect.poll(() => panel.count()).toBe(0);
});

it("follows an end that is dragged, and an edit of a work", async () => {
  const site = example();
  const { page } = await openApp({ width: 1440, height: 900 });
  await waitForFrames(page);
  await page.getByRole("button", { name: "Section", exact: true }).click();
  await page.getByRole("button", { name: "Across the site" }).click();
  await page.getByTestId("section-panel").waitFor();
  const handle = await settledBox(page.getByTestId("section-end-line"));
  const [x, y] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
  const { line } = await shown(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 10);
  await page.mouse.move(x, y + 25);
  await page.mouse.up();
  const by = (now: Shown, i: number): number[] =>
    [0, 1].map((k) => now.line[i]![k]! - line[i]![k]!);
  await expect.poll(async () => Math.hypot(...by(await shown(page), 0))).toBeGreaterThan(0.5);
  const moved = await shown(page);
  expect(by(moved, 1)).toEqual(by(moved, 0).map((each) => expect.closeTo(each, 9) as number));
  await expectEngine(page, site);
  // An edit: the tank goes, and with it its hole where the line crosses it.
  const tank = await settledBox(page.getByTestId("scene-label-tank-1"));
  await page.mouse.click(tank.x + 12, tank.y + 8);
  const works = site.schemes[0]!.works.filter((work) => work.id !== "tank-1");
  await page.keyboard.press("Delete");
  await expect.poll(() => page.locator('[data-work="tank-1"]').count()).toBe(0);
  await expectEngine(page, { ...site, schemes: [{ ...site.schemes[0]!, works }] });
});
