// Handing over: sheets are looked at, moved on their paper and left out; files come as downloads, and
// making them can be given up.
import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import type { Download, Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openApp } from "./harness.js";

async function toHandover(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Handover", exact: true }).click();
  await page.getByRole("heading", { name: "Printed sheets" }).waitFor();
}

/** The file that a press brings. */
async function pressedFor(page: Page, button: Locator): Promise<[Download, Uint8Array]> {
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 90_000 }),
    button.click(),
  ]);
  return [download, readFileSync(await download.path())];
}

/** The sheet's picture, in its own tree. */
async function textOfSheet(page: Page): Promise<string> {
  return page
    .locator(".sheet-paper")
    .evaluate((host) => host.shadowRoot?.querySelector("svg")?.textContent ?? "");
}

/** Waits until the sheets are those of the site as it is. */
async function drawnAnew(page: Page): Promise<void> {
  await expect.poll(() => page.locator(".sheets-coming").count(), { timeout: 60_000 }).toBe(0);
}

describe("handing over", () => {
  it("shows the sheets, moves a plan on its paper, leaves one out, and makes the PDF", async () => {
    const { page } = await openApp({ width: 1440, height: 900 });
    await toHandover(page);
    await page.getByRole("button", { name: "Look at the sheets…" }).click();
    const rows = page.locator(".sheet-list li");
    await rows.first().waitFor({ timeout: 60_000 });
    const count = await rows.count();
    expect(count).toBeGreaterThan(10);
    expect(await textOfSheet(page)).toContain("Alder Flat");

    await page.locator(".sheet-list button", { hasText: "Layout plan" }).click();
    const scale = page.locator(".sheet-scale select");
    await page.locator(".sheet-plan").focus();
    await page.keyboard.press("ArrowRight");
    await drawnAnew(page);
    await scale.selectOption({ index: 1 });
    await drawnAnew(page);
    const chosen = await scale.locator("option:checked").innerText();
    const words = chosen.replace(/ \(.*/, "");
    await expect.poll(() => textOfSheet(page), { timeout: 60_000 }).toContain(words);

    await page.getByLabel("Print this sheet: Cost").click();
    await drawnAnew(page);
    await expect
      .poll(() => rows.first().innerText(), { timeout: 60_000 })
      .toContain(`1 of ${count - 1}`);
    const [download, pdf] = await pressedFor(
      page,
      page.getByRole("dialog").getByRole("button", { name: "Make the PDF" }),
    );
    expect(download.suggestedFilename()).toBe("alder-flat-pumped-sheets.pdf");
    const text = new TextDecoder("latin1").decode(pdf);
    expect(text.startsWith("%PDF-1.")).toBe(true);
    expect(text.match(/\/Type \/Page\b/g)).toHaveLength(count - 1);
  });

  it("makes files on a phone, several as a zip, and gives up on a press", async () => {
    const { page } = await openApp({ width: 390, height: 844, touch: true });
    await toHandover(page);
    await page.getByRole("button", { name: "Make: Stake-out", exact: true }).click();
    const [zip] = await Promise.all([page.waitForEvent("download", { timeout: 90_000 })]);
    expect(zip.suggestedFilename()).toBe("alder-flat-pumped-stakes.zip");
    const names = Object.keys(unzipSync(readFileSync(await zip.path())));
    expect(names).toContain("alder-flat-pumped-stakes.gpx");
    expect(names).toContain("alder-flat-pumped-stakes.csv");

    await page.getByRole("button", { name: "All of them in one zip" }).click();
    await page.getByRole("button", { name: "Cancel", exact: true }).click();
    await page.getByText("Cancelled; nothing was saved.").waitFor();
    expect(await page.locator(".making").count()).toBe(0);
  });
});
