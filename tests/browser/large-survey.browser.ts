// A large survey is triangulated away from the page: its progress shows, it can be cancelled, and
// then it comes on the desk. The longest task of the page is noted and printed.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { ROOT } from "../../src/cli/prepare.mjs";
import { openApp, waitForFrames } from "./harness.js";

const POINTS_A_SIDE = 316;

/** The example with its survey replaced by a close grid of points that are a little off it. */
function largeSite(): string {
  const file = join(ROOT, "shared", "sites", "alder-flat.site.json");
  const site = JSON.parse(readFileSync(file, "utf8")) as {
    name: string;
    survey: { points: { id: string; x: number; y: number; z: number }[] };
  };
  const { points } = site.survey;
  const [west, east] = rangeOf(points.map((point) => point.x));
  const [south, north] = rangeOf(points.map((point) => point.y));
  const [low] = rangeOf(points.map((point) => point.z));
  const made = Array.from({ length: POINTS_A_SIDE ** 2 }, (_, i) => {
    const [column, row] = [i % POINTS_A_SIDE, Math.floor(i / POINTS_A_SIDE)];
    const off = 0.2 * Math.sin(12.9898 * i);
    return {
      id: `g${i}`,
      x: west + ((east - west) * (column + off)) / POINTS_A_SIDE,
      y: south + ((north - south) * (row - off)) / POINTS_A_SIDE,
      z: low + (8 * column) / POINTS_A_SIDE + Math.sin(row / 30),
    };
  });
  return JSON.stringify({ ...site, name: "Wide Hill", survey: { points: made } });
}

function rangeOf(values: readonly number[]): [number, number] {
  return [Math.min(...values), Math.max(...values)];
}

/** Drops the file on the page, as a person does. */
async function drop(page: Page, text: string): Promise<void> {
  const carried = await page.evaluateHandle((content) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([content], "wide-hill.site.json"));
    return transfer;
  }, text);
  await page.dispatchEvent(".desk", "drop", { dataTransfer: carried });
}

it("shows how far a large survey is, lets go of it, and puts it on the desk", async () => {
  const { page, consoleErrors, screenshot } = await openApp({ width: 1440, height: 900 });
  await waitForFrames(page);
  await page.evaluate(() => {
    const tasks: number[] = [];
    Object.assign(window, { longTasks: tasks });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) tasks.push(Math.round(entry.duration));
    }).observe({ type: "longtask" });
  });
  const text = largeSite();
  const waiting = page.getByRole("progressbar", { name: /Wide Hill/ });
  // Pressed from within the page: the button may be there for a few frames only.
  await page.evaluate(() => {
    const observer = new MutationObserver(() => {
      const button = document.querySelector<HTMLButtonElement>(".ground-waiting button");
      if (button === null) return;
      observer.disconnect();
      button.click();
    });
    observer.observe(document.body, { childList: true, subtree: true });
  });
  await drop(page, text);
  await page.getByText("Stopped. The site on the desk is as it was.").waitFor();
  expect(await page.getByRole("button", { name: /Alder Flat/ }).count()).toBe(1);

  await drop(page, text);
  await waiting.waitFor();
  expect(await page.getByRole("button", { name: /Alder Flat/ }).count()).toBe(1);
  await screenshot("large-survey-waiting");
  await page.getByRole("button", { name: /^Wide Hill/ }).waitFor({ timeout: 60_000 });
  await waiting.waitFor({ state: "detached" });
  await page.waitForTimeout(1000);
  const tasks = await page.evaluate(() => (window as unknown as { longTasks: number[] }).longTasks);
  console.log(`tasks over 50 ms at ${POINTS_A_SIDE ** 2} points: ${tasks.join(", ")} ms`);
  expect(consoleErrors).toEqual([]);
});
