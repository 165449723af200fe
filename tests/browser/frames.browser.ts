// Nothing is drawn while nothing changes: in each view and after each tool is left. And how long a
// drag takes from the pointer's event to the frame that shows its figures, printed.
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { openApp, waitForFrames } from "./harness.js";

/** Frames that the scene draws within some ms, once what was under way (the ranges) has come in. */
async function framesIn(page: Page, ms: number): Promise<number> {
  const scene = page.getByTestId("scene");
  const drawn = async (): Promise<number> => Number(await scene.getAttribute("data-frames"));
  let before = await drawn();
  for (let tries = 0; tries < 6; tries++) {
    await page.waitForTimeout(tries === 0 ? 700 : 1200);
    const now = await drawn();
    if (now === before && tries > 0) break;
    before = now;
  }
  await page.waitForTimeout(ms);
  return (await drawn()) - before;
}

it("draws no frame at rest, in any view and after each tool; and tells how a drag keeps up", async () => {
  const { page } = await openApp({ width: 1200, height: 800 });
  await waitForFrames(page);
  const rest: Record<string, number> = { orbit: await framesIn(page, 3000) };
  for (const view of ["Plan", "Walk", "Orbit"]) {
    await page.getByRole("button", { name: view, exact: true }).click();
    rest[view] = await framesIn(page, 600);
  }
  for (const tool of ["Measure", "Section"]) {
    await page.getByRole("button", { name: tool, exact: true }).click();
    await page.keyboard.press("Escape");
    rest[tool] = await framesIn(page, 600);
  }
  await page.evaluate(() => {
    const lags: number[] = [];
    let moved = 0;
    document.addEventListener("pointermove", (event) => (moved = event.timeStamp), true);
    new MutationObserver(() => {
      if (moved > 0) lags.push(performance.now() - moved);
      moved = 0;
    }).observe(document.querySelector('[data-testid="scene"]') as Element, {
      attributeFilter: ["data-drawn-cut"],
    });
    Object.assign(globalThis, { lags });
  });
  const label = await page.getByTestId("scene-label-tank-1").boundingBox();
  if (label === null) throw new Error("the tank has no label");
  const [x, y] = [label.x + label.width / 2, label.y + label.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 30; step++) {
    await page.mouse.move(x + 4 * step, y - step);
    await page.waitForTimeout(40);
  }
  await page.mouse.up();
  rest["drag"] = await framesIn(page, 600);
  const lags = await page.evaluate(() => (globalThis as unknown as { lags: number[] }).lags);
  lags.sort((a, b) => a - b);
  const [median, worst] = [lags[Math.floor(lags.length / 2)] ?? NaN, lags.at(-1) ?? NaN];
  console.log(
    `drag: ${lags.length} frames, median ${median.toFixed(0)} ms, worst ${worst.toFixed(0)} ms`,
  );
  expect(lags.length).toBeGreaterThan(5);
  expect(Object.entries(rest).filter(([, frames]) => frames > 0)).toEqual([]);
});
