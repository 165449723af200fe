/** `npm run -s estimate -- FILE [--scheme ID] [--json]`: the estimate without a page. */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { estimate, surveyProblem } from "../estimate/index.js";
import { problemLine, readSite, type Site } from "../site/index.js";
import { reportText } from "./report.js";

const USAGE = "usage: npm run -s estimate -- FILE [--scheme ID] [--json]";

/** Ends the run with one line on standard error; 2 is "this file cannot be used". */
class Unusable extends Error {}

function run(argv: readonly string[]): string {
  const { file, schemeId, json } = argumentsOf(argv);
  const site = usableSite(file);
  const scheme = schemeId ?? site.schemes[0]!.id;
  if (!site.schemes.some((each) => each.id === scheme)) {
    const known = site.schemes.map((each) => each.id).join(", ");
    throw new Unusable(`${file}: schemes: no scheme is called "${scheme}"; use one of: ${known}`);
  }
  const answer = estimate(site, scheme);
  return json ? `${JSON.stringify(answer, null, 2)}\n` : reportText(site, answer);
}

function argumentsOf(argv: readonly string[]): { file: string; schemeId?: string; json: boolean } {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: { scheme: { type: "string" }, json: { type: "boolean", default: false } },
    });
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new Unusable(USAGE);
    return {
      file,
      json: values.json,
      ...(values.scheme === undefined ? {} : { schemeId: values.scheme }),
    };
  } catch (error) {
    if (error instanceof Unusable) throw error;
    const why = error instanceof Error ? error.message : String(error);
    throw new Unusable(`${why.split(". ")[0] ?? why}; ${USAGE}`);
  }
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
  if (!(error instanceof Unusable)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
}
