// Within everyone's reach: axe finds nothing wrong in any leaf on a phone by night and at a desk by
// day; text at twice its size and the page at twice its zoom are not cut off; and an edit made while
// somebody types leaves the text, the focus and the cursor where they are.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openApp, waitForFrames } from "./harness.js";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const LEAVES = ["Survey", "Dig", "Flow", "Machines", "Cost", "Handover"] as const;
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** Px that a border may take off what a finger needs. */
const FINGER = 43.5;

async function openLeaf(page: Page, leaf: (typeof LEAVES)[number]): Promise<void> {
  await page.getByRole("button", { name: leaf, exact: true }).first().click();
  await page.locator(`aside.leaf[aria-label="${leaf}"] .leaf-body h2`).first().waitFor();
  await page.evaluate(() => {
    for (const one of document.querySelectorAll<HTMLDetailsElement>(".leaf details"))
      one.open = true;
  });
}

/** What axe finds wrong; handles in the scene may lie over each other wherever the view puts them. */
async function faults(page: Page): Promise<string[]> {
  return page.evaluate(async (rules) => {
    const { axe } = window as unknown as {
      axe: { run: (at: unknown, how: unknown) => Promise<AxeResults> };
    };
    const how = { runOnly: rules, resultTypes: ["violations"] };
    const { violations } = await axe.run({ exclude: [".scene-handle", ".scene-tag"] }, how);
    return violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`),
    );
  }, RULES);
}

/** Controls of the leaf that are too small for a finger. */
async function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const all = document.querySelectorAll<HTMLElement>(
      ".leaf .field :is(input, select, button), .leaf .tools button, .leaf summary",
    );
    return [...all].flatMap((one) => {
      const { width, height } = one.getBoundingClientRect();
      if (height === 0 || (height >= least && width >= least) || one.closest("p.wrong")) return [];
      return [`${one.tagName} ${one.textContent} ${Math.round(width)}×${Math.round(height)}`];
    });
  }, FINGER);
}

/** What runs out of the page, of the leaf or of its figure at the sides. */
async function runsOut(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wide = (one: Element): boolean => one.scrollWidth > one.clientWidth + 1;
    const places = [document.documentElement, ...document.querySelectorAll(".leaf, .figure")];
    return places.filter(wide).map((one) => `${one.tagName}.${one.className}`);
  });
}

describe("reach", () => {
  it.each([
    { name: "a phone by night", width: 390, height: 844, theme: "dark", touch: true },
    { name: "a desk by day", width: 1440, height: 900, theme: "light", touch: false },
  ] as const)("has no fault on $name", async ({ name: _, ...screen }) => {
    const { page } = await openApp(screen);
    await waitForFrames(page);
    await page.evaluate(AXE);
    for (const leaf of LEAVES) {
      await openLeaf(page, leaf);
      if (leaf === "Dig") {
        await page.locator("[data-work]", { hasText: "Tank 1" }).click();
        await page.locator("[data-field=overdig]").waitFor();
      }
      expect(await faults(page), leaf).toEqual([]);
      if (screen.touch) expect(await tooSmall(page), leaf).toEqual([]);
    }
  });

  it("cuts nothing off with text or page at twice the size", async () => {
    const { page } = await openApp({ width: 1440, height: 900 });
    await waitForFrames(page);
    for (const size of [
      { font: "200%", width: 1440, height: 900 },
      { font: "", width: 720, height: 450 },
    ]) {
      await page.setViewportSize(size);
      await page.evaluate((font) => (document.documentElement.style.fontSize = font), size.font);
      for (const leaf of LEAVES) {
        await openLeaf(page, leaf);
        expect(await runsOut(page), `${leaf} ${size.font}`).toEqual([]);
      }
    }
  });

  it("leaves what is being typed alone when the document changes", async () => {
    const { page } = await openApp({ width: 1440, height: 900 });
    await waitForFrames(page);
    await openLeaf(page, "Dig");
    await page.locator("[data-work]", { hasText: "Tank 1" }).click();
    const field = page.locator("[data-field=overdig]");
    await field.fill("1.2 ");
    await field.evaluate((input: HTMLInputElement) => input.setSelectionRange(2, 2));
    const order = (): Promise<string[]> => page.locator("[data-work]").allInnerTexts();
    const before = await order();
    await page
      .getByRole("button", { name: "Build later" })
      .evaluate((button: HTMLElement) => button.click());
    await expect.poll(order).not.toEqual(before);
    const now = await field.evaluate((input: HTMLInputElement) => ({
      text: input.value,
      cursor: input.selectionStart,
      focused: document.activeElement === input,
    }));
    expect(now).toEqual({ text: "1.2 ", cursor: 2, focused: true });

    await page.keyboard.press("End");
    await page.keyboard.type("m");
    await page.keyboard.press("Enter");
    await expect.poll(() => field.inputValue()).toBe("3′ 11¼″");
    await page.keyboard.press("ArrowUp");
    await expect.poll(() => field.inputValue()).toBe("4′ 0″");
    await page
      .getByRole("button", { name: /typical 1′ 0″/ })
      .first()
      .click();
    await expect.poll(() => field.inputValue()).toBe("1′ 0″");
  });
});
