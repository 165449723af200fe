/**
 * `npm run -s estimate -- FILE [--scheme ID] [--json]`: the estimate without a page.
 *
 * Ranges are drawn in 1,000 runs, or as many as `--runs` says; 0 leaves them out.
 *
 * With one of `--section X,Y,X,Y[;X,Y…]`, `--at X,Y`, `--contours STEP` or `--mesh` (metres, site
 * coordinates) and perhaps `--stage STAGE`, one JSON object about the ground instead: see readings.ts.
 */
import { parseArgs } from "node:util";
import { chanceOf } from "../chance/index.js";
import { estimate } from "../estimate/index.js";
import {
  readGround,
  readingOf,
  tiedArguments,
  UnusableFlag,
  type ReadingFlags,
} from "./readings.js";
import { reportText } from "./report.js";
import { chosenScheme, unusableArguments, Unusable, usableSite } from "./siteFile.js";

const USAGE =
  "usage: npm run -s estimate -- FILE [--scheme ID] [--runs N] [--json | --section X,Y,X,Y[;X,Y…] | --at X,Y | --contours STEP | --mesh] [--stage STAGE]";

interface Arguments {
  file: string;
  schemeId?: string;
  json: boolean;
  runs: number;
  flags: ReadingFlags;
}

function run(argv: readonly string[]): string {
  const { file, schemeId, json, runs, flags } = argumentsOf(argv);
  const reading = readingOf(flags);
  const site = usableSite(file);
  const scheme = chosenScheme(file, site, schemeId);
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
    throw unusableArguments(error, USAGE);
  }
}

/** 0, or 2 and more up to a million: one run has no spread. */
function runsOf(text: string): number {
  const runs = /^\d+$/.test(text) ? Number(text) : NaN;
  if (runs === 0 || (runs >= 2 && runs <= 1e6)) return runs;
  throw new Unusable(`--runs: got "${text}", expected 0, or 2 to 1000000; ${USAGE}`);
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
