import { plainNumber } from "../units/index.js";
import { words } from "../words/index.js";

const MB = 1e6;
/** Bytes of a site file: a million points with room to spare, and less than a text may be long. */
export const MOST_SITE_BYTES = 300 * MB;
/** Bytes of a table of points, which is read on the page as it is typed. */
export const MOST_TABLE_BYTES = 50 * MB;

/** A file's size and the most there may be, in words; null when it is small enough. */
export function sizeFault(bytes: number, most: number): { size: string; most: string } | null {
  if (bytes <= most) return null;
  const inWords = (count: number): string =>
    words.book.tooLarge.megabytes(plainNumber(Math.ceil(count / MB), 0));
  return { size: inWords(bytes), most: inWords(most) };
}
