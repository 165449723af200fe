// A lint rule of our own: which folder of src may import which. It sees type imports, re-exports,
// dynamic imports, import types and worker addresses alike.
import { builtinModules } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** The engine: pure folders that run in Node, a worker and the page alike. */
export const ENGINE_FOLDERS = [
  "units",
  "site",
  "ground",
  "dig",
  "hydraulics",
  "flow",
  "safety",
  "runoff",
  "land",
  "permit",
  "machines",
  "cost",
  "estimate",
  "chance",
];

/**
 * What each folder of src may import from the others.
 * @type {Readonly<Record<string, readonly string[]>>}
 */
export const FOLDER_TABLE = {
  units: [],
  site: ["units"],
  ground: ["units", "site"],
  dig: ["units", "site", "ground"],
  // The laws of pipes, pumps and tanks know no site.
  hydraulics: [],
  // A pipe lies in the trench that was dug for it.
  flow: ["units", "site", "ground", "dig", "hydraulics"],
  safety: ["units", "site", "dig", "flow"],
  // Water that runs down the ground as found, and what a ditch for it would meet.
  runoff: ["units", "site", "ground", "dig", "safety"],
  // What is laid bare, and where its water goes.
  land: ["units", "site", "ground", "dig", "runoff"],
  // What an office asks to see, held against the site.
  permit: ["units", "site", "dig", "flow", "safety"],
  machines: ["units", "site", "dig"],
  cost: ["units", "site", "machines", "dig", "flow"],
  estimate: ENGINE_FOLDERS.filter((folder) => folder !== "estimate" && folder !== "chance"),
  // Many estimates of the same scheme.
  chance: ENGINE_FOLDERS.filter((folder) => folder !== "chance"),
  survey: ["units", "site"],
  // The page's own files on the device.
  offline: [],
  // What the page says; it computes nothing.
  words: [],
  scene: ["units", "site", "estimate", "words"],
  sheets: ["units", "site", "estimate", "words"],
  // What the desk and the page to hand over draw alike.
  drawn: ["units", "site", "estimate", "words", "sheets"],
  // What is taken away as files: sheets among it.
  handover: ["units", "site", "estimate", "words", "sheets", "survey"],
  store: ["units", "site", "estimate", "chance", "survey", "words", "sheets", "handover"],
  desk: [
    ...["units", "site", "estimate", "chance", "survey", "words", "store", "scene", "offline"],
    ...["drawn", "sheets", "handover"],
  ],
  // A page of one file that shows one site and cannot edit it.
  viewer: ["units", "site", "estimate", "words", "scene", "drawn", "handover"],
  cli: ["units", "site", "estimate", "chance", "survey", "words", "sheets", "handover"],
};

const MAY_READ_SHARED = [
  "site",
  "hydraulics",
  "flow",
  "machines",
  "cost",
  "chance",
  "safety",
  "permit",
  "store",
  "cli",
];

const ENGINE_PACKAGES = [
  "zod",
  "delaunator",
  "robust-predicates",
  "flatbush",
  "flatqueue",
  "polygon-clipping",
];

/** Folders that run without a page although they are no part of the engine. */
const HEADLESS_FOLDERS = ["survey", "sheets", "handover", "cli"];
const PAGE_PACKAGES = /^(react|react-dom|react-aria.*|three|zustand|@react-three\/.*)$/;

/** @param {string} specifier @returns {string} "three" of "three/examples/x.js" */
function packageName(specifier) {
  const parts = specifier.split("/");
  return specifier.startsWith("@") ? parts.slice(0, 2).join("/") : (parts[0] ?? specifier);
}

/** @param {string} specifier */
function isNodeModule(specifier) {
  return specifier.startsWith("node:") || builtinModules.includes(packageName(specifier));
}

/**
 * @param {string} folder folder of src that imports
 * @param {string} specifier
 * @param {boolean} isTest
 * @returns {string | null} what is wrong with importing a package there
 */
function packageFault(folder, specifier, isTest) {
  if (isTest) return null;
  if (isNodeModule(specifier)) {
    return folder === "cli" ? null : `only src/cli may import Node's own "${specifier}"`;
  }
  const name = packageName(specifier);
  if (folder === "units") return `src/units imports nothing, not even "${name}"`;
  if (ENGINE_FOLDERS.includes(folder)) {
    if (ENGINE_PACKAGES.includes(name) || name.startsWith("@turf/")) return null;
    return `src/${folder} is pure engine and may not import "${name}"`;
  }
  if (HEADLESS_FOLDERS.includes(folder) && PAGE_PACKAGES.test(name)) {
    return `src/${folder} runs without a page and may not import "${name}"`;
  }
  return null;
}

