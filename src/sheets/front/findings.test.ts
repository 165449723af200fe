import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { estimate } from "../../estimate/index.js";
import { acceptFinding, readSite, type Site } from "../../site/index.js";
import { sheetsOf } from "../sheetsOf.js";
import type { Mark } from "../paper.js";

const textsOf = (marks: readonly Mark[]): string[] =>
  marks.flatMap((mark) =>
    mark.kind === "text" ? [mark.text] : mark.kind === "group" ? textsOf(mark.marks) : [],
  );

it("prints what a finding said when it was taken on, where its figures have changed since", () => {
  const read = readSite(readFileSync("shared/sites/alder-flat.site.json", "utf8"));
  if (!read.ok) throw new Error("Alder Flat: got problems, expected a site");
  const finding = estimate(read.value, "pumped").findings.find(({ code }) => code === "main.sags");
  if (finding === undefined) throw new Error("got no main.sags, expected it in the example");
  const printed = (site: Site): string =>
    sheetsOf({
      ...{ site, schemeId: "pumped", estimate: estimate(site, "pumped") },
      ...{ date: "2026-11-27", paper: "letter" },
    })
      .filter(({ id }) => id.startsWith("findings"))
      .flatMap(({ marks }) => textsOf(marks))
      .join(" ");
  const given = { reason: "as agreed" };
  const then = { ...finding, text: finding.text.replace("7.0 ft", "9.0 ft") };
  expect(printed(acceptFinding(read.value, "pumped", finding, given))).not.toContain(
    "have changed",
  );
  expect(printed(acceptFinding(read.value, "pumped", then, given))).toMatch(
    /have\s+changed\s+since/,
  );
});
