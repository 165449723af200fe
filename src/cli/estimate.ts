/**
 * `npm run -s estimate -- FILE [--scheme ID] [--json]`: the estimate without a page.
 *
 * Ranges are drawn in 1,000 runs, or as many as `--runs` says; 0 leaves them out.
 *
 * With one of `--section X,Y,X,Y[;X,Y…]`, `--at X,Y`, `--contours STEP` or `--mesh` (metres, site
 * coordinates) and perhaps `--stage STAGE`, one JSON object about the ground instead: see readings.ts.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { chanceOf } from "../chance/index.js";
import { estimate, surveyProblem } from "../estimate/index.js";
import { problemLine, readSite, type Site } from "../site/index.js";
import {
  readGround,
  readingOf,
  tiedArguments,
  UnusableFlag,
  type ReadingFlags,
} from "./readings.js";
import { reportText } from "./report.js";

const USAGE =
  "usage: npm run -s estimate -- FILE [--scheme ID] [--runs N] [--json | --section X,Y,X,Y[;X,Y…] | --at X,Y | --contours STEP | --mesh] [--stage STAGE]";

interface Arguments {
  file: string;
  schemeId?: string;
  json: boolean;
  runs: number;
  flags: ReadingFlags;
}

/** Ends the run with one line on standard error; 2 is "this file cannot be used". */
class Unusable extends Error {}

function run(argv: readonly string[]): string {
  const { file, schemeId, json, runs, flags } = argumentsOf(argv);
  const reading = readingOf(flags);
  const site = usableSite(file);
  const scheme = schemeId ?? site.schemes[0]!.id;
  if (!site.schemes.some((each) => each.id === scheme)) {
    const known = site.schemes.map((each) => each.id).join(", ");
    throw new Unusable(`${file}: schemes: no scheme is called "${scheme}"; use one of: ${known}`);
  }
  if (reading !== null) return `${JSON.stringify(readGround(site, scheme, reading))}\n`;
  const answer = estimate(site, scheme);
  const chance = runs === 0 ? null : chanceOf(site, scheme, runs);
  if (!json) return reportText(site, answer, chance);
  return `${JSON.stringify(chance === null ? answer : { ...answer, chance }, null, 2)}\n`;
}

function argumentsOf(argv: readonly string[]): Arguments {
  try {
    const { values, positionals } = parseArgs({
      args: tiedArguments(argv),
      allowPositionals: true,
      options: {
        scheme: { type: "string" },
        json: { type: "boolean", default: false },
        runs: { type: "string", default: "1000" },
        section: { type: "string" },
        at: { type: "string" },
        contours: { type: "string" },
        mesh: { type: "boolean" },
        stage: { type: "string" },
      },
    });
    const { scheme, json, runs, ...flags } = values;
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new Unusable(USAGE);
    return {
      file,
      json,
      runs: runsOf(runs),
      flags,
      ...(scheme === undefined ? {} : { schemeId: scheme }),
    };
  } catch (error) {
    if (error instanceof Unusable) throw error;
    const why = error instanceof Error ? error.message : String(error);
    throw new Unusable(`${why.split(". ")[0] ?? why}; ${USAGE}`);
  }
}

/** 0, or 2 and more up to a million: one run has no spread. */
function runsOf(text: string): number {
  const runs = /^\d+$/.test(text) ? Number(text) : NaN;
  if (runs === 0 || (runs >= 2 && runs <= 1e6)) return runs;
  throw new Unusable(`--runs: got "${text}", expected 0, or 2 to 1000000; ${USAGE}`);
}

function usableSite(file: string): Site {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Unusable(`${file}: cannot be read (${why}); give the path of a *.site.json file`);
  }
  const read = readSite(text);
  if (!read.ok) {
    const more = read.problems.length - 1;
    const rest = more > 0 ? ` (and ${more} more)` : "";
    throw new Unusable(`${file}: ${problemLine(read.problems[0]!)}${rest}`);
  }
  const problem = surveyProblem(read.value);
  if (problem) throw new Unusable(`${file}: ${problemLine(problem)}`);
  return read.value;
}

// A reader that stops early (`| head`) is no fault of the estimate.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

try {
  process.stdout.write(run(process.argv.slice(2)));
} catch (error) {
  if (!(error instanceof Unusable || error instanceof UnusableFlag)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
}
