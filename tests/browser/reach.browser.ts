// Within everyone's reach: axe finds nothing wrong in any leaf on a phone by night and at a desk by
// day; text at twice its size and the page at twice its zoom are not cut off; and an edit made while
// somebody types leaves the text, the focus and the cursor where they are. A site in feet shows no
// metres, and one in metres no feet.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openApp, waitForFrames } from "./harness.js";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const LEAVES = ["Survey", "Dig", "Flow", "Machines", "Cost", "Handover"] as const;
type Leaf = (typeof LEAVES)[number];
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** Px that a border may take off what a finger needs. */
const FINGER = 43.5;

async function openLeaf(page: Page, leaf: Leaf): Promise<void> {
  await page.getByRole("button", { name: leaf, exact: true }).first().click();
  await page.locator(`aside.leaf[aria-label="${leaf}"] .leaf-body h2`).first().waitFor();
  await page.evaluate(() => {
    for (const one of document.querySelectorAll<HTMLDetailsElement>(".leaf details"))
      one.open = true;
  });
}

/**
 * What axe finds wrong; handles in the scene may lie over each other wherever the view puts them, and
 * whatever they do a field in the leaf does as well (WCAG 2.2, 2.5.8, "Equivalent").
 */
async function faults(page: Page, within: "whole page" | "leaf"): Promise<string[]> {
  const include = within === "leaf" ? ["aside.leaf"] : [":root"];
  return page.evaluate(
    async ({ rules, include }) => {
      const { axe } = window as unknown as {
        axe: { run: (at: unknown, how: unknown) => Promise<AxeResults> };
      };
      const how = { runOnly: rules, resultTypes: ["violations"] };
      const { violations } = await axe.run(
        { include, exclude: [".scene-handle", ".scene-tag", ".scene-section-end"] },
        how,
      );
      return violations.flatMap(({ id, nodes }) =>
        nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`),
      );
    },
    { rules: RULES, include },
  );
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

/** Units of the other system that stand behind a figure. */
const FOREIGN = {
  us: String.raw`\d ?(m³|m²|kPa|kN|N|L/s|kg|mm|m)(?![\w²³°′/])`,
  metric: String.raw`\d ?(ft|ft²|yd|yd³|psi|gpm|lb)(?![\w²³])`,
} as const;

/**
 * Texts and fields of the leaf with a unit of the other system. Sources and rules of law are quoted
 * as they stand, and goods in a list are called what the trade calls them.
 */
async function foreignUnits(page: Page, system: keyof typeof FOREIGN): Promise<string[]> {
  return page.evaluate((pattern) => {
    const foreign = new RegExp(pattern);
    const leaf = document.querySelector(".leaf")?.cloneNode(true) as HTMLElement | undefined;
    if (leaf === undefined) return ["no leaf is open"];
    leaf.querySelectorAll("option, .rule-source, .typical, .soft, svg").forEach((one) => {
      one.remove();
    });
    const found: string[] = [];
    const texts = document.createTreeWalker(leaf, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) found.push(texts.currentNode.textContent ?? "");
    for (const { value, placeholder } of document.querySelectorAll<HTMLInputElement>(".leaf input"))
      found.push(value, placeholder);
    return found.filter((text) => foreign.test(text) && !/29 CFR|^Published: /.test(text));
  }, FOREIGN[system]);
}

/** What runs out of the page, of the leaf or of its figure at the sides. */
async function runsOut(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wide = (one: Element): boolean => one.scrollWidth > one.clientWidth + 1;
    const places = [document.documentElement, ...document.querySelectorAll(".leaf, .figure")];
    return places.filter(wide).map((one) => `${one.tagName}.${one.className}`);
  });
}

/** Every leaf, the Dig leaf with a tank picked, and what is wrong in each. */
async function faultsOfLeaves(page: Page, touch: boolean): Promise<string[]> {
  await page.evaluate(AXE);
  const found: string[] = [];
  for (const leaf of LEAVES) {
    await openLeaf(page, leaf);
    if (leaf === "Dig") {
      await page.locator("[data-work]", { hasText: "Tank 1" }).click();
      await page.locator("[data-field=overdig]").waitFor();
    }
    // What has scrolled half under the leaf's head is no small target.
    await page.locator("aside.leaf").evaluate((one) => one.scrollTo({ top: 0 }));
    // What stands about the leaves is the same for all of them.
    const wrong = await faults(page, leaf === LEAVES[0] ? "whole page" : "leaf");
    wrong.push(...(touch ? await tooSmall(page) : await foreignUnits(page, "us")));
    found.push(...wrong.map((one) => `${leaf}: ${one}`));
  }
  return found;
}

/** The site in metres, set from the unit beside a field, and every leaf read for feet. */
async function feetOnMetricSite(page: Page): Promise<string[]> {
  await page.locator(".field .unit").first().click();
  await page.getByRole("button", { name: "Show the whole site in metres" }).click();
  const found: string[] = [];
  for (const leaf of LEAVES) {
    await openLeaf(page, leaf);
    found.push(...(await foreignUnits(page, "metric")).map((one) => `${leaf}: ${one}`));
  }
  return found;
}

async function runsOutOfLeaves(page: Page, leaves: readonly Leaf[]): Promise<string[]> {
  const found: string[] = [];
  for (const leaf of leaves) {
    await openLeaf(page, leaf);
    found.push(...(await runsOut(page)).map((one) => `${leaf}: ${one}`));
  }
  return found;
}

async function typingStays(page: Page): Promise<void> {
  await openLeaf(page, "Dig");
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
}

describe("reach", () => {
  it("has no fault on a phone by night", async () => {
    const { page } = await openApp({ width: 390, height: 844, theme: "dark", touch: true });
    await waitForFrames(page);
    expect(await faultsOfLeaves(page, true)).toEqual([]);
  });

  it("has none at a desk by day, keeps what is typed, and holds text of twice the size", async () => {
    const { page } = await openApp({ width: 1440, height: 900, theme: "light" });
    await waitForFrames(page);
    expect(await faultsOfLeaves(page, false)).toEqual([]);
    await typingStays(page);
    expect(await feetOnMetricSite(page)).toEqual([]);
    await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
    expect(await runsOutOfLeaves(page, LEAVES), "text").toEqual([]);
    await page.evaluate(() => (document.documentElement.style.fontSize = ""));
    await page.setViewportSize({ width: 720, height: 450 });
    expect(await runsOutOfLeaves(page, ["Dig", "Flow"]), "page").toEqual([]);
  });
});
