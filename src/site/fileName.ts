export const SITE_FILE_ENDING = ".site.json";

/** The longest stem of a file name, letters; systems stop at 255 bytes and a letter may take four. */
const LONGEST_STEM = 50;

/** What a site's file is called before its ending. */
export function siteFileStem(name: string): string {
  const stem = Array.from(name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-"))
    .slice(0, LONGEST_STEM)
    .join("")
    .replace(/^-+|-+$/g, "");
  return stem === "" ? "site" : stem;
}

/** A file name from a site's name, such as "upper-field.site.json". */
export function siteFileName(name: string): string {
  return `${siteFileStem(name)}${SITE_FILE_ENDING}`;
}
