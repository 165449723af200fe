import type { Site } from "../../site/index.js";

/** Fields that hold what a person has written freely; ids and kinds are never touched. */
const FREE: ReadonlySet<string> = new Set(["name", "note", "notes", "reason", "source"]);

/** What stands where something was left out of a text. */
export const GAP = "…";

/** The site with what the patterns find taken out of everything that was written freely. */
export function scrubbed(site: Site, patterns: readonly RegExp[]): Site {
  const clean = (text: string): string =>
    patterns.reduce((left, found) => left.replace(found, GAP), text);
  return walk(site, clean) as Site;
}

function walk(value: unknown, clean: (text: string) => string): unknown {
  if (Array.isArray(value)) return value.map((item) => walk(item, clean));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, field]: [string, unknown]) => [
      key,
      typeof field === "string" && FREE.has(key) ? clean(field) : walk(field, clean),
    ]),
  );
}
