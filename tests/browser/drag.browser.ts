// While a tank is dragged on the example, the figures under the scene are those of the frame that is
// drawn. How it is measured: a hook on requestAnimationFrame notes, at every animation frame, the
// count of frames that the scene has drawn and the cut of the estimate that the latest one shows
// (written by the scene as it draws), the cut shown in the strip, and the tank's own row with its
// place. Every noted frame must show one cut; and for each place the engine, asked afterwards, must
// give that cut.
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { estimate } from "../../src/estimate/index.js";
import { changeWork, findWork, readSite, type Site } from "../../src/site/index.js";
import { withMoved } from "../../src/store/moved.js";
import { openApp, waitForFrames } from "./harness.js";

/** What one animation frame showed. */
interface Shown {
  frames: number;
  drawn: number;
  cut: number;
  tankCut: number;
  at: string;
  base: number;
  time: number;
}

async function noteFrames(page: Page): Promise<void> {
  await page.evaluate(() => {
    const noted: unknown[] = [];
    const value = (selector: string, name: string): number =>
      Number(document.querySelector(selector)?.getAttribute(name) ?? NaN);
    const tank = '[data-work="tank-1"]';
    const probe = document.body.appendChild(document.createElement("i"));
    probe.style.cssText = "position:fixed;top:0;height:0;width:1px;visibility:hidden";
    const tick = (): void => {
      probe.style.width = probe.style.width === "1px" ? "2px" : "1px";
      requestAnimationFrame(tick);
    };
    const note = (): void => {
      noted.push({
        frames: value('[data-testid="scene"]', "data-frames"),
        drawn: value('[data-testid="scene"]', "data-drawn-cut"),
        cut: value('[data-figure="cut"]', "data-value"),
        tankCut: value(tank, "data-cut"),
        at: document.querySelector(tank)?.getAttribute("data-at") ?? "",
        base: value(tank, "data-base"),
        time: performance.now(),
      });
    };
    Object.assign(globalThis, { notedFrames: noted });
    new ResizeObserver(note).observe(probe);
    requestAnimationFrame(tick);
  });
}

function expectedCut(site: Site, shown: Shown): { all: number; tank: number } {
  const [x = NaN, y = NaN] = shown.at.split(" ").map(Number);
  const scheme = site.schemes[0]!.id;
  const begun = findWork(site, scheme, "tank-1");
  if (begun?.kind !== "tank") throw new Error("the example has no tank");
  const by: [number, number] = [x - begun.at[0], y - begun.at[1]];
  // The trenches that meet the tank go with it.
  const shifted = withMoved(site, scheme, { kind: "work", id: "tank-1" }, by);
  const moved = changeWork(shifted, scheme, "tank-1", (work) =>
    work.kind === "tank" ? { ...work, at: [x, y], base: shown.base } : work,
  );
  const answer = estimate(moved, site.schemes[0]!.id);
  const tank = answer.works.find((work) => work.id === "tank-1");
  const total = Object.values(tank?.cut ?? {}).reduce((sum, volume) => sum + volume, 0);
  return { all: answer.earth.bank, tank: total };
}

it("keeps the figures in step with the tank in every frame of a drag", async () => {
  const text = readFileSync(
    new URL("../../shared/sites/alder-flat.site.json", import.meta.url),
    "utf8",
  );
  const read = readSite(text);
  if (!read.ok) throw new Error("the example cannot be read");
  const { page, screenshot } = await openApp({ width: 1440, height: 900 });
  await waitForFrames(page);
  await noteFrames(page);
  const label = await page.getByTestId("scene-label-tank-1").boundingBox();
  if (label === null) throw new Error("the tank has no label");
  const [x, y] = [label.x + label.width / 2, label.y + label.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 12; step++) {
    await page.mouse.move(x + 7 * step, y - 2 * step);
    await page.waitForTimeout(30);
  }
  await screenshot("dragging");
  await page.mouse.up();
  await page.waitForTimeout(300);
  const noted = await page.evaluate(
    () => (globalThis as unknown as { notedFrames: Shown[] }).notedFrames,
  );
  const places = new Map(noted.map((shown) => [shown.at, shown]));
  expect(places.size).toBeGreaterThan(5);
  for (const shown of noted) expect(Math.abs(shown.drawn - shown.cut)).toBeLessThan(1e-9);
  for (const shown of places.values()) {
    const { all, tank } = expectedCut(read.value, shown);
    expect(Math.abs(shown.cut - all)).toBeLessThan(1e-9);
    expect(Math.abs(shown.tankCut - tank)).toBeLessThan(1e-9);
  }
  const [first, last] = [noted[0]!, noted[noted.length - 1]!];
  const drawn = last.frames - first.frames;
  const ms = Math.round(last.time - first.time);
  console.log(
    `drag: ${places.size} places, ${drawn} scene frames, ${noted.length} noted, ${ms} ms`,
  );
});