/**
 * @param {string} folder folder of src that imports
 * @param {string} target path from the project's top, forward slashes
 * @param {boolean} isTest a test or fixture, which may also read another folder's fixtures
 * @returns {string | null} what is wrong with importing a file of ours there
 */
function fileFault(folder, target, isTest) {
  const [top, other, ...rest] = target.split("/");
  if (top === "shared") {
    return MAY_READ_SHARED.includes(folder) ? null : `src/${folder} may not read shared/`;
  }
  if (top !== "src" || other === undefined) {
    return `src/${folder} may import only from src and shared, not "${target}"`;
  }
  if (other === folder) return null;
  if (rest.length === 0) return `src/${folder} may not import the app's root, "${target}"`;
  if (!(FOLDER_TABLE[folder] ?? []).includes(other)) {
    return `src/${folder} may not import src/${other} (the folder table in tests/lint/folder-table.js)`;
  }
  const mayRead = isTest ? /^(index|[^/]+\.fixture)\.[jt]sx?$/ : /^index\.[jt]sx?$/;
  if (!mayRead.test(rest.join("/"))) {
    return `import src/${other} through its index.js, not "${target}"`;
  }
  return null;
}

/**
 * What is wrong with an import, or null if it is allowed.
 * @param {string} file the importing file, as a path from the project's top with forward slashes
 * @param {string} specifier as written in the import
 * @returns {string | null}
 */
export function importFault(file, specifier) {
  const [top, folder, ...rest] = file.split("/");
  if (top !== "src" || folder === undefined) return null;
  const bare = specifier.replace(/[?#].*$/, "");
  if (bare.startsWith("/")) return `write "${specifier}" as a relative path`;
  const isOurs = bare.startsWith(".");
  const target = path.posix.join(path.posix.dirname(file), bare);
  if (rest.length === 0) {
    if (!isOurs || target.startsWith("shared/")) return null;
    return /^src\/([^/]+|[^/]+\/index\.[jt]sx?)$/.test(target) || !/\.[cm]?[jt]sx?$/.test(target)
      ? null
      : `import a folder of src through its index.js, not "${target}"`;
  }
  if (!(folder in FOLDER_TABLE)) {
    return `src/${folder} is not in the folder table (tests/lint/folder-table.js)`;
  }
  const isTest = /\.(test|fixture)\.tsx?$/.test(file);
  return isOurs ? fileFault(folder, target, isTest) : packageFault(folder, bare, isTest);
}

/** The rule `bankyard/folder-table`. @type {import("eslint").Rule.RuleModule} */
export const folderTable = {
  meta: {
    type: "problem",
    docs: { description: "imports between the folders of src follow the folder table" },
    schema: [],
    messages: { fault: "{{fault}}" },
  },
  create(context) {
    const file = path.relative(ROOT, context.filename).split(path.sep).join("/");
    /** @param {import("estree").Node | null | undefined} source */
    const check = (source) => {
      if (source?.type !== "Literal" || typeof source.value !== "string") return;
      const fault = importFault(file, source.value);
      if (fault !== null) context.report({ node: source, messageId: "fault", data: { fault } });
    };
    return {
      ImportDeclaration: (node) => {
        check(node.source);
      },
      ExportNamedDeclaration: (node) => {
        check(node.source);
      },
      ExportAllDeclaration: (node) => {
        check(node.source);
      },
      ImportExpression: (node) => {
        check(node.source);
      },
      // typeof import("…") and import("…").Name
      /** @param {import("estree").Node & { source: import("estree").Node }} node */
      TSImportType: (node) => {
        check(node.source);
      },
      // new Worker(new URL("…", import.meta.url))
      'NewExpression[callee.name="URL"]': (
        /** @type {import("estree").NewExpression} */ { arguments: [address, base] },
      ) => {
        if (base?.type !== "MemberExpression" || base.object.type !== "MetaProperty") return;
        if (address?.type !== "Literal" || !/\.[cm]?[jt]sx?$/.test(String(address.value))) return;
        check(address);
      },
    };
  },
};
