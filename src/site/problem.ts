/** One thing wrong with a site file: where it is, what is wrong, and what would mend it. */
export interface SiteProblem {
  code: SiteProblemCode;
  /** Place in the file, such as `schemes[0].works[2].width`; empty for the file as a whole. */
  path: string;
  text: string;
  mend: string;
}

export type SiteProblemCode =
  | "not-json"
  | "not-a-site"
  | "newer-version"
  | "bad-field"
  | "duplicate-id"
  | "unknown-id"
  | "wrong-count"
  | "unknown-layer"
  | "bad-shape"
  | "bad-survey"
  | "too-large"
  | "bad-link";

/** The answer or the problems, never both and never thrown. */
export type Outcome<T, E> = { ok: true; value: T } | { ok: false; problems: E[] };

/** One line for a person: `schemes[0].works[2].width: must be more than 0; give it in metres`. */
export function problemLine(problem: SiteProblem): string {
  const place = problem.path === "" ? "file" : problem.path;
  return `${place}: ${problem.text}; ${problem.mend}`;
}
