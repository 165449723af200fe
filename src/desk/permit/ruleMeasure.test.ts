import { describe, expect, it } from "vitest";
import { publishedRule, rulesOf } from "../../site/index.js";
import { words } from "../../words/index.js";
import { ruleMeasure } from "./ruleMeasure.js";

const printed = (id: string, system: "us" | "metric"): string => {
  const rule = publishedRule(id);
  return ruleMeasure(rule).print(rule.value, system);
};

describe("a rule's number on the page", () => {
  it("is printed in the site's units, as the rule's own words have it", () => {
    expect(printed("protect-from", "us")).toBe("5′ 0″");
    expect(printed("protect-from", "metric")).toBe("1.52 m");
    expect(printed("untyped-run", "us")).toBe("1½ : 1");
    expect(printed("crane-back", "us")).toBe("1.5");
    expect(printed("ditch-fall", "metric")).toBe("1.0%");
  });

  it.each(rulesOf({}))("$id is read again as it was printed", ({ id, value }) => {
    for (const system of ["us", "metric"] as const) {
      const read = ruleMeasure(publishedRule(id)).parse(printed(id, system), system);
      expect(read.ok && Math.abs(read.value - value) <= 0.005 * Math.max(1, value)).toBe(true);
    }
  });

  it("stands in a group that the page has a name for", () => {
    const groups = rulesOf({}).map(({ group }) => group);
    expect(Object.keys(words.permit.rules.groups)).toEqual(expect.arrayContaining(groups));
  });
});
