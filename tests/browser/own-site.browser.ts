// The main job in a real browser: bring points, place one of each work, read a volume from the
// page, find the command line's answer for the saved file equal to it, and the site after a reload.
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { ROOT } from "../../src/cli/prepare.mjs";
import { openApp, OUTPUT_FOLDER, waitForFrames } from "./harness.js";

/** A sloping lot of our own, metres: name, east, north, elevation. */
const POINTS = [
  "name\teast\tnorth\televation\tnote",
  "1\t0\t0\t100.20\tsouth-west corner",
  "2\t18\t1\t100.85\ttrack edge",
  "3\t40\t0\t101.90\tsouth-east corner",
  "4\t1\t15\t101.60\t",
  "5\t20\t14\t102.35\ttop of bank",
  "6\t41\t16\t103.30\t",
  "7\t0\t32\t103.10\tnorth-west corner",
  "8\t21\t33\t103.95\t",
  "9\t40\t34\t104.70\tnorth-east corner",
].join("\n");

async function startOwnSite(page: Page): Promise<void> {
  await page.getByRole("button", { name: /Alder Flat/ }).click();
  await page.getByRole("menuitem", { name: "Start my own site…" }).click();
  await page
    .getByRole("textbox", { name: /points/i })
    .first()
    .fill(POINTS);
  await page.getByLabel(/The numbers are in/).selectOption({ label: "Metres" });
  await page.getByLabel("Show me").selectOption({ label: "Metres" });
  await page.getByLabel("Site", { exact: true }).fill("Bank Field");
  await page.getByLabel("Site", { exact: true }).press("Enter");
  await page.getByRole("button", { name: "Put it on the desk" }).click();
  await page.getByRole("button", { name: "Bank Field First scheme" }).waitFor();
}

/** Starts placing a work and clicks places given as shares of the scene's size. */
async function place(page: Page, what: string, spots: [number, number][]): Promise<void> {
  await page.getByRole("button", { name: "Dig", exact: true }).click();
  await page
    .getByRole("group", { name: "Place a new work" })
    .getByRole("button", { name: what, exact: true })
    .click();
  const box = await page.getByTestId("scene").boundingBox();
  if (box === null) throw new Error("the scene has no box");
  for (const [x, y] of spots) {
    await page.mouse.move(box.x + x * box.width, box.y + y * box.height);
    await page.mouse.click(box.x + x * box.width, box.y + y * box.height);
  }
  if (spots.length > 1) await page.keyboard.press("Enter");
  await page.waitForFunction(
    () => document.querySelector('[data-testid="scene"]')?.getAttribute("data-placing") === null,
  );
}

async function cutsOnPage(page: Page): Promise<Map<string, number>> {
  const rows = await page
    .locator("[data-work]")
    .evaluateAll((found) =>
      found.map((row) => [row.getAttribute("data-work"), row.getAttribute("data-cut")] as const),
    );
  return new Map(rows.map(([id, cut]) => [id ?? "", Number(cut)]));
}

it("from pasted points to the command line's own answer, and back after a reload", async () => {
  const { page, consoleErrors, screenshot } = await openApp({ width: 1440, height: 900 });
  await waitForFrames(page);
  await startOwnSite(page);
  await page.getByRole("button", { name: "Plan", exact: true }).click();
  await place(page, "tank", [[0.5, 0.5]]);
  await place(page, "pad", [
    [0.36, 0.62],
    [0.46, 0.62],
    [0.46, 0.74],
    [0.36, 0.74],
  ]);
  await place(page, "trench", [
    [0.58, 0.4],
    [0.64, 0.48],
    [0.64, 0.6],
  ]);
  await page.getByRole("button", { name: "Orbit", exact: true }).click();
  await screenshot("own-site");
  const cuts = await cutsOnPage(page);
  expect(cuts.size).toBe(3);
  for (const cut of cuts.values()) expect(cut).toBeGreaterThan(0.1);

  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  mkdirSync(OUTPUT_FOLDER, { recursive: true });
  const file = join(OUTPUT_FOLDER, "bank-field.site.json");
  await (await download).saveAs(file);
  expect(readFileSync(file, "utf8")).toContain('"bankyard-site"');
  const printed = execFileSync("npm", ["run", "-s", "estimate", "--", file, "--json"], {
    cwd: ROOT,
    encoding: "utf8",
  });
  const answer = JSON.parse(printed) as {
    works: { id: string; kind: string; cut: Record<string, number> }[];
    earth: { bank: number };
  };
  expect(answer.works.map((work) => work.kind)).toEqual(["tank", "pad", "trench"]);
  for (const work of answer.works) {
    const total = Object.values(work.cut).reduce((sum, volume) => sum + volume, 0);
    expect(Math.abs((cuts.get(work.id) ?? NaN) - total)).toBeLessThan(1e-9);
  }
  const shown = page.locator('[data-figure="cut"]');
  expect(Number(await shown.getAttribute("data-value"))).toBeCloseTo(answer.earth.bank, 9);

  await page.waitForTimeout(1500);
  await page.reload();
  await page.getByRole("button", { name: "Bank Field First scheme" }).waitFor();
  await waitForFrames(page);
  await page.getByRole("button", { name: "Dig", exact: true }).click();
  expect(await cutsOnPage(page)).toEqual(cuts);
  expect(consoleErrors).toEqual([]);
});
