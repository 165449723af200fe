// Opens the built app in a real browser. A test that uses it fails on any console error, page
// error, lost WebGL context or request to another host, even if its own checks pass.
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { chromium } from "playwright-core";
import type { Browser, BrowserContext, Locator, Page } from "playwright-core";
import { inject, onTestFinished } from "vitest";
import { findBrowser, ROOT } from "../../src/cli/prepare.mjs";

/** Where `screenshot` puts its pictures; not committed. */
export const OUTPUT_FOLDER = join(ROOT, "tests", "browser", "output");

/**
 * How the scene is drawn without a graphics card. Mostly by SwiftShader, with the page around it
 * painted by Chromium's own means: that takes a third less of the processor, but the page's script
 * waits while the scene is copied into it. Tests that time the script have the whole page drawn by
 * SwiftShader, in a process of its own, as a graphics card would.
 */
const DRAWING =
  process.env["BANKYARD_TIMED"] === undefined
    ? ["--use-gl=angle", "--use-angle=swiftshader-webgl"]
    : ["--use-angle=swiftshader"];

const BROWSER_FLAGS = [
  "--no-sandbox",
  ...DRAWING,
  "--enable-unsafe-swiftshader",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  "--disable-quic",
];

/** How the app is opened; sizes in CSS pixels. */
export interface OpenOptions {
  width?: number;
  height?: number;
  /** What the system asks for (`prefers-color-scheme`). */
  theme?: "light" | "dark";
  /** A finger instead of a mouse. */
  touch?: boolean;
  /** Added to the app's address, such as "?x" or "#y". */
  path?: string;
}

/** The app in a fresh browser profile (its storage is empty). */
export interface OpenedApp {
  page: Page;
  context: BrowserContext;
  /** Everything that will fail the test when it ends; empty while all is well. */
  consoleErrors: readonly string[];
  /** Writes `output/<name>.png` and returns its path. */
  screenshot: (name: string) => Promise<string>;
}

/** One for all files of a worker (they are not isolated); it ends with the worker's process. */
let browser: Browser | undefined;

async function launchedBrowser(): Promise<Browser> {
  if (browser !== undefined) return browser;
  const executablePath = await findBrowser();
  if (executablePath === null) {
    throw new Error("no Chrome or Chromium found: run `npm test -- browser`, which installs one");
  }
  browser = await chromium.launch({ executablePath, headless: true, args: BROWSER_FLAGS });
  return browser;
}

/** Gathers into the returned list whatever goes wrong on any page of the context. */
function watchForErrors(context: BrowserContext, origin: string): string[] {
  const errors: string[] = [];
  context.on("console", (message) => {
    if (message.type() !== "error") return;
    errors.push(`console: ${message.text()} (${message.location().url})`);
  });
  context.on("weberror", (event) => {
    errors.push(`page: ${event.error().stack ?? event.error().message}`);
  });
  context.on("request", (request) => {
    const address = new URL(request.url());
    if (!address.protocol.startsWith("http") || address.origin === origin) return;
    errors.push(`request to another host: ${request.url()}`);
  });
  context.on("page", (page) => {
    page.on("crash", () => errors.push("page: crashed"));
  });
  return errors;
}

/** Runs in the page before the app: makes a lost WebGL context a console error. */
function reportLostContexts(): void {
  document.addEventListener(
    "webglcontextlost",
    () => {
      console.error("WebGL context lost");
    },
    true,
  );
}

/**
 * Opens the app inside a test and closes it when the test ends. Throws if there is no browser or
 * the page does not answer with 200.
 */
