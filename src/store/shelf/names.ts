/** Names of sites and of their files. */

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

const ENDING = ".site.json";

/** The longest stem of a file name, letters; systems stop at 255 bytes and a letter may take four. */
const LONGEST_STEM = 50;

function stemOf(name: string): string {
  const stem = Array.from(name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-"))
    .slice(0, LONGEST_STEM)
    .join("")
    .replace(/^-+|-+$/g, "");
  return stem === "" ? "site" : stem;
}

/** A file name from a site's name. */
export function fileName(name: string): string {
  return `${stemOf(name)}${ENDING}`;
}

/** A file name for each site's name, no two alike, in the same order. */
export function uniqueFileNames(names: readonly string[]): string[] {
  const used = new Set<string>();
  return names.map((name) => {
    const stem = stemOf(name);
    let next = stem;
    for (let count = 2; used.has(next); count++) next = `${stem}-${count}`;
    used.add(next);
    return `${next}${ENDING}`;
  });
}
