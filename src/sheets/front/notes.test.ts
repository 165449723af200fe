import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { estimate, unpricedOf } from "../../estimate/index.js";
import { readSite, type Site } from "../../site/index.js";
import { earthVolume } from "../../units/index.js";
import type { Mark } from "../paper.js";
import { sheetsOf } from "../sheetsOf.js";

const textsOf = (marks: readonly Mark[]): string[] =>
  marks.flatMap((mark) =>
    mark.kind === "text" ? [mark.text] : mark.kind === "group" ? textsOf(mark.marks) : [],
  );

const example = (name: string): Site => {
  const read = readSite(readFileSync(`shared/sites/${name}.site.json`, "utf8"));
  if (!read.ok) throw new Error(`${name}: got problems, expected a site`);
  return read.value;
};

/** All words of the sheets whose id begins so, lines put together. */
const printed = (site: Site, begin: string): string => {
  const schemeId = site.schemes[0]!.id;
  return sheetsOf({
    ...{ site, schemeId, estimate: estimate(site, schemeId) },
    ...{ date: "2026-11-27", paper: "letter" },
  })
    .filter(({ id }) => id.startsWith(begin))
    .flatMap(({ marks }) => textsOf(marks))
    .join(" ")
    .replace(/\s+/g, " ");
};

it("says on the cover what the cost rests on, and all that is dug beside what is left over", () => {
  const alder = example("alder-flat");
  const found = estimate(alder, alder.schemes[0]!.id);
  const cover = printed(alder, "cover");
  const { lines } = found.cost;
  const demo = lines.filter(({ own }) => !own).length;
  expect(demo).toBeGreaterThan(0);
  expect(cover).toContain(`${demo} of ${lines.length} lines are demo prices`);
  expect(cover).toContain(`${unpricedOf(alder, found).length} ordered things have no price`);
  expect(cover).not.toContain("not converted");
  expect(cover).toContain(`Dug in all, loose ${earthVolume.print(found.earth.loose, "us")}`);
  expect(printed(example("quarry-lane"), "cover")).toContain("not converted to EUR");
});

it("says to which line of water its distances are measured, only where there are some", () => {
  const alder = example("alder-flat");
  const dry = {
    ...alder,
    limits: (alder.limits ?? []).filter(({ kind }) => !/watercourse|ditch/.test(kind)),
  };
  for (const sheet of ["permit", "layout"]) {
    expect(printed(alder, sheet)).toContain("may measure from the bank");
    expect(printed(dry, sheet)).not.toContain("may measure from the bank");
  }
});

it("tells an answer that there is none from an item that nothing of the scheme asks for", () => {
  const permit = printed(example("alder-flat"), "permit");
  expect(permit).toMatch(/none, or not asked The deed names none/);
  expect(printed(example("quarry-lane"), "permit")).toMatch(/not asked nothing is pumped/);
});
