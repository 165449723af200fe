/** What tells of money or of a person in text that was written freely. */
import type { Site } from "../../site/index.js";

/** An amount of money: figures with a sign or a code of currency before or after them. */
export function moneyIn(currency: string): RegExp {
  const amount = String.raw`\d[\d.,'\u00A0\u202F]*\d|\d`;
  const unit = String.raw`\p{Sc}|\b(?:${currency}|USD|EUR|GBP|CAD|AUD|NZD|CHF)\b`;
  const word = String.raw`dollars?|euros?|pounds? sterling|bucks|cents?`;
  return new RegExp(
    String.raw`(?:${unit})\s?(?:${amount})k?|(?:${amount})k?\s?(?:(?:${unit})|(?:${word})\b)`,
    "giu",
  );
}

/** Letters of a word that is looked for by itself. */
const LEAST_LETTERS = 3;

/**
 * Every name that stands in the site's particulars: whole, and each capitalised word of a person's or
 * a firm's; the parcel, the address and the ticket whole. Only what stands before the first comma or
 * bracket counts as name.
 */
export function namesIn({ project = {}, locate = {}, accepted = [] }: Site): RegExp[] {
  const people = [
    project.owner,
    project.preparer,
    project.contact,
    ...accepted.map(({ by }) => by),
  ];
  const places = [project.parcel, project.place, project.telephone, locate.ticket];
  const whole = [...people, ...places].flatMap((text) => (text === undefined ? [] : namesOf(text)));
  const words = people.flatMap((text) => (text === undefined ? [] : capitals(namesOf(text)[1])));
  const all = [...new Set([...whole, ...words])].filter((text) => text.length >= LEAST_LETTERS);
  // The longest first, so that a name is found whole before a word of it is.
  return all
    .toSorted((a, b) => b.length - a.length)
    .map(
      (text) => new RegExp(String.raw`(?<![\p{L}\p{N}])${escaped(text)}(?![\p{L}\p{N}])`, "giu"),
    );
}

/** The text itself, and what stands before its first comma or bracket. */
function namesOf(text: string): [string, string] {
  return [text.trim(), text.split(/[,;(]/)[0]!.trim()];
}

const capitals = (name: string): string[] =>
  name.split(/[^\p{L}\p{M}'’-]+/u).filter((word) => /^\p{Lu}/u.test(word));

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, String.raw`\$&`);
