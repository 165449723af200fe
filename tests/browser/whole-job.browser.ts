// The whole job from nothing, as somebody does it who has forty points and a tank's ticket: at a desk
// and on a phone. Places are typed where they were measured; the rest is what the page offers.
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openApp, waitForFrames } from "./harness.js";

/** A slope that rises to the north with a swell in it: number, east, north, elevation; metres. */
const POINTS = [
  "No\tEast\tNorth\tElev",
  ...Array.from({ length: 40 }, (_, i) => {
    const [x, y] = [2 + 11 * (i % 8), 2 + 13 * Math.floor(i / 8)];
    const z = 312 + 0.11 * y + 0.03 * x + 0.8 * Math.sin(x / 14);
    return [i + 1, x, y, z.toFixed(2)].join("\t");
  }),
].join("\n");

const SIZES = {
  desk: { width: 1440, height: 900 },
  phone: { width: 390, height: 844, touch: true },
} as const;

async function typed(page: Page, label: string | RegExp, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true }).first();
  await field.fill(text);
  await field.press("Enter");
}

async function leaf(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name, exact: true }).first().click();
}

/** Begins placing something and types where its first place is. */
async function placeAt(page: Page, what: string, east: number, north: number): Promise<void> {
  await leaf(page, "Dig");
  const group = page.getByRole("group", { name: "Place a new work" });
  await group.getByRole("button", { name: what, exact: true }).click();
  await page.getByTestId("scene-place-east").fill(String(east));
  await page.getByTestId("scene-place-north").fill(String(north));
  await page.getByTestId("scene-place-set").click();
}

/** Adds a leg to what is being drawn, m and degrees. */
async function leg(page: Page, length: number, bearing: number): Promise<void> {
  await page.getByTestId("scene-leg-length").fill(String(length));
  await page.getByTestId("scene-leg-bearing").fill(String(bearing));
  await page.getByTestId("scene-leg-set").click();
}

const figure = async (page: Page, name: string): Promise<number> =>
  Number(await page.locator(`[data-figure="${name}"]`).getAttribute("data-value"));

async function startWithPoints(page: Page): Promise<void> {
  await page.getByRole("button", { name: /Alder Flat/ }).click();
  await page.getByRole("menuitem", { name: "Start my own site…" }).click();
  await page
    .getByRole("textbox", { name: /points/i })
    .first()
    .fill(POINTS);
  await page.getByLabel(/The numbers are in/).selectOption({ label: "Metres" });
  await page.getByLabel("Show me").selectOption({ label: "Metres" });
  await page.getByText("One probe so far: topsoil, soil, then rock").click();
  await typed(page, "Topsoil, thick", "0.2");
  await typed(page, "Soil, thick", "0.9");
  await page.getByLabel("The rock digs as").selectOption({ index: 1 });
  await typed(page, "Site", "Cabin slope");
  await page.getByRole("button", { name: "Put it on the desk" }).click();
  await page.getByRole("button", { name: /Cabin slope/ }).waitFor();
}

async function placeEverything(page: Page): Promise<void> {
  await placeAt(page, "building", 16, 18);
  for (const [length, bearing] of [
    [6, 90],
    [5, 0],
    [6, 270],
  ] as const) {
    await leg(page, length, bearing);
  }
  await page.getByTestId("scene-done").click();
  await page.getByRole("button", { name: "+ Outlet", exact: true }).click();
  await placeAt(page, "tank", 20, 8);
  await typed(page, "Length, outside", "2.6");
  await typed(page, "Width, outside", "1.5");
  await typed(page, "Height, outside", "1.65");
  await typed(page, "Weighs empty, from its ticket", "4200");
  await placeAt(page, "trench", 16, 18);
  await leg(page, 7, 150);
  await page.getByTestId("scene-done").click();
  await placeAt(page, "field trench", 34, 6);
  await leg(page, 12, 90);
  await page.getByTestId("scene-done").click();
}

describe("the whole job from an empty site", () => {
  it.each(["desk", "phone"] as const)("is done at a %s", async (size) => {
    const { page, screenshot } = await openApp(SIZES[size]);
    await waitForFrames(page);
    await startWithPoints(page);
    await waitForFrames(page);
    await placeEverything(page);
    expect(await page.locator("[data-work]").count()).toBe(4);
    expect(await figure(page, "cut")).toBeGreaterThan(20);
    // The hole goes 2 m down and the rock begins at 1.1 m.
    expect(await figure(page, "rock")).toBeGreaterThan(3);
    expect(await figure(page, "days")).toBeGreaterThan(1);
    const cost = await figure(page, "cost");
    expect(cost).toBeGreaterThan(1000);
    await leaf(page, "Flow");
    await page.locator("section[data-pipe]").first().waitFor();
    await screenshot(`whole-job-${size}`);
    await page.waitForTimeout(1200);
    await page.reload();
    await page.getByRole("button", { name: /Cabin slope/ }).waitFor();
    await waitForFrames(page);
    expect(await figure(page, "cost")).toBe(cost);
  });
});