export async function openApp(options: OpenOptions = {}): Promise<OpenedApp> {
  const { width = 1440, height = 900, theme = "light", touch = false, path = "" } = options;
  const address = inject("appAddress");
  const context = await (
    await launchedBrowser()
  ).newContext({ viewport: { width, height }, colorScheme: theme, hasTouch: touch });
  const consoleErrors = watchForErrors(context, new URL(address).origin);
  onTestFinished(async () => {
    await context.close();
    if (consoleErrors.length > 0) {
      throw new Error(`the page was not quiet:\n  ${consoleErrors.join("\n  ")}`);
    }
  });
  await context.addInitScript(reportLostContexts);
  const page = await context.newPage();
  const answer = await page.goto(address + path);
  if (answer?.status() !== 200) {
    throw new Error(`expected status 200 from the app, got ${String(answer?.status())}`);
  }
  const screenshot = async (name: string): Promise<string> => {
    await mkdir(OUTPUT_FOLDER, { recursive: true });
    const file = join(OUTPUT_FOLDER, `${name}.png`);
    await page.screenshot({ path: file });
    return file;
  };
  return { page, context, consoleErrors, screenshot };
}

/** Opens a file from the disk in a fresh profile that has no network; it is watched like the app. */
export async function openFile(address: string): Promise<Pick<OpenedApp, "page">> {
  const context = await (
    await launchedBrowser()
  ).newContext({ viewport: { width: 1440, height: 900 }, colorScheme: "light", offline: true });
  const errors = watchForErrors(context, address);
  onTestFinished(async () => {
    await context.close();
    if (errors.length > 0) throw new Error(`the page was not quiet:\n  ${errors.join("\n  ")}`);
  });
  const page = await context.newPage();
  await page.goto(address);
  return { page };
}

/** Waits until the scene says, in its `data-frames`, that it has drawn at least `least` frames. */
export async function waitForFrames(page: Page, least = 1): Promise<number> {
  const scene = page.locator('[data-testid="scene"]');
  await scene.waitFor({ state: "visible", timeout: 60_000 });
  const drawn = await page.waitForFunction(
    (wanted) => {
      const frames = Number(
        document.querySelector<HTMLElement>('[data-testid="scene"]')?.dataset["frames"],
      );
      return frames >= wanted ? frames : false;
    },
    least,
    { timeout: 60_000 },
  );
  return Number(await drawn.jsonValue());
}

/**
 * Where an element lies once it has lain there for three frames, CSS px: what stands on the ground
 * follows the camera, which may still be coming to rest. Throws if it is not shown.
 */
export async function settledBox(
  element: Locator,
): Promise<{ x: number; y: number; width: number; height: number }> {
  return element.evaluate(async (one) => {
    const now = (): string => {
      const { x, y, width, height } = one.getBoundingClientRect();
      return JSON.stringify({ x, y, width, height });
    };
    let before = "";
    for (let same = 0, frames = 0; same < 3; frames++) {
      if (frames > 600) throw new Error("the element does not come to rest");
      await new Promise(requestAnimationFrame);
      same = now() === before ? same + 1 : 0;
      before = now();
    }
    const box = JSON.parse(before) as { x: number; y: number; width: number; height: number };
    if (box.width === 0) throw new Error("the element has no size");
    return box;
  });
}

/** How many different colours (4 bits a channel) an element shows: 1 for a blank canvas. */
export async function coloursShown(element: Locator): Promise<number> {
  return coloursIn(element.page(), await element.screenshot());
}

/** The same of a picture's file, or of the first frame of an animation. */
export async function coloursIn(page: Page, file: Buffer): Promise<number> {
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes]));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const pen = canvas.getContext("2d");
    if (pen === null) throw new Error("expected a 2d context, got none");
    pen.drawImage(picture, 0, 0);
    const { data } = pen.getImageData(0, 0, picture.width, picture.height);
    const seen = new Set<number>();
    for (let i = 0; i < data.length; i += 4) {
      const [r = 0, g = 0, b = 0] = data.subarray(i, i + 3);
      seen.add(((r >> 4) << 8) | ((g >> 4) << 4) | (b >> 4));
    }
    return seen.size;
  }, file.toString("base64"));
}
