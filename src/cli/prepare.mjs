// Installs what a fresh machine lacks: the packages, and for tests a browser.
// Runs before anything is installed, so it uses Node alone, in syntax that an old Node still reads
// (otherwise nobody would ever see the message that their Node is too old).
import { spawnSync } from "child_process";
import { createHash } from "crypto";
import { accessSync, constants, existsSync, readFileSync, realpathSync, writeFileSync } from "fs";
import { homedir } from "os";
import { delimiter, join } from "path";
import { fileURLToPath } from "url";

/** The top folder of the project, as an absolute path. */
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

const LEAST_NODE = "20.19.0";
const STAMP = join(ROOT, "node_modules", ".bankyard-installed");
const TEN_MINUTES = 600000;

/** Something that the person must mend; the message is one or two plain lines. */
export class PrepareError extends Error {}

/** Progress goes to stderr, so that a command's own output stays clean. @param {string} text */
export function say(text) {
  process.stderr.write(text + "\n");
}

/**
 * Throws a PrepareError if Node is older than the packages need.
 * @param {string} version such as "20.19.0"
 */
export function checkNode(version) {
  const have = version.split(".").map(Number);
  const least = LEAST_NODE.split(".").map(Number);
  for (let i = 0; i < least.length; i++) {
    const a = Number(have[i]);
    const b = Number(least[i]);
    if (a > b) return;
    if (a < b) {
      throw new PrepareError(
        `Bankyard needs Node ${LEAST_NODE} or later; this is Node ${version}.\n` +
          "Install a newer one (https://nodejs.org) and try again.",
      );
    }
  }
}

/** Line ends are levelled first, since a checkout may rewrite them. */
function lockHash() {
  const lock = readFileSync(join(ROOT, "package-lock.json"), "utf8").replace(/\r\n/g, "\n");
  return createHash("sha256").update(lock).digest("hex");
}

/**
 * A JSON file whose shape the caller vouches for; throws if it cannot be read.
 * @template T
 * @param {string} file
 * @returns {T}
 */
export function readJson(file) {
  /** @type {unknown} */
  const read = JSON.parse(readFileSync(file, "utf8"));
  return /** @type {T} */ (read);
}

/**
 * The packages that a lock file of npm's lists, by their place below the top folder.
 * @param {string} lockFile
 */
function packagesIn(lockFile) {
  /** @type {{ packages: Record<string, { integrity?: string, optional?: boolean, devOptional?: boolean }> }} */
  const lock = readJson(lockFile);
  return lock.packages;
}

/**
 * Whether the list that npm keeps of what it installed agrees with the lock file, for someone who
 * ran npm themselves. Optional packages may be missing: they belong to other systems.
 */
function npmListAgrees() {
  const listFile = join(ROOT, "node_modules", ".package-lock.json");
  if (!existsSync(listFile)) return false;
  const installed = packagesIn(listFile);
  return Object.entries(packagesIn(join(ROOT, "package-lock.json"))).every(([place, wanted]) => {
    if (place === "") return true;
    const have = installed[place];
    if (!have) return wanted.optional === true || wanted.devOptional === true;
    return have.integrity === wanted.integrity;
  });
}

/**
 * Installs the packages with `npm ci` if they are missing or the lock file has changed since.
 * Throws a PrepareError if npm fails. Returns whether it installed.
 */
export function installPackages() {
  const hash = lockHash();
  if (existsSync(STAMP) && readFileSync(STAMP, "utf8").trim() === hash) return false;
  if (npmListAgrees()) {
    writeFileSync(STAMP, hash + "\n");
    return false;
  }
  say("Installing packages (npm ci): once, a minute or two …");
  const npm = process.env.npm_execpath;
  const args = ["ci", "--include=dev", "--no-audit", "--no-fund", "--loglevel=error"];
  const viaNode = npm !== undefined && /npm-cli\.c?js$/.test(npm);
  const result = spawnSync(viaNode ? process.execPath : "npm", viaNode ? [npm, ...args] : args, {
    cwd: ROOT,
    stdio: ["ignore", 2, 2],
    shell: !viaNode && process.platform === "win32",
  });
  if (result.status !== 0) {
    const how = result.error ? result.error.message : `exit code ${String(result.status)}`;
    throw new PrepareError(
      `The packages could not be installed: npm ci failed (${how}); its own message is above.\n` +
        "Check the network connection and the free disk space, then run the same command again.",
    );
  }
  writeFileSync(STAMP, hash + "\n");
  return true;
}

/** @param {string} program @returns {string | null} its full path if it is on the PATH */
function onPath(program) {
  for (const folder of (process.env.PATH || "").split(delimiter)) {
    if (folder === "") continue;
    const file = join(folder, program);
    try {
      accessSync(file, constants.X_OK);
      return file;
    } catch (error) {
      // Not in this folder, or not a program: look in the next one. Anything else is news.
      const code = /** @type {{ code?: string }} */ (error).code;
      if (code !== "ENOENT" && code !== "EACCES" && code !== "ENOTDIR") throw error;
    }
  }
  return null;
}

/** Where Chrome and Chromium usually are on this system. */
function usualPlaces() {
  if (process.platform === "darwin") {
    return ["Google Chrome", "Chromium"].flatMap((name) => {
      const inside = join("Applications", `${name}.app`, "Contents", "MacOS", name);
      return [join("/", inside), join(homedir(), inside)];
    });
  }
  if (process.platform === "win32") {
    const roots = ["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"].map((n) => process.env[n]);
    return roots.flatMap((root) =>
      root
        ? ["Google\\Chrome", "Chromium"].map((p) => join(root, p, "Application", "chrome.exe"))
        : [],
    );
  }
  const names = ["google-chrome", "google-chrome-stable", "chromium", "chromium-browser"];
  return names.flatMap((name) => onPath(name) || []);
}

