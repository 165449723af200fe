// Every site is kept on this device: two of them, over a reload, one tap apart, with the steps that
// can be undone; and of two pages on one site only one works on it, without writing over the other.
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { openApp } from "./harness.js";

const siteButton = (page: Page) => page.locator(".site-button");
const figures = (page: Page) => page.locator("[data-figure=cut]").waitFor();
const turn = (page: Page) => page.locator("[data-turn]");
const row = (page: Page, name: string) => page.locator(`[data-site="${name}"]`);

async function choose(page: Page, role: "menuitem" | "menuitemradio", name: RegExp): Promise<void> {
  await siteButton(page).click();
  await page.getByRole(role, { name }).first().click();
  await page.keyboard.press("Escape");
  await page.getByRole("menu").waitFor({ state: "detached" });
}

async function openList(page: Page): Promise<void> {
  await siteButton(page).click();
  await page.getByRole("menuitem", { name: /^Sites on this device/ }).click();
  await page.getByRole("dialog", { name: "Sites on this device" }).waitFor();
}

const namesOnList = (page: Page): Promise<(string | null)[]> =>
  page
    .locator("[data-site]")
    .evaluateAll((rows) => rows.map((one) => one.getAttribute("data-site")));

/** What is kept of the sites of this name. */
const keptText = (page: Page, name: string): Promise<string> =>
  page.evaluate(
    (wanted) =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open("bankyard");
        opening.onerror = () => reject(new Error("the base does not open"));
        opening.onsuccess = () => {
          const base = opening.result;
          const all = base.transaction("texts").objectStore("texts").getAll();
          all.onsuccess = () => {
            base.close();
            const texts = all.result as string[];
            const found = texts.filter(
              (text) => (JSON.parse(text) as { name: string }).name === wanted,
            );
            resolve(found.join("\n"));
          };
        };
      }),
    name,
  );

it("keeps two sites over a reload, and one page at a time on each", async () => {
  const { page, context } = await openApp({ width: 900, height: 600 });
  await figures(page);
  await openList(page);
  await page.getByText("Nothing is kept here yet").waitFor();
  await page.keyboard.press("Escape");

  // An example is kept from the first edit on.
  await choose(page, "menuitemradio", /^Metres/);
  await choose(page, "menuitem", /^Example: Quarry Lane/);
  await expect.poll(() => siteButton(page).innerText()).toContain("Quarry Lane");
  await openList(page);
  await expect.poll(() => namesOnList(page)).toEqual(["Alder Flat"]);
  await page.keyboard.press("Escape");
  await choose(page, "menuitemradio", /^Feet/);
  await choose(page, "menuitemradio", /^Metres/);
  await expect.poll(() => keptText(page, "Quarry Lane")).toContain('"units": "metric"');

  await page.reload();
  await figures(page);
  expect(await siteButton(page).innerText()).toContain("Quarry Lane");
  await openList(page);
  await expect.poll(() => namesOnList(page)).toEqual(["Quarry Lane", "Alder Flat"]);
  await row(page, "Alder Flat").locator(".shelf-open").click();
  await expect.poll(() => siteButton(page).innerText()).toContain("Alder Flat");
  expect(await page.getByRole("button", { name: "Undo: show metres" }).isEnabled()).toBe(true);

  await openList(page);
  await row(page, "Quarry Lane").getByRole("button", { name: "More for Quarry Lane" }).click();
  await page.getByRole("menuitem", { name: "Rename…" }).click();
  const field = page.getByLabel("New name");
  await expect.poll(() => field.evaluate((one) => one === document.activeElement)).toBe(true);
  await page.keyboard.type("Lower Bench");
  await page.keyboard.press("Enter");
  await expect.poll(() => namesOnList(page)).toEqual(["Lower Bench", "Alder Flat"]);
  await page.keyboard.press("Escape");

  await twoPages(page, await context.newPage());
});

/** Two pages on Alder Flat: `first` has it. */
async function twoPages(first: Page, second: Page): Promise<void> {
  await second.goto(first.url());
  await figures(second);
  await second.getByText("Open in another tab", { exact: true }).waitFor();
  const before = await keptText(second, "Alder Flat");
  await second.getByRole("button", { name: "Undo: show metres" }).click();
  await second.getByText(/^This site is open in another tab/).waitFor();
  expect(await second.getByRole("button", { name: "Undo: show metres" }).isEnabled()).toBe(true);

  await second.getByRole("button", { name: "Work here instead" }).click();
  await turn(second).waitFor({ state: "detached" });
  await first.getByText("Moved to another tab", { exact: true }).waitFor();
  await second.getByRole("button", { name: "Undo: show metres" }).click();
  await expect.poll(() => keptText(second, "Alder Flat")).not.toBe(before);
  const after = await keptText(second, "Alder Flat");
  // The page that gave it up follows, and works on a copy: the other's stays as it is.
  await first.locator("[data-figure=cut] + span", { hasText: "yd³" }).waitFor();
  await first.getByRole("button", { name: "Work on a copy" }).click();
  await turn(first).waitFor({ state: "detached" });
  await expect.poll(() => keptText(first, "Alder Flat, copy")).toContain("bankyard-site");
  await choose(first, "menuitemradio", /^Metres/);
  await expect.poll(() => keptText(first, "Alder Flat, copy")).toContain('"units": "metric"');
  expect(await keptText(first, "Alder Flat")).toBe(after);
}
