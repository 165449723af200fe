/** What every command that reads a site file begins with. */
import { readFileSync } from "node:fs";
import { surveyProblem } from "../estimate/index.js";
import { problemLine, readSite, type Site } from "../site/index.js";

/** Ends the run with one line on standard error; exit code 2 is "this cannot be used". */
export class Unusable extends Error {}

/** Reads and checks a site file. Throws `Unusable` with the file, the place in it and a mend. */
export function usableSite(file: string): Site {
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

/** The scheme asked for, or the site's first. Throws `Unusable` where the site has none so called. */
export function chosenScheme(file: string, site: Site, schemeId: string | undefined): string {
  const scheme = schemeId ?? site.schemes[0]!.id;
  if (site.schemes.some((each) => each.id === scheme)) return scheme;
  const known = site.schemes.map((each) => each.id).join(", ");
  throw new Unusable(`${file}: schemes: no scheme is called "${scheme}"; use one of: ${known}`);
}

/** What `parseArgs` threw, as one line with how the command is used. */
export function unusableArguments(error: unknown, usage: string): Unusable {
  if (error instanceof Unusable) return error;
  const why = error instanceof Error ? error.message : String(error);
  return new Unusable(`${why.split(". ")[0] ?? why}; ${usage}`);
}
