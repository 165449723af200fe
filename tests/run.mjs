// `npm test`: installs what is missing, runs every step, and ends with one line
// "N passed, N failed". Types and lint count as one each, every test case as one.
// npm test -- unit published   runs only those steps
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
const TIME_ALLOWED_MS = 18 * 60_000 + 30_000;
const started = Date.now();
const scratch = mkdtempSync(join(tmpdir(), "bankyard-test-"));

/**
 * Runs a tool in the open (its output is seen). Resolves to its exit code, or -1 if it was stopped
 * because time ran out.
 * @param {keyof typeof TOOLS} tool @param {string[]} args @returns {Promise<number>}
 */
function runTool(tool, args) {
  return new Promise((resolve, reject) => {
    const file = join(ROOT, "node_modules", TOOLS[tool]);
    const child = spawn(process.execPath, [file, ...args], {
      cwd: ROOT,
      stdio: ["ignore", "inherit", "inherit"],
    });
    let late = false;
    const timer = setTimeout(
      () => {
        late = true;
        child.kill("SIGKILL");
      },
      Math.max(0, started + TIME_ALLOWED_MS - Date.now()),
    );
    child.on("error", reject);
    child.on("exit", (code) => {
      clearTimeout(timer);
      resolve(late ? -1 : (code ?? 1));
    });
  });
}

/**
 * One check made of one or more tools: passes if all of them do; all of them run.
 * @param {[keyof typeof TOOLS, string[]][]} tools @returns {Promise<Outcome>}
 */
async function oneCheck(tools) {
  const wrong = [];
  for (const [tool, args] of tools) {
    const code = await runTool(tool, args);
    if (code !== 0) wrong.push(code === -1 ? `${tool} ran out of time` : tool);
  }
  const failed = wrong.length > 0 ? 1 : 0;
  return { passed: 1 - failed, failed, skipped: 0, remark: wrong.join(", ") };
}

/**
 * One project of vite.config.ts, counted from vitest's own report. A test file that could not be
 * read, an error outside the tests, no report and no tests each count as a failure.
 * @param {string} project @returns {Promise<Outcome>}
 */
async function testProject(project) {
  const report = join(scratch, `${project}.json`);
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  // Vitest leaves a core free by default: half of two. A page drawn in software needs both itself.
  const workers =
    project === "browser" ? [] : [`--maxWorkers=${Math.min(2, availableParallelism())}`];
  const code = await runTool("vitest", ["run", "--project", project, ...workers, ...reporters]);
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

/** @returns {Promise<Outcome>} */
async function browserTests() {
  try {
    process.env.CHROME_PATH = await ensureBrowser();
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    say(error.message);
    return { passed: 0, failed: 1, skipped: 0, remark: "no browser" };
  }
  return testProject("browser");
}

/** Tests that want a program which cannot be had fail by themselves, and the others still run. */
async function referenceTests() {
  try {
    ensureDebian();
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    say(error.message);
  }
  return testProject("reference");
}

/** @type {Record<string, () => Promise<Outcome>>} */
const STEPS = {
  types: () =>
    oneCheck([
      ["tsc", ["--noEmit", "-p", "tsconfig.json"]],
      ["tsc", ["--noEmit", "-p", "tsconfig.engine.json"]],
    ]),
  lint: () =>
    oneCheck([
      ["eslint", [".", "--max-warnings=0"]],
      ["prettier", ["--check", "--log-level=warn", "."]],
    ]),
  unit: () => testProject("unit"),
  published: () => testProject("published"),
  reference: referenceTests,
  property: () => testProject("property"),
  browser: browserTests,
};

/** @param {string} name @returns {Promise<Outcome>} */
async function runStep(name) {
  const step = STEPS[name];
  if (step === undefined) throw new Error(`expected the name of a step, got "${name}"`);
  console.log(`\n── ${name}`);
  try {
    return await step();
  } catch (error) {
    // A step that breaks must not keep the others from running.
    say(error instanceof Error ? (error.stack ?? error.message) : String(error));
    return { passed: 0, failed: 1, skipped: 0, remark: "the step itself broke" };
  }
}

/** Prints the closing line and sets the exit code. @param {number} passed @param {number} failed */
function close(passed, failed) {
  rmSync(scratch, { recursive: true, force: true });
  console.log(`${String(passed)} passed, ${String(failed)} failed`);
  process.exitCode = failed > 0 ? 1 : 0;
}

async function main() {
  const asked = process.argv.slice(2);
  const unknown = asked.filter((name) => !(name in STEPS));
  if (unknown.length > 0) {
    say(`No such step: ${unknown.join(", ")}. The steps are ${Object.keys(STEPS).join(", ")}.`);
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
  let passed = 0;
  let failed = 0;
  const table = [];
  const wanted = Object.keys(STEPS).filter((name) => asked.length === 0 || asked.includes(name));
  const begun = Date.now();
  // The compiler and the linter use one core each.
  const alone = new Map(
    ["types", "lint"].filter((name) => wanted.includes(name)).map((name) => [name, runStep(name)]),
  );
  for (const name of wanted) {
    const begunStep = alone.has(name) ? begun : Date.now();
    const outcome = await (alone.get(name) ?? runStep(name));
    passed += outcome.passed;
    failed += outcome.failed;
    table.push(
      `${name.padEnd(10)} ${String(outcome.passed).padStart(5)} passed ` +
        `${String(outcome.failed).padStart(4)} failed ${String(outcome.skipped).padStart(4)} skipped ` +
        `${((Date.now() - begunStep) / 1000).toFixed(1).padStart(7)} s  ${outcome.remark}`.trimEnd(),
    );
  }
  console.log(`\n${table.join("\n")}\n`);
  close(passed, failed);
}

await main();
