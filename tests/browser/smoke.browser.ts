import { describe, expect, it } from "vitest";
import { coloursShown, openApp, waitForFrames } from "./harness.js";

describe("the page on first opening", () => {
  it.each([
    { width: 1440, height: 900, theme: "light" },
    { width: 390, height: 844, theme: "dark" },
  ] as const)("draws a scene at $width × $height, $theme", async (screen) => {
    const { page, consoleErrors, screenshot } = await openApp(screen);
    expect(await waitForFrames(page)).toBeGreaterThanOrEqual(1);
    expect(await coloursShown(page.locator('[data-testid="scene"]'))).toBeGreaterThan(4);
    await screenshot(`smoke-${String(screen.width)}-${screen.theme}`);
    expect(consoleErrors).toEqual([]);
  });
});
