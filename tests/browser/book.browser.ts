// What lies around the scene: the tour, findings that lead to their place, search, keys.
import { describe, expect, it } from "vitest";
import { openApp, waitForFrames } from "./harness.js";

describe("the book around the scene", () => {
  it("tours, flies to a finding, finds a pipe and shows the keys, all by keyboard", async () => {
    const { page } = await openApp({ path: "?tour" });
    await waitForFrames(page);
    const tour = page.getByRole("region", { name: "A short tour" });
    await tour.getByRole("heading", { name: "This is an example site" }).waitFor();
    await tour.getByRole("button", { name: "Next" }).press("Enter");
    await tour.getByRole("heading", { name: "Each leaf is a step of the job" }).waitFor();
    // The page stays in use behind it.
    await page.getByRole("button", { name: "Machines", exact: true }).click();
    await page.getByRole("heading", { level: 1, name: "Machines" }).waitFor();
    await tour.getByRole("button", { name: "Next" }).press("Escape");
    await tour.waitFor({ state: "detached" });

    const button = page.getByRole("button", { name: /^Findings: / });
    await button.press("Enter");
    const list = page.getByRole("dialog", { name: "Findings" });
    const counted = /(\d+) cautions/.exec((await button.getAttribute("aria-label")) ?? "")?.[1];
    expect(await list.locator(".found.caution").count()).toBe(Number(counted));
    await list.locator("[data-finding-row^='walls.']").first().press("Enter");
    await page.getByRole("heading", { level: 1, name: "Dig" }).waitFor();
    await page.locator(".work-heading", { hasText: "Tank 1" }).waitFor();
    await page.keyboard.press("Escape");
    await list.waitFor({ state: "detached" });

    await page.keyboard.press("Control+k");
    await page.getByRole("searchbox").fill("drain house 4");
    await page.getByRole("menuitem", { name: /^House drain, 4 in/ }).waitFor();
    await page.keyboard.press("Enter");
    const pipe = page.locator("section[data-pipe='house-drain']");
    await pipe.waitFor();
    await expect
      .poll(() => pipe.evaluate((one) => one === document.activeElement), { timeout: 10_000 })
      .toBe(true);

    await page.keyboard.press("?");
    const keys = page.getByRole("dialog", { name: "Keys" });
    expect(await keys.locator("[data-key=search] kbd").allTextContents()).toEqual(["Ctrl", "K"]);
    await page.keyboard.press("Escape");
    await keys.waitFor({ state: "detached" });
  });

  it("comes to a driven page without the tour, and fits a phone's head", async () => {
    const { page } = await openApp({ width: 390, height: 844, touch: true });
    await waitForFrames(page);
    expect(await page.getByRole("region", { name: "A short tour" }).count()).toBe(0);
    const boxes = await page
      .locator(".head-row button:visible")
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON() as DOMRect));
    for (const { left, right, width, height } of boxes) {
      expect(Math.min(width, height)).toBeGreaterThanOrEqual(44);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(390);
    }
    const sorted = boxes.sort((a, b) => a.left - b.left);
    for (const [i, box] of sorted.entries()) {
      const next = sorted[i + 1];
      if (next !== undefined) expect(box.right).toBeLessThanOrEqual(next.left + 0.5);
    }
  });
});
