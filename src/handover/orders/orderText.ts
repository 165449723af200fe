import { schemeOf } from "../../estimate/index.js";
import type { HandoverJob } from "../job.js";
import { words } from "../../words/index.js";
import type { OrderItem, SupplierKind } from "./item.js";
import { shortNumber } from "./item.js";

/** Whom a message goes to. */
export type MessageTo = keyof typeof words.orders.messages;

/** Which lists each message holds. */
const HOLDS: Readonly<Record<MessageTo, readonly SupplierKind[]>> = {
  yard: ["earth"],
  pipes: ["pipe", "fabric"],
  tank: ["tank"],
  pump: ["pump", "electrical"],
};

const ALL = Object.keys(HOLDS) as readonly MessageTo[];

/** Whom something is ordered from. */
export const messagesFor = (items: readonly OrderItem[]): readonly MessageTo[] =>
  ALL.filter((to) => items.some(({ kind }) => HOLDS[to].includes(kind)));

/**
 * One supplier's list as a short message, in letters that any phone's message holds, without prices:
 * who, where, what, and what is asked. Empty where nothing is ordered there.
 */
export function orderText(job: HandoverJob, items: readonly OrderItem[], to: MessageTo): string {
  const said = words.orders;
  const wanted = items.filter(({ kind }) => HOLDS[to].includes(kind));
  if (wanted.length === 0) return "";
  const { owner, preparer, place } = job.site.project ?? {};
  const who = preparer ?? owner;
  const unpriced = wanted.filter(({ line }) => line === null).map(({ name }) => name);
  return plainLetters(
    [
      said.messageHead(job.site.name, schemeOf(job.site, job.schemeId).name),
      ...(who === undefined ? [] : [said.messageFrom(who)]),
      ...(place === undefined ? [] : [said.messagePlace(place)]),
      ...wanted.map(itemText),
      said.messageAsk,
      ...(unpriced.length === 0 ? [] : [said.notPriced(unpriced.join(", "))]),
      said.messageEnd(job.madeAt.slice(0, 10)),
    ].join("\n"),
  );
}

/** Every supplier's message under a heading. Empty where nothing is ordered. */
export function allOrderTexts(job: HandoverJob, items: readonly OrderItem[]): string {
  return messagesFor(items)
    .map((to) => `${words.orders.messages[to].toUpperCase()}\n${orderText(job, items, to)}`)
    .join("\n\n");
}

function itemText(item: OrderItem): string {
  const said = words.orders;
  const exact = item.exact === "" ? [] : [said.exactIs(item.exact)];
  const haul = item.haul === undefined ? [] : [item.haul];
  const where = item.where.length === 0 ? [] : [said.forWorks(item.where.join(", "))];
  const rest = [...exact, ...haul, ...where].join("; ");
  const count = shortNumber(item.count);
  const single = item.unit === said.each || item.unit === said.lump;
  const first = `- ${single ? `${count} x` : `${count} ${item.unit}:`} ${item.name}`;
  return rest === "" ? first : `${first} (${rest})`;
}

/** Letters of the plain keyboard for the signs that messages often lose: "½" is "1/2", "³" is "3". */
export function plainLetters(text: string): string {
  return text
    .replace(/(\d)(?=[¼½¾⅓⅔⅛⅜⅝⅞])/g, "$1 ")
    .replace(/[′’]/g, "'")
    .replace(/[″“”]/g, '"')
    .replace(/×/g, "x")
    .replace(/[·•]/g, ",")
    .replace(/[–—]/g, "-")
    .normalize("NFKC")
    .replace(/\u2044/g, "/");
}
