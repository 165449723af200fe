/** Reading and writing the site file. Nothing here throws for a bad file: it lists what is wrong. */
import type { z } from "zod";
import { crossProblems } from "./crossCheck.js";
import type { Outcome, SiteProblem } from "./problem.js";
import { siteSchema, type Site } from "./schema.js";

/** Reads a site file's text: JSON, then the schema, then what the schema alone cannot say. */
export function readSite(text: string): Outcome<Site, SiteProblem> {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    return { ok: false, problems: [notJson(text, error)] };
  }
  return checkSite(value);
}

/** Checks a value read from somewhere; the site is returned as it is, unknown fields kept. */
export function checkSite(value: unknown): Outcome<Site, SiteProblem> {
  const wrongKind = kindProblem(value);
  if (wrongKind) return { ok: false, problems: [wrongKind] };
  const checked = siteSchema.safeParse(value);
  if (!checked.success) {
    return { ok: false, problems: checked.error.issues.map((issue) => fieldProblem(issue, value)) };
  }
  const site: Site = checked.data;
  const problems = crossProblems(site);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: site };
}

/** The text of a site file: JSON with two spaces, UTF-8, ending in a line break. */
export function writeSite(site: Site): string {
  return `${JSON.stringify(site, null, 2)}\n`;
}

function notJson(text: string, error: unknown): SiteProblem {
  const message = error instanceof Error ? error.message : String(error);
  const at = /position (\d+)/.exec(message);
  let path = "";
  if (at) {
    const before = text.slice(0, Number(at[1])).split("\n");
    path = `line ${before.length}, column ${before[before.length - 1]!.length + 1}`;
  }
  return {
    code: "not-json",
    path,
    text: text.trim() === "" ? "the file is empty" : "this is not JSON",
    mend: "open a *.site.json file that was saved whole",
  };
}

function kindProblem(value: unknown): SiteProblem | null {
  const isRecord = typeof value === "object" && value !== null && !Array.isArray(value);
  const { format, version } = isRecord
    ? (value as { format?: unknown; version?: unknown })
    : { format: undefined, version: undefined };
  if (format !== "bankyard-site") {
    return {
      code: "not-a-site",
      path: "format",
      text: `must be "bankyard-site"`,
      mend: "open a site file",
    };
  }
  if (typeof version === "number" && version > 1) {
    return {
      code: "newer-version",
      path: "version",
      text: `is ${version}, newer than this program reads (1)`,
      mend: "open it with a newer version",
    };
  }
  return null;
}

type Issue = z.core.$ZodIssue;

function fieldProblem(issue: Issue, value: unknown): SiteProblem {
  const path = placeOf(issue.path);
  const [text, mend] = wording(issue, valueAt(value, issue.path));
  return { code: "bad-field", path, text, mend };
}

/** `schemes[0].works[2].width` from its parts. */
function placeOf(path: readonly PropertyKey[]): string {
  return path.reduce<string>((place, key) => {
    if (typeof key === "number") return `${place}[${key}]`;
    return place === "" ? String(key) : `${place}.${String(key)}`;
  }, "");
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (at, key) =>
      typeof at === "object" && at !== null ? (at as Record<PropertyKey, unknown>)[key] : undefined,
    value,
  );
}

function wording(issue: Issue, got: unknown): [text: string, mend: string] {
  switch (issue.code) {
    case "invalid_type":
      return got === undefined
        ? ["is missing", `give ${aKind(issue.expected)}`]
        : [`must be ${aKind(issue.expected)}, not ${shown(got)}`, `give ${aKind(issue.expected)}`];
    case "too_small":
      return issue.origin === "number"
        ? [
            `must be ${issue.inclusive ? "at least" : "more than"} ${issue.minimum}, not ${shown(got)}`,
            "give a larger number, in SI units",
          ]
        : issue.origin === "string"
          ? ["must not be empty", "give it a value"]
          : [`must have ${issue.minimum} or more entries`, "add what is missing"];
    case "too_big":
      return issue.origin === "number"
        ? [`must be at most ${issue.maximum}, not ${shown(got)}`, "give a smaller number"]
        : [`must have at most ${issue.maximum} entries`, "remove what is too much"];
    case "invalid_value":
      return [`must be ${oneOf(issue.values)}, not ${shown(got)}`, "use one of these"];
    case "invalid_union":
      return [`${shown(got)} is not a kind that is known here`, "see the site file's schema"];
    default:
      return [issue.message, "change it"];
  }
}

function aKind(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? "an" : "a"} ${kind}`;
}

function oneOf(values: readonly unknown[]): string {
  return values.map((value) => JSON.stringify(value)).join(" or ");
}

function shown(value: unknown): string {
  if (value === undefined) return "missing";
  if (typeof value === "number" && !Number.isFinite(value)) return "a number beyond all bounds";
  const text = JSON.stringify(value);
  return text.length > 40 ? `${text.slice(0, 37)}…` : text;
}
