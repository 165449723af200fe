// `npm test`: installs what is missing, runs every step, and ends with one line
// "N passed, N failed". Types and lint count as one each, every test case as one.
// npm test -- unit published   runs only those steps
// All steps but the browser's run beside each other, one to a core, and each is printed when it ends.
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import {
  checkNode,
  ensureBrowser,
  ensureDebian,
  installPackages,
  PrepareError,
  ROOT,
  readJson,
  say,
} from "../src/cli/prepare.mjs";

/** @typedef {{ passed: number, failed: number, skipped: number, remark: string }} Outcome */

const TOOLS = {
  tsc: "typescript/bin/tsc",
  eslint: "eslint/bin/eslint.js",
  prettier: "prettier/bin/prettier.cjs",
  vitest: "vitest/vitest.mjs",
};

/** All steps together; what still runs then is stopped and counted as failed. */
const TIME_ALLOWED_MS = 19 * 60_000 + 10_000;
const started = Date.now();
const scratch = mkdtempSync(join(tmpdir(), "bankyard-test-"));

/** What the tools of a step that shares the machine have printed, until the step ends. */
class Kept {
  /** @type {Buffer[]} */
  #parts = [];

  /** @param {import("node:child_process").ChildProcess} child */
  keep(child) {
    for (const stream of [child.stdout, child.stderr]) {
      stream?.on("data", (/** @type {Buffer} */ part) => this.#parts.push(part));
    }
  }

  /** @param {string} line */
  add(line) {
    this.#parts.push(Buffer.from(`${line}\n`));
  }

  print() {
    for (const part of this.#parts) process.stdout.write(part);
    this.#parts = [];
  }
}

/**
 * Runs a tool; what it prints is kept, or seen at once if there is no place to keep it. Resolves to
 * its exit code, or -1 if it was stopped because time ran out.
 * @param {keyof typeof TOOLS} tool @param {string[]} args @param {Kept | null} kept
 * @returns {Promise<number>}
 */
function runTool(tool, args, kept) {
  return new Promise((resolve, reject) => {
    const file = join(ROOT, "node_modules", TOOLS[tool]);
    const out = kept === null ? "inherit" : "pipe";
    const child = spawn(process.execPath, [file, ...args], {
      cwd: ROOT,
      stdio: ["ignore", out, out],
    });
    kept?.keep(child);
    let late = false;
    const timer = setTimeout(
      () => {
        late = true;
        child.kill("SIGKILL");
      },
      Math.max(0, started + TIME_ALLOWED_MS - Date.now()),
    );
    child.on("error", reject);
    child.on("close", (code) => {
      clearTimeout(timer);
      resolve(late ? -1 : (code ?? 1));
    });
  });
}

/**
 * One check made of one or more tools: passes if all of them do; all of them run.
 * @param {[keyof typeof TOOLS, string[]][]} tools @param {Kept | null} kept
 * @returns {Promise<Outcome>}
 */
async function oneCheck(tools, kept) {
  const wrong = [];
  for (const [tool, args] of tools) {
    const code = await runTool(tool, args, kept);
    if (code !== 0) wrong.push(code === -1 ? `${tool} ran out of time` : tool);
  }
  const failed = wrong.length > 0 ? 1 : 0;
  return { passed: 1 - failed, failed, skipped: 0, remark: wrong.join(", ") };
}

/**
 * One project of vite.config.ts, counted from vitest's own report. A test file that could not be
 * read, an error outside the tests, no report and no tests each count as a failure.
 * @param {string} project @param {Kept | null} kept @returns {Promise<Outcome>}
 */
async function testProject(project, kept) {
  const report = join(scratch, `${project}.json`);
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  // A step that shares the machine has one core of it.
  const workers = kept === null ? [] : ["--maxWorkers=1"];
  const code = await runTool(
    "vitest",
    ["run", "--project", project, ...workers, ...reporters],
    kept,
  );
  if (code === -1) return { passed: 0, failed: 1, skipped: 0, remark: "ran out of time" };
  if (!existsSync(report)) return { passed: 0, failed: 1, skipped: 0, remark: "no report" };
  /** @type {{ testResults: { status: string, assertionResults: { status: string }[] }[] }} */
  const told = readJson(report);
  const cases = told.testResults.flatMap((file) => file.assertionResults);
  const passed = cases.filter((one) => one.status === "passed").length;
  const failedCases = cases.filter((one) => one.status === "failed").length;
  const brokenFiles = told.testResults.filter(
    (file) =>
      file.status === "failed" && !file.assertionResults.some((one) => one.status === "failed"),
  ).length;
  const counted = failedCases + brokenFiles;
  const outside = code !== 0 && counted === 0 ? 1 : 0;
  const none = passed + counted === 0 ? 1 : 0;
  return {
    passed,
    failed: counted + Math.max(outside, none),
    skipped: cases.length - passed - failedCases,
    remark: none ? "no tests ran (see above)" : outside ? "an error outside the tests" : "",
  };
}

/** @param {Outcome} a @param {Outcome} b @returns {Outcome} */
function together(a, b) {
  return {
    passed: a.passed + b.passed,
    failed: a.failed + b.failed,
    skipped: a.skipped + b.skipped,
    remark: [a.remark, b.remark].filter((remark) => remark !== "").join(", "),
  };
}

/** Two pages beside each other first, then, with the same build, those that are timed. */
async function browserTests() {
  try {
    process.env.CHROME_PATH = await ensureBrowser();
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    say(error.message);
    return { passed: 0, failed: 1, skipped: 0, remark: "no browser" };
  }
  process.env.BANKYARD_TEST_BUILD = join(scratch, "build");
  return together(await testProject("browser", null), await testProject("timed", null));
}

/**
 * Tests that want a program which cannot be had fail by themselves, and the others still run.
 * @param {Kept | null} kept
 */
async function referenceTests(kept) {
  try {
    ensureDebian();
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    say(error.message);
  }
  return testProject("reference", kept);
}

/**
 * The steps that each keep one core busy, the longest first.
 * @type {Record<string, (kept: Kept | null) => Promise<Outcome>>}
 */
const SHARING = {
  property: (kept) => testProject("property", kept),
  reference: referenceTests,
  lint: (kept) =>
    oneCheck(
      [
        ["eslint", [".", "--max-warnings=0"]],
        ["prettier", ["--check", "--log-level=warn", "."]],
      ],
      kept,
    ),
  unit: (kept) => testProject("unit", kept),
  types: (kept) =>
    oneCheck(
      [
        ["tsc", ["--noEmit", "-p", "tsconfig.json"]],
        ["tsc", ["--noEmit", "-p", "tsconfig.engine.json"]],
      ],
      kept,
    ),
  published: (kept) => testProject("published", kept),
};

const STEPS = [...Object.keys(SHARING), "browser"];

/** The table's lines, as the steps end. @type {string[]} */
const table = [];

/**
 * Runs a step and adds its line to the table.
 * @param {string} name @param {Kept | null} kept @returns {Promise<Outcome>}
 */
async function runStep(name, kept) {
  const begun = Date.now();
  if (kept === null) console.log(`\n── ${name}`);
  else kept.add(`\n── ${name}`);
  const step = name === "browser" ? browserTests : SHARING[name];
  if (step === undefined) throw new Error(`expected the name of a step, got "${name}"`);
  /** @type {Outcome} */
  let outcome = { passed: 0, failed: 1, skipped: 0, remark: "the step itself broke" };
  try {
    outcome = await step(kept);
  } catch (error) {
    // A step that breaks must not keep the others from running.
    say(error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
  kept?.print();
  const { passed, failed, skipped, remark } = outcome;
  table.push(
    `${name.padEnd(10)} ${String(passed).padStart(5)} passed ` +
      `${String(failed).padStart(4)} failed ${String(skipped).padStart(4)} skipped ` +
      `${((Date.now() - begun) / 1000).toFixed(1).padStart(7)} s  ${remark}`.trimEnd(),
  );
  return outcome;
}

/** Runs the steps, one to a core. @param {string[]} names @returns {Promise<Outcome[]>} */
async function runSharing(names) {
  const left = [...names];
  // What is seen at once is liked better, where nothing else runs.
  const alone = names.length === 1;
  /** @type {Outcome[]} */
  const outcomes = [];
  const lane = async () => {
    for (let name = left.shift(); name !== undefined; name = left.shift()) {
      outcomes.push(await runStep(name, alone ? null : new Kept()));
    }
  };
  const lanes = Math.min(left.length, Math.max(1, availableParallelism()));
  await Promise.all(Array.from({ length: lanes }, lane));
  return outcomes;
}

/** Prints the closing line and sets the exit code. @param {number} passed @param {number} failed */
function close(passed, failed) {
  rmSync(scratch, { recursive: true, force: true });
  console.log(`${String(passed)} passed, ${String(failed)} failed`);
  process.exitCode = failed > 0 ? 1 : 0;
}

async function main() {
  const asked = process.argv.slice(2);
  const unknown = asked.filter((name) => !STEPS.includes(name));
  if (unknown.length > 0) {
    say(`No such step: ${unknown.join(", ")}. The steps are ${STEPS.join(", ")}.`);
    close(0, 1);
    return;
  }
  try {
    checkNode(process.versions.node);
    installPackages();
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    say(error.message);
    close(0, 1);
    return;
  }
  const wanted = STEPS.filter((name) => asked.length === 0 || asked.includes(name));
  const outcomes = await runSharing(wanted.filter((name) => name !== "browser"));
  if (wanted.includes("browser")) outcomes.push(await runStep("browser", null));
  const sum = outcomes.reduce(together);
  console.log(`\n${table.join("\n")}\n`);
  close(sum.passed, sum.failed);
}

await main();
