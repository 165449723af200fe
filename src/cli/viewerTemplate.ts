/** Builds the page of one file that a site is put into: all of its script, styles and type inside. */
import { createHash } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import { templateOf } from "../handover/index.js";

interface Built {
  script: string;
  styles: string;
}

/** The page's script as one, and its styles with the type in them. */
async function builtParts(root: string): Promise<Built> {
  const result = await build({
    root,
    configFile: false,
    mode: "production",
    logLevel: "warn",
    publicDir: false,
    define: { "process.env.NODE_ENV": JSON.stringify("production") },
    resolve: { dedupe: ["three", "react", "react-dom"] },
    build: {
      write: false,
      target: "es2022",
      assetsInlineLimit: Number.MAX_SAFE_INTEGER,
      cssCodeSplit: false,
      chunkSizeWarningLimit: 4000,
      rolldownOptions: {
        input: join(root, "src/viewerPage.tsx"),
        output: { format: "iife" },
      },
    },
  });
  if (!("output" in result)) throw new Error("expected one build of the page, got several");
  const scripts = result.output.flatMap((file) => (file.type === "chunk" ? [file.code] : []));
  const styles = result.output.flatMap((file) =>
    file.type === "asset" && file.fileName.endsWith(".css") ? [String(file.source)] : [],
  );
  const [script] = scripts;
  if (script === undefined || scripts.length > 1 || result.output.length > 1 + styles.length) {
    const names = result.output.map((file) => file.fileName).join(", ");
    throw new Error(`expected one script and its styles, got ${names}`);
  }
  return { script, styles: styles.join("\n") };
}

/**
 * Vite goes by this variable before its own mode: where it says "test" or "development", the script
 * would call on React as it is for development, of which the page has only the other half.
 */
async function inProduction<T>(work: () => Promise<T>): Promise<T> {
  const before = process.env["NODE_ENV"];
  process.env["NODE_ENV"] = "production";
  try {
    return await work();
  } finally {
    if (before === undefined) delete process.env["NODE_ENV"];
    else process.env["NODE_ENV"] = before;
  }
}

/** Builds the template anew; takes some seconds. */
export async function buildViewerTemplate(root: string): Promise<string> {
  const { script, styles } = await inProduction(() => builtParts(root));
  const hash = (text: string): string => createHash("sha256").update(text).digest("base64");
  return templateOf({ script, styles, hash });
}

/** Files that go into the page, or change how it is built. */
function sourceFiles(root: string): string[] {
  const under = (folder: string): string[] =>
    readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
      .filter((name) => /\.(tsx?|css|json)$/.test(name) && !/\.test\.tsx?$/.test(name))
      .map((name) => join(folder, name));
  return [
    ...under("src"),
    ...under("shared/catalogue"),
    "package.json",
    "package-lock.json",
  ].sort();
}

function hashOfSources(root: string): string {
  const hash = createHash("sha256");
  for (const name of sourceFiles(root)) {
    hash.update(`${name}\n`);
    hash.update(readFileSync(join(root, name)));
  }
  return hash.digest("hex").slice(0, 16);
}

/**
 * The template for the sources as they are. It is built once for them and kept with the installed
 * packages, so that asking again costs nothing.
 */
export async function viewerTemplate(root: string): Promise<string> {
  const folder = join(root, "node_modules", ".cache", "bankyard");
  const kept = join(folder, `viewer-${hashOfSources(root)}.html`);
  if (existsSync(kept)) return readFileSync(kept, "utf8");
  const made = await buildViewerTemplate(root);
  mkdirSync(folder, { recursive: true });
  // Under a name of its own first: a second process must never read half a page.
  const fresh = `${kept}.${process.pid}`;
  writeFileSync(fresh, made);
  renameSync(fresh, kept);
  for (const name of readdirSync(folder)) {
    const old = join(folder, name);
    if (/^viewer-\w+\.html$/.test(name) && old !== kept) rmSync(old, { force: true });
  }
  return made;
}
