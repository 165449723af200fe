/** Finds entries by what a person types: word order, case, accents and signs do not matter. */

/** What can be found: its name, and whatever else it may be looked for by. */
export interface Findable {
  title: string;
  more?: string;
}

/** Letters that have no accent to take off but are typed without it all the same. */
const PLAIN: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  đ: "d",
  ð: "d",
  ł: "l",
  þ: "th",
  ı: "i",
  "½": " 1/2",
  "¼": " 1/4",
  "¾": " 3/4",
};

/** A text as plain lower-case words: no accents, no signs but those within numbers. */
export function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .replace(/[ßæœøđðłþı½¼¾]/g, (letter) => PLAIN[letter] ?? letter)
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .split(/[^\p{L}\p{N}/.]+/u)
    .map((word) => word.replace(/^[/.]+|[/.]+$/g, ""))
    .filter((word) => word !== "");
}

/** How well one typed word fits one word: whole, as its beginning, within it, or not (0). */
function fitOf(typed: string, word: string): number {
  if (word === typed) return 4;
  if (word.startsWith(typed)) return 3;
  // A letter or two within a word is found nearly everywhere, and says nothing.
  return typed.length > 2 && word.includes(typed) ? 1 : 0;
}

const bestFit = (typed: string, among: readonly string[]): number =>
  among.reduce((best, word) => Math.max(best, fitOf(typed, word)), 0);

/** A name counts this much more than what else is said of a thing. */
const NAME_WEIGHT = 3;

/**
 * How well an entry answers what was typed; 0 when any typed word is nowhere in it. Names count more
 * than the rest, whole words more than beginnings, and short names more than long ones.
 */
export function scoreOf(typed: readonly string[], { title, more }: Findable): number {
  if (typed.length === 0) return 0;
  const name = wordsOf(title);
  const rest = more === undefined ? [] : wordsOf(more);
  let score = 0;
  for (const word of typed) {
    const fit = Math.max(NAME_WEIGHT * bestFit(word, name), bestFit(word, rest));
    if (fit === 0) return 0;
    score += fit;
  }
  if (name.join(" ") === typed.join(" ")) score += 10;
  else if (name[0]?.startsWith(typed[0] ?? "") === true) score += 1;
  return score + 1 / (1 + name.length);
}

/** The entries that answer what was typed, best first; equals stay in their order. */
export function matching<T extends Findable>(
  query: string,
  entries: readonly T[],
  most: number,
): T[] {
  const typed = wordsOf(query);
  return entries
    .map((entry) => ({ entry, score: scoreOf(typed, entry) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .slice(0, most)
    .map(({ entry }) => entry);
}
