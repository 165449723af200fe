// The page of one file, as someone gets it who has nothing but the file: opened from the disk, with
// no network. And a link: the app opened by it has the site.
import { mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, inject, it, onTestFinished } from "vitest";
import { estimate, fiveFigures } from "../../src/estimate/index.js";
import { linkOf, pageOf } from "../../src/handover/index.js";
import { readSite, writeSite } from "../../src/site/index.js";
import { coloursShown, openApp, openFile, waitForFrames } from "./harness.js";

/** What the file may weigh, bytes: it goes by mail and by message. */
const MOST_BYTES = 3_000_000;

async function alderFlat() {
  const address = new URL("../../shared/sites/alder-flat.site.json", import.meta.url);
  const read = readSite(await readFile(address, "utf8"));
  if (!read.ok) throw new Error("expected Alder Flat to be read");
  return read.value;
}

it("shows the site from the disk without a network, and gives its file back", async () => {
  const site = await alderFlat();
  const schemeId = site.schemes[0]!.id;
  const worked = estimate(site, schemeId);
  const answer = await fetch(`${inject("appAddress")}viewer.html`);
  const job = { site, schemeId, estimate: worked, madeAt: "2026-11-27T14:05:00Z" };
  const made = pageOf(await answer.text(), job);
  const folder = await mkdtemp(join(tmpdir(), "bankyard-page-"));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  const file = join(folder, made.name);
  await writeFile(file, made.data);
  expect((await stat(file)).size).toBeLessThan(MOST_BYTES);

  const { page } = await openFile(pathToFileURL(file).href);
  const frames = await waitForFrames(page);
  const five = fiveFigures(worked, site);
  const shown = { ...five, cost: five.cost.likely };
  for (const id of ["cut", "rock", "spoil", "days", "cost"] as const) {
    const value = await page.locator(`[data-figure=${id}]`).getAttribute("data-value");
    expect(Number(value), id).toBe(shown[id]);
  }
  expect(await page.locator("[data-cost-line]").count()).toBe(worked.cost.lines.length);
  expect(await page.locator("[data-finding]").count()).toBe(worked.findings.length);
  expect(await page.locator(".caution-list li").count()).toBe(worked.cautions.length);
  expect(await coloursShown(page.locator(".scene-canvas canvas"))).toBeGreaterThan(20);

  await page.getByRole("slider", { name: "Stage of the job" }).fill("6");
  await waitForFrames(page, frames + 1);
  const panel = page.getByTestId("section-panel");
  expect(await panel.getAttribute("data-stage")).toBe("backfilled");
  expect(await panel.locator(".section-area").count()).toBeGreaterThan(3);

  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save the site file" }).click(),
  ]);
  expect(download.suggestedFilename()).toBe("alder-flat.site.json");
  expect(await readFile(await download.path(), "utf8")).toBe(writeSite(site));
});

it("opens the site of a link, and takes it out of the address", async () => {
  const site = { ...(await alderFlat()), name: "Sent by link" };
  const { address } = linkOf(site, inject("appAddress"));
  const path = address.slice(inject("appAddress").length);
  const { page } = await openApp({ path });
  await page.getByText("Sent by link was opened from a link").waitFor();
  expect(new URL(page.url()).hash).toBe("");
  await page.evaluate((cut) => (location.hash = cut), path.slice(0, -40));
  await page.getByRole("alertdialog").getByText("its end is missing").waitFor();
});
