// The page on a device: how much must be fetched before it can be used, and that it opens and works
// without a network from the second time on.
import { gzipSync } from "node:zlib";
import { expect, inject, it } from "vitest";
import { LEAVES } from "../../src/store/index.js";
import { openApp, waitForFrames } from "./harness.js";

/** What the first load may weigh, bytes as sent with gzip. */
const FIRST_LOAD_MOST = 500_000;

/** The addresses that a file of the build cannot run without: those in its tags, those it imports. */
function needs(text: string, address: string): string[] {
  const found = address.endsWith("/")
    ? text.matchAll(
        /<(?:script|link rel="(?:modulepreload|stylesheet)")[^>]*(?:src|href)="([^"]+)"/g,
      )
    : text.matchAll(/(?:^|[;}])(?:import|export)(?:[^"'`;()]*from)?\s*["'`](\.[^"'`]+)["'`]/g);
  return [...found].map(([, path]) => new URL(path ?? "", address).href);
}

it("opens with less than 500 kB: the page, its styles, its entry and all that this imports", async () => {
  const weights = new Map<string, number>();
  const waiting = [inject("appAddress")];
  for (let address = waiting.pop(); address !== undefined; address = waiting.pop()) {
    if (weights.has(address)) continue;
    const answer = await fetch(address);
    expect(answer.status, address).toBe(200);
    const text = await answer.text();
    weights.set(address, gzipSync(text).length);
    waiting.push(...needs(text, address));
  }
  const kinds = [...weights.keys()].map((address) => address.replace(/^.*[./]/, ""));
  expect(kinds).toEqual(expect.arrayContaining(["js", "css"]));
  const total = [...weights.values()].reduce((sum, weight) => sum + weight, 0);
  // React and the engine alone weigh more: less means that the files were not found.
  expect(total).toBeGreaterThan(150_000);
  expect(total, JSON.stringify([...weights], null, 1)).toBeLessThan(FIRST_LOAD_MOST);
});

it(
  "opens again without a network, with its figures, its ground and every leaf",
  { timeout: 60_000 },
  async () => {
    const { page, context } = await openApp();
    const cut = page.locator("[data-figure=cut]");
    const firstCut = await cut.textContent();
    await page.getByText("it opens and works without a network").waitFor();
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === "activated");

    await context.setOffline(true);
    // Once loaded anew, this browser's offline mode tells the page that it has a network.
    await page.getByRole("button", { name: "No network" }).waitFor();
    await page.reload();
    expect(await cut.textContent()).toBe(firstCut);
    for (const leaf of LEAVES) {
      await page.getByRole("button", { name: new RegExp(`^${leaf}$`, "i") }).click();
      await page.locator(".leaf-body > :not(.leaf-coming, .late-missing)").first().waitFor();
    }
    await waitForFrames(page);
    expect(await page.locator(".late-missing").count()).toBe(0);
  },
);
