// A large survey is read, joined and worked on away from the page: its progress shows, it can be
// cancelled, it comes on the desk, it is there again after a reload, and a worker that fails leaves
// the site as it was. Tasks of the page over 50 ms are noted and printed, with the part of each that
// ran in animation frames (React, layout and, above all, drawing by software).
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { ROOT } from "../../src/cli/prepare.mjs";
import { openApp, waitForFrames } from "./harness.js";

const POINTS_A_SIDE = 316;

/** The example with its survey replaced by a close grid of points that are a little off it. Half of what it was (9.5 s) when all of it ran in the page: the same machine has given 1.2 s on one day and 2.6 s on another. */
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

/** Notes long tasks, values of the bar, and failures of workers that the test asks for. */
function watch(): void {
  const noted = {
    tasks: [] as [number, number][],
    frames: [] as [number, number][],
    bar: [] as number[],
    moves: [] as number[],
    drawn: [] as [number, number][],
  };
  Object.assign(window, { noted, failWorkers: false });
  new PerformanceObserver((list) => {
    for (const one of list.getEntries()) noted.tasks.push([one.startTime, one.duration]);
  }).observe({ type: "longtask", buffered: true });
  const plain = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (call) =>
    plain((time) => {
      const start = performance.now();
      call(time);
      noted.frames.push([start, performance.now() - start]);
    });
  new MutationObserver(() => {
    const bar = document.querySelector("progress");
    if (bar !== null && noted.bar.at(-1) !== bar.value) noted.bar.push(bar.value);
    const scene = document.querySelector('[data-testid="scene"]');
    const cut = scene?.getAttribute("data-drawn-cut") ?? null;
    if (cut !== null && noted.drawn.at(-1)?.[1] !== Number(cut)) {
      noted.drawn.push([performance.now(), Number(cut)]);
    }
  }).observe(document, { childList: true, subtree: true, attributes: true });
  document.addEventListener("pointermove", ({ timeStamp }) => noted.moves.push(timeStamp), true);
  const Plain = window.Worker;
  window.Worker = class extends Plain {
    override postMessage(
      message: unknown,
      how?: Transferable[] | StructuredSerializeOptions,
    ): void {
      if (!(window as unknown as { failWorkers: boolean }).failWorkers) {
        super.postMessage(message, Array.isArray(how) ? { transfer: how } : how);
        return;
      }
      setTimeout(() => this.dispatchEvent(new ErrorEvent("error", { message: "out of memory" })));
    }
  };
}

interface Noted {
  tasks: [number, number][];
  frames: [number, number][];
  bar: number[];
  /** When the pointer moved, and when the scene drew another cut, m³. */
  moves: number[];
  drawn: [number, number][];
}

/** What has been noted since the last call. */
async function taken(page: Page): Promise<Noted> {
  return page.evaluate(() => {
    const { noted } = window as unknown as { noted: Noted };
    const copy = structuredClone(noted);
    noted.tasks.length = noted.frames.length = noted.bar.length = 0;
    noted.moves.length = noted.drawn.length = 0;
    return copy;
  });
}

/** Each long task, ms, and what of it is not animation frames: messages, input, timers. */
function longTasks({ tasks, frames }: Noted): { whole: number; ours: number }[] {
  return tasks.map(([start, whole]) => {
    const drawn = frames
      .filter(([at]) => at >= start && at < start + whole)
      .reduce((sum, [, ms]) => sum + ms, 0);
    return { whole: Math.round(whole), ours: Math.round(Math.max(0, whole - drawn)) };
  });
}

/**
 * No task of ours may be longer, ms. The aim is 50; what holds here, with software drawing on two
 * cores, is ten times that, and the limit leaves room for a busy machine.
 */
const LONGEST = 4500;

function report(what: string, noted: Noted): void {
  const list = longTasks(noted).map(({ whole, ours }) => `${whole} (${ours})`);
  console.log(`${what}: tasks over 50 ms, in brackets without frames: ${list.join(", ")}`);
  for (const { ours } of longTasks(noted)) expect(ours).toBeLessThan(LONGEST);
}

/**
 * A move must be drawn, with the figures of its place, within this, ms. The aim is 100. Measured
 * with drawing by software on two busy cores: 1,100 to 6,600, about half of it until the worker has
 * dug and worked out the site, half until the frame before is drawn.
 */
const SLOWEST_FRAME = 15_000;

