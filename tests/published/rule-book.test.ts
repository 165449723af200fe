/**
 * Every number of the rule book, on both sides, through the whole estimate of a small site: silent
 * just within, said just beyond, and the same about a local number in its place. The numbers are
 * written out in the words of their sources, which each case names as the catalogue does.
 */
import { describe, expect, it } from "vitest";
import { publishedRule, rulesOf } from "../../src/site/index.js";
import type { RuleCase, Threshold } from "./ruleBook/case.js";
import { HOLE_RULES } from "./ruleBook/holes.js";
import { LAND_RULES } from "./ruleBook/land.js";
import { LINE_RULES } from "./ruleBook/lines.js";
import type { Rules } from "../fixtures/job.js";

const CASES: readonly RuleCase[] = [...HOLE_RULES, ...LAND_RULES, ...LINE_RULES];

const COUNTY = "invented county code, § 1";
const localOf = ({ id, local }: RuleCase): Rules => [{ id, value: local, source: COUNTY }];

/** What is said just within a number and just beyond it. */
function sides({ asks, speaks, step }: Threshold, number: number, rules: Rules) {
  const out = speaks === "above" ? step : -step;
  return { within: asks(number - out, rules), beyond: asks(number + out, rules) };
}

it("has a case for each rule of the catalogue, once, and for no other", () => {
  const ids = CASES.map(({ id }) => id);
  expect([...ids].sort()).toEqual(
    rulesOf({})
      .map(({ id }) => id)
      .sort(),
  );
});

describe.each(CASES)("$id ($source)", (rule) => {
  const { value, source } = publishedRule(rule.id);

  it("is the published number, and cites it", () => {
    expect(value).toBeCloseTo(rule.value, 9);
    expect(source).toContain(rule.source);
  });

  if ("sets" in rule) {
    const { sets, digits = 9 } = rule;
    it("sets the figure, and so does a local number", () => {
      expect(sets([])).toBeCloseTo(rule.value, digits);
      expect(sets(localOf(rule))).toBeCloseTo(rule.local, digits);
    });
    return;
  }

  it("is silent just within and speaks just beyond, with its source", () => {
    const { within, beyond } = sides(rule, value, []);
    expect(within).toBeNull();
    expect(beyond?.text).toMatch(/\S/);
    if (beyond?.source !== undefined) expect(beyond.source).toContain(source);
  });

  it("follows a local number, and says whose it is", () => {
    const rules = localOf(rule);
    const { within, beyond } = sides(rule, rule.local, rules);
    expect(within).toBeNull();
    expect(beyond?.text).toMatch(/\S/);
    if (beyond?.source !== undefined) {
      expect(beyond.source).toContain(`local number (${COUNTY})`);
    }
  });
});
