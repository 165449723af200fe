/** Names of sites and of their files. */
import { SITE_FILE_ENDING, siteFileStem } from "../../site/index.js";

export { siteFileName as fileName } from "../../site/index.js";

/** A random key, 128 bits; also on pages that are not served securely, where randomUUID is missing. */
export function freshKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** A name with its number taken off, such as "Upper Field, copy" of "Upper Field, copy 3". */
function withoutCopy(name: string): string {
  return name.replace(/, copy(?: \d+)?$/, "");
}

/** A name for a copy that none of `taken` has: "Upper Field, copy", "Upper Field, copy 2", … */
export function copyName(name: string, taken: readonly string[]): string {
  const stem = `${withoutCopy(name)}, copy`;
  const used = new Set(taken.map((one) => one.toLowerCase()));
  let next = stem;
  for (let count = 2; used.has(next.toLowerCase()); count++) next = `${stem} ${count}`;
  return next;
}

/** A file name for each site's name, no two alike, in the same order. */
export function uniqueFileNames(names: readonly string[]): string[] {
  const used = new Set<string>();
  return names.map((name) => {
    const stem = siteFileStem(name);
    let next = stem;
    for (let count = 2; used.has(next); count++) next = `${stem}-${count}`;
    used.add(next);
    return `${next}${SITE_FILE_ENDING}`;
  });
}