/** Drags the tank: a quick burst, then single moves. Gives the lag of each of those, ms. */
async function dragTank(page: Page): Promise<number[]> {
  const label = await page.getByTestId("scene-label-tank-1").boundingBox();
  if (label === null) throw new Error("the tank has no label");
  const [x, y] = [label.x + label.width / 2, label.y + label.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 4; step++) {
    await page.mouse.move(x + 6 * step, y - 2 * step);
    await page.waitForTimeout(60);
  }
  await page.getByTestId("scene-working").waitFor({ state: "detached", timeout: 20_000 });
  await page.waitForTimeout(1000);
  const lags: number[] = [];
  for (let step = 5; step <= 6; step++) {
    await page.mouse.move(x + 6 * step, y - 2 * step);
    const lag = await page.waitForFunction(() => {
      const { moves, drawn } = (window as unknown as { noted: Noted }).noted;
      const moved = moves.at(-1) ?? Infinity;
      const next = drawn.find(([at]) => at > moved);
      return next === undefined ? false : { ms: next[0] - moved };
    });
    lags.push(Math.round(((await lag.jsonValue()) as { ms: number }).ms));
    await page.waitForTimeout(500);
  }
  await page.mouse.up();
  return lags;
}

const onDesk = (page: Page) => page.getByRole("button", { name: /^Wide Hill/ });

it("reads, shows, keeps and gives up a large survey without losing what was there", async () => {
  const { page, screenshot, context } = await openApp({ width: 1440, height: 900 });
  await context.addInitScript(watch);
  await page.reload();
  await waitForFrames(page);
  await taken(page);
  const text = largeSite();
  const waiting = page.getByRole("progressbar", { name: /Wide Hill|wide-hill/ });

  await drop(page, text);
  await waiting.waitFor();
  await page.locator(".ground-waiting button").click();
  await page.getByText("Stopped. The site on the desk is as it was.").waitFor();
  expect(await page.getByRole("button", { name: /Alder Flat/ }).count()).toBe(1);

  await page.evaluate(() => Object.assign(window, { failWorkers: true }));
  await drop(page, text);
  await page.getByText(/could not be worked on: out of memory/).waitFor();
  await page.getByRole("button", { name: "Close", exact: true }).click();
  expect(await page.getByRole("button", { name: /Alder Flat/ }).count()).toBe(1);
  await page.evaluate(() => Object.assign(window, { failWorkers: false }));

  await taken(page);
  await drop(page, text);
  await waiting.waitFor();
  await screenshot("large-survey-waiting");
  await onDesk(page).waitFor({ timeout: 40_000 });
  await waiting.waitFor({ state: "detached" });
  await page.waitForTimeout(1500);
  const opened = await taken(page);
  report(`opening ${POINTS_A_SIDE ** 2} points`, opened);
  expect(new Set(opened.bar).size).toBeGreaterThanOrEqual(3);
  await screenshot("large-survey");
  const cut = Number(await page.locator('[data-figure="cut"]').getAttribute("data-value"));
  expect(cut).toBeGreaterThan(1);

  const lags = await dragTank(page);
  console.log(`from a move to the frame with its figures: ${lags.join(", ")} ms`);
  for (const lag of lags) expect(lag).toBeLessThan(SLOWEST_FRAME);
  await page.getByTestId("scene-working").waitFor({ state: "detached", timeout: 20_000 });
  // Both read at one moment: the strip is set in the turn before the frame that draws it.
  const shown = () =>
    page.evaluate(() => ({
      figure: Number(document.querySelector('[data-figure="cut"]')?.getAttribute("data-value")),
      drawn: Number(
        document.querySelector('[data-testid="scene"]')?.getAttribute("data-drawn-cut"),
      ),
      working: document.querySelector('[data-testid="scene-working"]') !== null,
    }));
  await expect
    .poll(
      async () => {
        const { figure, drawn, working } = await shown();
        return !working && figure !== cut && Math.abs(figure - drawn) < 1e-9;
      },
      { timeout: 20_000 },
    )
    .toBe(true);
  const moved = (await shown()).figure;
  const dragged = await taken(page);
  report("dragging a tank", dragged);
  await screenshot("large-survey-dragged");

  await page.waitForTimeout(1500);
  await page.reload();
  await onDesk(page).waitFor({ timeout: 40_000 });
  const again = page.locator('[data-figure="cut"]');
  await expect
    .poll(async () => Number(await again.getAttribute("data-value")))
    .toBeCloseTo(moved, 9);
});
