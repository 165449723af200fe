import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { estimate } from "../estimate/index.js";
import { readSite, type Site } from "../site/index.js";
import type { Mark, Page, SheetJob } from "./paper.js";
import { sheetDrawer, sheetSet, type SheetSet } from "./sheetsOf.js";

const read = readSite(readFileSync("shared/sites/quarry-lane.site.json", "utf8"));
if (!read.ok) throw new Error("expected Quarry Lane to be read");
const site = read.value;
const schemeId = site.schemes[0]!.id;
const jobOf = (sheets: Site["sheets"]): SheetJob => ({
  site: { ...site, ...(sheets && { sheets }) },
  ...{ schemeId, estimate: estimate(site, schemeId), date: "2026-11-27", paper: "a4" },
});

const pageOf = ({ pages }: SheetSet, id: string): Page => {
  const page = pages.find((one) => one.id === id);
  if (page === undefined) throw new Error(`no sheet ${id}`);
  return page;
};

/** Every mark of a page, those in groups too. */
const marksIn = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark) => (mark.kind === "group" ? [mark, ...marksIn(mark.marks)] : [mark]));

/** Marks that two pages have as the very same objects: what was not drawn anew. */
function shared(a: Page, b: Page): number {
  const of = new Set(marksIn(a.marks));
  return marksIn(b.marks).filter((mark) => of.has(mark)).length;
}

it("draws anew only what a choice changes, and the same as from the beginning", () => {
  const draw = sheetDrawer(jobOf(undefined));
  const window = { middle: [10, 10] as [number, number], scale: 250 };
  const choices: Site["sheets"][] = [
    { without: ["cost"], windows: { "layout-plan": window } },
    undefined,
  ];
  for (const chosen of choices) expect(draw(chosen)).toEqual(sheetSet(jobOf(chosen)));

  const whole = draw(undefined);
  const less = draw({ without: ["cost"] });
  expect(less.pages).toHaveLength(whole.pages.length - 1);
  const plain = marksIn(pageOf(whole, "layout-plan").marks).length;
  expect(shared(pageOf(whole, "layout-plan"), pageOf(less, "layout-plan"))).toBeGreaterThan(
    plain / 2,
  );
  const moved = draw({ windows: { "layout-plan": window } });
  const existing = marksIn(pageOf(whole, "existing-ground").marks).length;
  expect(
    shared(pageOf(whole, "existing-ground"), pageOf(moved, "existing-ground")),
  ).toBeGreaterThan(existing / 2);
  expect(shared(pageOf(whole, "layout-plan"), pageOf(moved, "layout-plan"))).toBeLessThan(
    plain / 4,
  );
});
