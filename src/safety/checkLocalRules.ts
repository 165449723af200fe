/** Local numbers of a site that ask less than the federal rule in whose place they stand. */
import { asksLessThanFederal, publishedRule, rulesOf } from "../site/index.js";
import type { Finding, Rule, Site } from "../site/index.js";
import { area, length, wallSlope, type UnitSystem } from "../units/index.js";

/**
 * One finding for each such number, since a check then keeps silent where the federal rule speaks.
 * Texts in the site's own units.
 */
export function checkLocalRules(site: Pick<Site, "rules" | "units">): Finding[] {
  return rulesOf(site)
    .filter(asksLessThanFederal)
    .map((rule): Finding => {
      const published = publishedRule(rule.id);
      const number = printed(rule, site.units);
      return {
        level: "caution",
        code: "rule.asks-less",
        where: `rule-${rule.id}`,
        text: `The local number ${number} for “${rule.title}” asks less than the federal rule, ${published.says}. In the US a state or county may ask for more than a federal rule, not for less. Check where the local number is written, or go back to the published one; local codes and licensed practice decide.`,
        source: `${published.source}; states no less strict than federal rules: Occupational Safety and Health Act, section 18(c)(2) (29 U.S.C. 667), recalled from memory, and the like for stormwater`,
      };
    });
}

/** A rule's number with its unit. */
function printed({ value, unit }: Rule, units: UnitSystem): string {
  if (unit === "m²") return area.print(value, units);
  return unit === "m" ? length.print(value, units) : wallSlope.print(value, units);
}
