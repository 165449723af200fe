// Builds the app once for all browser tests and serves the build, as people will get it.
import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build, preview } from "vite";
import type { TestProject } from "vitest/node";
import { ROOT } from "../../src/cli/prepare.mjs";

declare module "vitest" {
  interface ProvidedContext {
    /** Address of the built app, ending in a slash. */
    appAddress: string;
  }
}

/** Vitest's global setup: gives tests `appAddress`, and takes build and server down at the end. */
export default async function serveBuiltApp(project: TestProject): Promise<() => Promise<void>> {
  // A folder of its own, so that two test runs never serve each other's half-written build; or the
  // one that `npm test` gives, and removes, for all that it runs.
  const given = process.env["BANKYARD_TEST_BUILD"];
  const outDir = given ?? (await mkdtemp(join(tmpdir(), "bankyard-browser-test-")));
  const removeBuild = async (): Promise<void> => {
    if (given === undefined) await rm(outDir, { recursive: true, force: true });
  };
  try {
    // Vitest says "test" here, and the build would hold React as it is for development.
    process.env["NODE_ENV"] = "production";
    if (!existsSync(join(outDir, "index.html"))) {
      await build({
        root: ROOT,
        mode: "production",
        logLevel: "warn",
        build: { outDir, emptyOutDir: true },
      });
    }
    const server = await preview({
      root: ROOT,
      logLevel: "warn",
      build: { outDir },
      preview: { host: "127.0.0.1", port: 0 },
    });
    const address = server.httpServer.address();
    if (address === null || typeof address === "string") {
      throw new Error(`expected a port to be listened on, got ${String(address)}`);
    }
    project.provide("appAddress", `http://127.0.0.1:${String(address.port)}/`);
    return async () => {
      await server.close();
      await removeBuild();
    };
  } catch (error) {
    await removeBuild();
    throw error;
  }
}
