// The page on first opening, at a desk and on a phone, by day and by night. The pictures that it
// takes (tests/browser/output) are those in public/pictures that the README shows.
import { describe, expect, it } from "vitest";
import { coloursShown, openApp, waitForFrames } from "./harness.js";

describe("the page on first opening", () => {
  it.each([
    { name: "desk", width: 1440, height: 900, theme: "light" },
    { name: "desk", width: 1440, height: 900, theme: "dark" },
    { name: "phone", width: 390, height: 844, theme: "light" },
    { name: "phone", width: 390, height: 844, theme: "dark" },
  ] as const)("draws a scene on a $name, $theme", async ({ name, ...screen }) => {
    const { page, consoleErrors, screenshot } = await openApp(screen);
    expect(await waitForFrames(page)).toBeGreaterThanOrEqual(1);
    expect(await coloursShown(page.locator('[data-testid="scene"]'))).toBeGreaterThan(4);
    if (name === "desk") {
      await page.getByRole("slider", { name: "Stage of the job" }).fill("2");
      await page
        .getByRole("button", { name: /Tank 1/ })
        .first()
        .click();
    }
    await page.waitForTimeout(1500);
    await screenshot(`${name}-${screen.theme}`);
    const sideways = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(sideways).toBe(0);
    expect(consoleErrors).toEqual([]);
  });
});
