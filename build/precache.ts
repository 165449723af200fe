// Builds the service worker last, with the list of all that the page needs without a network.
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import type { Plugin, ResolvedConfig } from "vite";

interface BuiltFile {
  url: string;
  revision: string | null;
}

const hashOf = (content: string | Uint8Array): string =>
  createHash("sha256").update(content).digest("hex").slice(0, 16);

/** The worker as one script: module workers are not to be had in every browser yet. */
async function builtWorker(root: string, files: readonly BuiltFile[]): Promise<string> {
  const result = await build({
    root,
    configFile: false,
    logLevel: "warn",
    publicDir: false,
    define: {
      BUILT_FILES: JSON.stringify(files),
      "process.env.NODE_ENV": JSON.stringify("production"),
    },
    build: {
      write: false,
      target: "es2022",
      rolldownOptions: {
        input: join(root, "src/offline/serviceWorker.ts"),
        output: { format: "iife" },
      },
    },
  });
  const [script] = "output" in result ? result.output : [];
  if (script?.type !== "chunk") throw new Error("expected the service worker as a chunk, got none");
  return script.code;
}

/**
 * Adds `serviceWorker.js` to the build. Files under assets carry their hash in the name; pictures
 * for the README and the install dialog are left out, and so are source maps.
 */
export function precache(): Plugin {
  let config: ResolvedConfig;
  return {
    name: "bankyard:precache",
    apply: "build",
    enforce: "post",
    configResolved: (resolved) => void (config = resolved),
    async generateBundle(_, bundle) {
      const { root, publicDir } = config;
      const files: BuiltFile[] = [];
      for (const { fileName: url, ...file } of Object.values(bundle)) {
        if (url.endsWith(".map")) continue;
        const content = file.type === "chunk" ? file.code : file.source;
        files.push({ url, revision: url.startsWith("assets/") ? null : hashOf(content) });
      }
      for (const entry of readdirSync(publicDir, { withFileTypes: true })) {
        if (!entry.isFile()) continue;
        const content = readFileSync(join(publicDir, entry.name));
        files.push({ url: entry.name, revision: hashOf(content) });
      }
      const source = await builtWorker(root, files);
      this.emitFile({ type: "asset", fileName: "serviceWorker.js", source });
    },
  };
}
