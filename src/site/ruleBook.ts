/** Numbers at which published rules begin, and the local ones that a site puts in their place. */
import book from "../../shared/catalogue/safety-rules.json" with { type: "json" };
import type { Site } from "./schema.js";

/** A number at which a rule begins. */
export interface Rule {
  id: string;
  group: string;
  /** What the number is of, in a few words. */
  title: string;
  /** SI unit of `value`, or what it counts. */
  unit: string;
  value: number;
  /** The figure in the rule's own words. */
  says: string;
  source: string;
  /** Of a federal rule of the US: the side of its number on which a local one is the stricter. */
  federalFloor?: "lower" | "higher";
  /** True when the site's own number stands here. */
  local: boolean;
}

/** What of a site says which numbers hold there. */
export type Locality = Pick<Site, "rules">;

const published: ReadonlyMap<string, Rule> = new Map(
  book.rules.map(({ id, group, title, unit, value, says, source, ...more }) => [
    id,
    {
      ...{ id, group, title, unit, value, says, source, local: false },
      ...("federalFloor" in more && { federalFloor: sideOf(more.federalFloor) }),
    },
  ]),
);

function sideOf(word: string): "lower" | "higher" {
  if (word === "lower" || word === "higher") return word;
  throw new Error(`rule book: got federalFloor "${word}", expected lower or higher`);
}

/** Every rule as it holds on a site, in the catalogue's order. */
export function rulesOf(site: Locality): Rule[] {
  return [...published.keys()].map((id) => ruleOf(site, id));
}

/** One rule as it holds on a site. Throws when the catalogue has no such rule. */
export function ruleOf(site: Locality, id: string): Rule {
  const rule = published.get(id);
  if (rule === undefined) throw new Error(`rule book: got no "${id}", expected it`);
  const local = site.rules?.find((one) => one.id === id);
  if (local === undefined) return rule;
  const written = local.source ?? "entered for this site";
  return {
    ...rule,
    value: local.value,
    source: `local number (${written}) in place of ${rule.says}, ${rule.source}`,
    local: true,
  };
}

/** Part of a number: a local one that is nearer to the published one than this is the same. */
const SAME = 1e-6;

/** Whether a local number asks less than the federal rule in whose place it stands. */
export function asksLessThanFederal({ id, value, local, federalFloor }: Rule): boolean {
  if (!local || federalFloor === undefined) return false;
  const published = publishedRule(id).value;
  const more = federalFloor === "higher" ? value - published : published - value;
  return more < -SAME * published;
}

/** The rule as it was published, whatever the site says. Throws when there is no such rule. */
export function publishedRule(id: string): Rule {
  return ruleOf({}, id);
}
