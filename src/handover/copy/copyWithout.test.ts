import { inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { estimate, fiveFigures } from "../../estimate/index.js";
import { readSite } from "../../site/index.js";
import type { Site } from "../../site/index.js";
import { MADE_AT, exampleJob, withScheme } from "../job.fixture.js";
import type { HandoverJob } from "../job.js";
import { linkOf } from "../link/linkOf.js";
import { pageOf } from "../page/pageOf.js";
import { templateOf } from "../page/template.js";
import { copyWithout } from "./copyWithout.js";
import { moneyIn, namesIn } from "./told.js";

/** Alder Flat with all that could tell of money or of a person. */
function tellingAll(site: Site): Site {
  const priced = withScheme(site, {
    prices: [{ id: "hauling", price: 7391, source: "quote of Brandt Hauling, $7,391 a load" }],
    costs: {
      tax: 0.0773,
      lines: [{ id: "own-1", name: "Fence", per: "m", count: 12, price: 8642 }],
    },
    machines: {
      ...site.schemes[0]!.machines,
      diggers: [
        {
          ...{ id: "brandts", like: "mini-5t", name: "Brandt's digger, $311/day" },
          rates: { day: { low: 310.5, likely: 311.5, high: 312.5 } },
          source: "Brandt Hauling",
        },
      ],
    },
  });
  return {
    ...priced,
    name: "Alder Flat (Quill)",
    notes: "Ida Quill asks 4 500 USD for the gate. Call Mx. QUILL first; pipe 4 in, 25 ft.",
    place: { longitude: -121.53217, latitude: 44.25813 },
    project: {
      ...site.project,
      ...{ owner: "Ida Quill, Ltd", preparer: "T. Ostrov, level", parcel: "77-31-9" },
      place: "4 Mill Ford Road, Alder Flat",
    },
    locate: { ...site.locate, ticket: "T-99-1234" },
    accepted: (site.accepted ?? []).map((taken) => ({
      ...taken,
      by: "T. Ostrov",
      reason: "Ostrov drains it; saves €85.",
    })),
    // A field that no version of the file knows.
    ...({ phone: "555 0199 Quill" } as object),
  };
}

const job: HandoverJob = exampleJob("alder-flat", (site) => site);
const whole = tellingAll(job.site);
const wholeJob = { ...job, site: whole, estimate: estimate(whole, "pumped") };
const template = templateOf({ script: "run();", styles: "p{}", hash: () => "abc=" });
const pageText = (without: readonly ("costs" | "names")[]): string =>
  String(pageOf(template, wholeJob, without).data);
const linkText = (site: Site): string =>
  inflateSync(
    Buffer.from(linkOf(site, "https://a.example/").address.split("#site=")[1]!, "base64url"),
  ).toString("utf8");

const NAMES = /quill|\bida\b|ostrov|77-31-9|mill ford|T-99-1234|121\.532|44\.258|555 0199/i;
/** Amounts of the person's own, each written in the site once at least, and every sign of money. */
const OWN_MONEY = /7,?391|8,?642|0\.0773|31[0-2]\.5|\$311|4 500|€85|brandt hauling/i;
const MONEY_SIGN = /\p{Sc}\s?\d|\d\s?(?:USD|EUR)\b/u;
const COST_FIELDS = /"(?:price|prices|costs|rates|tax|low|high)":/;

describe("a copy for somebody else", () => {
  it("is told by this test to hold all of it where nothing is left out", () => {
    const page = pageText([]);
    for (const told of [NAMES, OWN_MONEY, MONEY_SIGN, COST_FIELDS]) expect(page).toMatch(told);
    expect(page).toContain("<b>Cost</b>");
    expect(copyWithout(whole, [])).toEqual(whole);
  });

  it("has no money and no name anywhere in the page's bytes, nor in the link's", () => {
    const copy = copyWithout(whole, ["costs", "names"]);
    for (const text of [pageText(["costs", "names"]), linkText(copy), JSON.stringify(copy)]) {
      for (const told of [NAMES, OWN_MONEY, MONEY_SIGN, COST_FIELDS])
        expect(text).not.toMatch(told);
    }
    const page = pageText(["costs", "names"]);
    expect(page).not.toContain("<b>Cost</b>");
    expect(page).not.toMatch(/demo prices[^.]*before you rely/);
    expect(page).toContain("Made without costs");
    expect(page).toContain("Made without names");
    // No sum of the estimate, by its whole figures, stands anywhere.
    const { low, likely, high } = fiveFigures(estimate(whole, "pumped"), whole).cost;
    for (const sum of [low, likely, high]) {
      expect(page).not.toContain(Math.round(sum).toLocaleString("en-US"));
      expect(page).not.toContain(String(Math.round(sum)));
    }
  });

  it("leaves out only what is asked", () => {
    const noCosts = pageText(["costs"]);
    for (const told of [OWN_MONEY, MONEY_SIGN, COST_FIELDS]) expect(noCosts).not.toMatch(told);
    expect(noCosts).toContain("Ida Quill, Ltd");
    const noNames = pageText(["names"]);
    expect(noNames).not.toMatch(NAMES);
    expect(noNames).toMatch(OWN_MONEY);
  });

  it("can be read again, says what it lacks, and has the same ground, figures and days", () => {
    const copy = copyWithout(whole, ["costs", "names"]);
    const read = readSite(JSON.stringify(copy));
    expect(read.ok && read.value.leftOut).toEqual(["costs", "names"]);
    expect(copy.survey).toEqual(whole.survey);
    expect(copy.schemes.map(({ works }) => works)).toEqual(whole.schemes.map(({ works }) => works));
    for (const { id } of whole.schemes) {
      const { cost: before, ...five } = fiveFigures(estimate(whole, id), whole);
      const { cost: after, ...same } = fiveFigures(estimate(copy, id), copy);
      expect({ ...same, digger: same.digger.id }).toEqual({ ...five, digger: five.digger.id });
      if (id === "pumped") expect(after.likely).not.toBe(before.likely);
    }
  });

  it("keeps the digger that the prices chose", () => {
    const dear = withScheme(job.site, {
      prices: [{ id: "mini-5t:day", price: 90_000 }],
    });
    const chosen = estimate(dear, "pumped").machines.digger.id;
    const copy = copyWithout(dear, ["costs"]);
    expect(copy.schemes[0]?.machines?.digger).toBe(chosen);
    expect(copy.schemes[1]?.machines?.digger).toBeUndefined();
  });

  it("is called after what it lacks", () => {
    const name = (without: readonly ("costs" | "names")[]): string =>
      pageOf(template, { ...job, madeAt: MADE_AT }, without).name;
    expect(name([])).toBe("alder-flat-pumped-page.html");
    expect(name(["costs", "names"])).toBe("alder-flat-pumped-page-no-costs-no-names.html");
  });
});

describe("what tells of money", () => {
  it.each(["$5", "$ 1,250.50", "€1.250,50", "900 USD", "EUR 12", "40 dollars", "£3k", "12 cents"])(
    "finds %s",
    (amount) => {
      expect(`for ${amount} more`.replace(moneyIn("USD"), "…")).toBe("for … more");
    },
  );

  it.each([
    "25 ft of 4 in pipe",
    "1 in = 20 ft",
    "SDR 35, 110 mm",
    "29 CFR 1926.651(j)(2)",
    "3 m³",
  ])("leaves %s", (text) => {
    expect(text.replace(moneyIn("USD"), "…")).toBe(text);
  });
});

it("looks for a name whole and for its capitalised words, never inside another word", () => {
  const site = { ...job.site, accepted: [], project: { owner: "Jo van Eyre (owner)" } };
  const clean = (text: string): string =>
    namesIn(site).reduce((left, found) => left.replace(found, "…"), text);
  expect(clean("Jo van Eyre's gate")).toBe("…'s gate");
  expect(clean("Ask Eyre; the van waits; Eyrewell")).toBe("Ask …; the van waits; Eyrewell");
});
