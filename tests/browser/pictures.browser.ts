// Pictures of the scene: what is saved is of the size that is said, shows something, and leaves the
// scene as it was.
import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { STAGES } from "../../src/estimate/index.js";
import { coloursIn, openApp, waitForFrames } from "./harness.js";

async function saved(page: Page, button: string): Promise<{ name: string; file: Buffer }> {
  const coming = page.waitForEvent("download", { timeout: 90_000 });
  await page.getByRole("button", { name: button, exact: true }).click();
  const download = await coming;
  return { name: download.suggestedFilename(), file: await readFile(await download.path()) };
}

/** The pictures' data of a GIF, by its blocks (GIF89a, CompuServe 1990, appendix B). */
function framesOf(gif: Buffer): Buffer[] {
  const tableSize = (flags: number): number =>
    (flags & 0x80) === 0 ? 0 : 3 * 2 ** ((flags & 7) + 1);
  const frames: Buffer[] = [];
  let at = 13 + tableSize(gif[10]!);
  const endOfParts = (from: number): number => {
    let end = from;
    while (gif[end]! > 0) end += gif[end]! + 1;
    return end + 1;
  };
  while (gif[at] !== 0x3b) {
    const isFrame = gif[at] === 0x2c;
    if (!isFrame && gif[at] !== 0x21) throw new Error(`GIF: unknown block ${gif[at]} at ${at}`);
    const from = isFrame ? at + 10 + tableSize(gif[at + 9]!) + 1 : at + 2;
    const end = endOfParts(from);
    if (isFrame) frames.push(gif.subarray(from, end));
    at = end;
  }
  return frames;
}

describe("pictures", () => {
  it("are saved as the scene is seen, and stage by stage", async () => {
    const { page } = await openApp({ width: 1000, height: 700 });
    await waitForFrames(page);
    await page.getByRole("button", { name: "Handover", exact: true }).click();
    const scene = page.locator('[data-testid="scene"]');
    const { width, height } = await scene.evaluate((one) => ({
      width: one.clientWidth,
      height: one.clientHeight,
    }));

    const png = await saved(page, "Picture (PNG)");
    expect(png.name).toMatch(/^alder-flat-pumped-picture-.*\.png$/);
    expect(png.file.toString("latin1", 1, 4)).toBe("PNG");
    expect(png.file.readUInt32BE(16)).toBe(Math.round(width * 2));
    expect(png.file.readUInt32BE(20)).toBeGreaterThan(height * 2);
    expect(await coloursIn(page, png.file)).toBeGreaterThan(60);

    const before = await page.locator('input[type="range"]').first().inputValue();
    const gif = await saved(page, "Stages (GIF)");
    expect(gif.name).toBe("alder-flat-pumped-stages.gif");
    const frames = framesOf(gif.file);
    expect(frames).toHaveLength(STAGES.length);
    expect(gif.file.readUInt16LE(6)).toBeLessThanOrEqual(800);
    expect(gif.file.length).toBeLessThan(4_000_000);
    expect(await coloursIn(page, gif.file)).toBeGreaterThan(20);
    expect(frames[0]!.equals(frames[2]!)).toBe(false);

    expect(await page.locator('input[type="range"]').first().inputValue()).toBe(before);
    await page.waitForTimeout(800);
    const drawn = await scene.getAttribute("data-frames");
    await page.waitForTimeout(700);
    expect(await scene.getAttribute("data-frames")).toBe(drawn);
  });
});
