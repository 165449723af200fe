import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { estimate } from "../estimate/index.js";
import { acceptFinding, answerChecklist, readSite, withdrawAcceptance } from "../site/index.js";
import type { Site } from "../site/index.js";
import { reportText } from "./report.js";

function alderFlat(): Site {
  const read = readSite(readFileSync("shared/sites/alder-flat.site.json", "utf8"));
  if (!read.ok) throw new Error("Alder Flat: got problems, expected a site");
  return read.value;
}

const report = (site: Site): string => reportText(site, estimate(site, "pumped"), null);

describe("the report's lines for the permit", () => {
  const site = alderFlat();
  const text = report(site);

  it("shows the example's list complete, and what is missing once an answer is taken back", () => {
    expect(text).toMatch(/WHAT AN OFFICE ASKS FOR: (\d+) of \1 there/);
    expect(text).not.toContain("MISSING");
    expect(text).toMatch(/Easements +not asked: The deed names none/);
    const without = report(answerChecklist(site, "easements", null));
    expect(without).toMatch(/Easements +MISSING: draw them/);
  });

  it("parts what is taken on from the open findings, with who and why", () => {
    const taken =
      /TAKEN ON, with a reason: 1\nCAUTION tank-1: Lift line[^]*Taken on \(R\. Vale, 2026-05-16\): The drain valve/;
    expect(text).toMatch(taken);
    expect(text).toContain("FINDINGS, besides 1 taken on");
    const [finding] = estimate(site, "pumped").findings.filter(({ code }) => code === "main.sags");
    if (finding === undefined) throw new Error("got no main.sags, expected it in the example");
    const open = report(withdrawAcceptance(site, "pumped", finding));
    expect(open).not.toContain("TAKEN ON");
    const plain = report(acceptFinding(site, "pumped", finding, { reason: "as agreed" }));
    expect(plain).toContain("Taken on: as agreed");
    expect(plain).not.toContain("figures have changed");
    // Taken on for other figures than the finding has now.
    const then = { ...finding, text: finding.text.replace("7.0 ft", "9.0 ft") };
    const changed = report(acceptFinding(site, "pumped", then, { reason: "as agreed" }));
    expect(changed).toMatch(/figures have changed since\. It said then: Lift line[^]*9\.0 ft/);
  });

  it("lists every setback with what is wanted, and tells one that is too near", () => {
    expect(text).toContain("  Tank 1, tank, to Well                     116.4 ft (wanted 50.0 ft");
    expect(text).not.toContain("TOO NEAR");
    const limits = (site.limits ?? []).map((one) =>
      one.id === "well" ? { ...one, setback: 40 } : one,
    );
    expect(report({ ...site, limits })).toMatch(/Tank 1, tank, to Well .*TOO NEAR/);
  });

  it("tells the water that comes to each work", () => {
    expect(text).toMatch(
      /WATER ON THE GROUND[^]* {2}Tank 1 +from [\d,]+ ft² of slope; a ditch uphill/,
    );
  });

  it("keeps its lines short", () => {
    const own = text.slice(text.indexOf("SETBACKS"), text.indexOf("FINDINGS"));
    const longest = Math.max(...own.split("\n").map((line) => line.length));
    expect(longest).toBeLessThanOrEqual(106);
  });
});
