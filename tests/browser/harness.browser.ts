import { describe, it } from "vitest";
import { openApp } from "./harness.js";

// `it.fails` passes only if the test fails; none of these bodies does, so the harness must.
describe("a browser test fails by itself when the page", () => {
  it.fails("writes a console error", async () => {
    const { page } = await openApp();
    await page.evaluate(() => {
      console.error("on purpose");
    });
  });

  it.fails("throws outside any handler", async () => {
    const { page } = await openApp();
    const told = page.waitForEvent("pageerror");
    await page.evaluate(() => {
      setTimeout(() => {
        throw new Error("on purpose");
      });
    });
    await told;
  });

  it.fails("loses its WebGL context", async () => {
    const { page } = await openApp();
    await page.evaluate(async () => {
      const canvas = document.createElement("canvas");
      document.body.append(canvas);
      const lost = new Promise((resolve) => {
        canvas.addEventListener("webglcontextlost", resolve);
      });
      const extension = canvas.getContext("webgl2")?.getExtension("WEBGL_lose_context");
      // Without this the missing extension would be a second way to fail.
      if (extension) extension.loseContext();
      else canvas.dispatchEvent(new Event("webglcontextlost"));
      await lost;
    });
  });

  it.fails("asks another host for something", async () => {
    const { page } = await openApp();
    const asked = page.waitForEvent("request");
    await page.evaluate(() => {
      new Image().src = "https://bankyard.invalid/picture.png";
    });
    await asked;
  });
});
