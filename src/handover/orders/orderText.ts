import { deliveryCautions, schemeOf } from "../../estimate/index.js";
import type { HandoverJob } from "../job.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { OrderItem, SupplierKind } from "./item.js";
import { shortNumber } from "./item.js";
import { dayWords, wantedDays } from "./wanted.js";

/** Whom a message goes to. */
export type MessageTo = keyof typeof words.orders.messages;

/** Which lists each message holds. */
const HOLDS: Readonly<Record<MessageTo, readonly SupplierKind[]>> = {
  yard: ["earth"],
  pipes: ["pipe", "fabric"],
  tank: ["tank"],
  pump: ["pump"],
  electrician: ["electrical"],
};

const ALL = Object.keys(HOLDS) as readonly MessageTo[];

/** Whom something is ordered from. */
export const messagesFor = (items: readonly OrderItem[]): readonly MessageTo[] =>
  ALL.filter((to) => items.some(({ kind }) => HOLDS[to].includes(kind)));

/**
 * One supplier's list as a short message, in letters that any phone's message holds, without prices:
 * who, where, what, when, what is asked, and what a driver has to know. Empty where nothing is ordered
 * there.
 */
export function orderText(job: HandoverJob, items: readonly OrderItem[], to: MessageTo): string {
  const said = words.orders;
  const wanted = items.filter(({ kind }) => HOLDS[to].includes(kind));
  if (wanted.length === 0) return "";
  const { owner, contact, telephone, place } = job.site.project ?? {};
  // Whoever drew the plan need not be the one who orders.
  const who = contact ?? owner;
  const unpriced = wanted.filter(({ line }) => line === null).map(({ name }) => name);
  const days = wanted.flatMap((item) => wantedDays(job.estimate, item));
  return plainLetters(
    [
      said.messageHead(job.site.name, schemeOf(job.site, job.schemeId).name),
      ...(who === undefined ? [] : [said.messageFrom(who)]),
      ...(telephone === undefined ? [] : [said.messageTelephone(telephone)]),
      ...(place === undefined ? [] : [said.messagePlace(place)]),
      ...wanted.map((item) => itemText(job, item)),
      ...(days.length === 0 ? [] : [days[0]?.date === undefined ? said.daysCount : said.daysDated]),
      ...(wanted.some(({ grade }) => grade !== undefined) ? [said.gradeAsk] : []),
      said.messageAsk,
      ...(wanted.some(({ must }) => must !== undefined) ? [said.mustAsk] : []),
      ...(unpriced.length === 0 ? [] : [said.notPriced(unpriced.join(", "))]),
      said.driverHead,
      ...driverLines(job),
      said.restInPlan,
      said.messageEnd(job.madeAt.slice(0, 10)),
    ].join("\n"),
  );
}

/** The way in and the lines over it as far as the site says them, and the cautions of a delivery. */
function driverLines({ site, schemeId }: HandoverJob): string[] {
  const said = words.orders;
  const { width, slope } = schemeOf(site, schemeId).machines?.access ?? {};
  const way = [
    ...(width === undefined ? [] : [said.wayWide(length.print(width, site.units))]),
    ...(slope === undefined ? [] : [said.waySteep(`${shortNumber(100 * slope)}%`)]),
  ];
  const wires = (site.limits ?? [])
    .filter(({ kind }) => kind === "overhead-line")
    .map(({ name, id }) => name ?? id);
  return [
    ...(way.length === 0 ? [] : [said.wayIn(way.join(", "))]),
    ...(wires.length === 0 ? [] : [said.wiresOver(wires.join(", "))]),
    ...deliveryCautions(),
  ].map((text) => `- ${text}`);
}

/** Every supplier's message under a heading. Empty where nothing is ordered. */
export function allOrderTexts(job: HandoverJob, items: readonly OrderItem[]): string {
  return messagesFor(items)
    .map((to) => `${words.orders.messages[to].toUpperCase()}\n${orderText(job, items, to)}`)
    .join("\n\n");
}

function itemText({ estimate }: HandoverJob, item: OrderItem): string {
  const said = words.orders;
  const exact = item.exact === "" ? [] : [said.exactIs(item.exact)];
  const haul = item.haul === undefined ? [] : [item.haul];
  const where = item.where.length === 0 ? [] : [said.forWorks(item.where.join(", "))];
  const grade = item.grade === undefined ? [] : [said.gradeIs(item.grade)];
  const days = dayWords(wantedDays(estimate, item), said.countedDay);
  const when =
    days === "" ? [] : [item.beforeDigging ? said.wantedBefore(days) : said.wantedOn(days)];
  const rest = [...grade, ...when, ...exact, ...haul, ...where].join("; ");
  const count = shortNumber(item.count);
  const single = item.unit === said.each || item.unit === said.lump;
  const first = `- ${single ? `${count} x` : `${count} ${item.unit}:`} ${item.name}`;
  const must = (item.must ?? []).map((text) => `  - ${text}`);
  return [rest === "" ? first : `${first} (${rest})`, ...must].join("\n");
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