/**
 * A file with the right name may still be a stand-in that only tells you to install the real one,
 * so ask it. (On Windows chrome.exe opens a window instead of answering.)
 * @param {string} file
 */
function answersAsBrowser(file) {
  if (!existsSync(file)) return false;
  if (process.platform === "win32") return true;
  const answer = spawnSync(file, ["--version"], { encoding: "utf8", timeout: 30000 });
  return answer.status === 0 && /chrom/i.test(answer.stdout);
}

/**
 * The path of a Chrome or Chromium that runs: `CHROME_PATH`, else an installed one, else the one
 * that playwright downloaded, else null. Throws a PrepareError if `CHROME_PATH` is set but wrong.
 * Needs the packages.
 */
export async function findBrowser() {
  const named = process.env.CHROME_PATH;
  if (named) {
    if (answersAsBrowser(named)) return named;
    throw new PrepareError(
      `CHROME_PATH is "${named}", which does not run as Chrome or Chromium.\n` +
        "Correct it, or unset it to have a browser found or installed.",
    );
  }
  const installed = usualPlaces().find(answersAsBrowser);
  if (installed) return installed;
  const { chromium } = await import("playwright-core");
  const own = chromium.executablePath();
  return answersAsBrowser(own) ? own : null;
}

/** "root", "sudo" (that asks for no password) or "none". */
function mayInstallSystemPackages() {
  if (process.getuid && process.getuid() === 0) return "root";
  return onPath("sudo") && spawnSync("sudo", ["-n", "true"], { stdio: "ignore" }).status === 0
    ? "sudo"
    : "none";
}

/** Debian itself; Ubuntu's package of the same name is a stand-in that needs snap. */
function isDebian() {
  if (!onPath("apt-get") || !existsSync("/etc/os-release")) return false;
  const release = readFileSync("/etc/os-release", "utf8");
  return /^ID="?debian"?$/m.test(release);
}

/** @param {string} program @param {string[]} args @returns {boolean} whether it succeeded */
function run(program, args) {
  const result = spawnSync(program, args, {
    cwd: ROOT,
    stdio: ["ignore", 2, 2],
    timeout: TEN_MINUTES,
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
  });
  return result.status === 0;
}

/** Installs packages of Debian's. @param {"root" | "sudo"} as @param {string[]} packages */
function installDebian(as, packages) {
  /** @param {string[]} args */
  const apt = (args) =>
    as === "root" ? run("apt-get", args) : run("sudo", ["-n", "apt-get", ...args]);
  const install = ["install", "-y", "-qq", "--no-install-recommends", ...packages];
  // The list of packages may be missing or old, so a first failure is not the end.
  return apt(install) || (apt(["update", "-qq"]) && apt(install));
}

/** @param {"root" | "sudo"} as */
function installDebianChromium(as) {
  say("No Chrome or Chromium found: installing Debian's chromium package …");
  return installDebian(as, ["chromium"]);
}

/**
 * General-purpose programs that tests read our files back with: Debian's package, and a program
 * that is there once it is installed. One list, so that a fresh machine installs them in one go.
 * @type {Readonly<Record<string, string>>}
 */
export const TEST_TOOLS = {
  "poppler-utils": "pdftotext",
  "gdal-bin": "ogrinfo",
  "libxml2-utils": "xmllint",
  "libreoffice-calc": "soffice",
};

/**
 * Installs those packages whose program is missing, all of `TEST_TOOLS` unless told otherwise.
 * Throws a PrepareError that names what could not be had.
 * @param {string[]} [packages] keys of `TEST_TOOLS`
 */
export function ensureDebian(packages = Object.keys(TEST_TOOLS)) {
  const missing = () => packages.filter((name) => !onPath(TEST_TOOLS[name] || name));
  const wanted = missing();
  if (wanted.length === 0) return;
  const as = mayInstallSystemPackages();
  if (as !== "none" && onPath("apt-get")) {
    say(`Installing for the tests: ${wanted.join(", ")} …`);
    installDebian(as, wanted);
  }
  const left = missing();
  if (left.length === 0) return;
  throw new PrepareError(
    `Programs that some tests read files back with are missing: ${left.join(", ")} (names of Debian's packages).\n` +
      "Install them, or what your system calls them, and run npm test again; the tests that need them fail until then.",
  );
}

/**
 * The path of a browser, installed if there is none: Debian's package where that is allowed, else
 * playwright's own. Throws a PrepareError if none could be had. Needs the packages.
 */
export async function ensureBrowser() {
  const found = await findBrowser();
  if (found) return found;
  const as = mayInstallSystemPackages();
  if (as !== "none" && isDebian() && installDebianChromium(as)) {
    const debian = await findBrowser();
    if (debian) return debian;
  }
  say("Installing playwright's own Chromium …");
  const playwright = join(ROOT, "node_modules", "playwright-core", "cli.js");
  const withLibraries = as !== "none" && onPath("apt-get") ? ["--with-deps"] : [];
  run(process.execPath, [playwright, "install", ...withLibraries, "chromium"]);
  const own = await findBrowser();
  if (own) return own;
  throw new PrepareError(
    "No browser for the browser tests: none was found and none could be installed (see above).\n" +
      "Install Chrome or Chromium, or set CHROME_PATH to one, and run npm test again.",
  );
}

/**
 * Checks Node and installs the packages, for a command that cannot start without them; on failure
 * prints why and ends the process with code 1.
 */
export function prepareOrExit() {
  try {
    checkNode(process.versions.node);
    installPackages();
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    say(error.message);
    process.exit(1);
  }
}

const asked = process.argv[1];
if (asked && realpathSync(asked) === realpathSync(fileURLToPath(import.meta.url))) {
  prepareOrExit();
}
