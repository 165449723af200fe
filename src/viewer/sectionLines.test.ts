import { expect, it } from "vitest";
import { sectionAlong } from "../estimate/index.js";
import { plainPad, plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import { sectionLines } from "./sectionLines.js";

const site = plainSite({ works: [plainPad(), plainTank(), plainTrench()], layers: [0.3, 1] });
const scheme = site.schemes[0]!;
const lines = sectionLines(site, scheme);

it("cuts every hole along and across, every leg of a trench, and the lot", () => {
  const legs = scheme.works.flatMap((work) => (work.kind === "trench" ? work.path.slice(1) : []));
  expect(legs.length).toBeGreaterThan(0);
  expect(lines).toHaveLength(2 + 2 + legs.length + 1);
  expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
});

it("goes through the work that it is named after, with ground as found at both ends", () => {
  for (const { id, line } of lines) {
    const [work, way] = id.split(" ");
    if (way !== "along" && way !== "across") continue;
    const section = sectionAlong(site, scheme.id, "dug", line);
    const dug = section.surface.flat();
    const found = section.found.flat();
    expect(dug[0], work).toEqual(found[0]);
    expect(dug.at(-1), work).toEqual(found.at(-1));
    const lowest = Math.min(...dug.map(([, z]) => z));
    expect(lowest, work).toBeLessThan(Math.min(...found.map(([, z]) => z)));
  }
});

it("still has the lot where there is no work", () => {
  const bare = plainSite({});
  expect(sectionLines(bare, bare.schemes[0]!).map(({ id }) => id)).toEqual(["lot"]);
});
