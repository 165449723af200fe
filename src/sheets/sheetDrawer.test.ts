import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { estimate } from "../estimate/index.js";
import { printSheet, readSite, type Site } from "../site/index.js";
import type { Mark, Page, PaperId, SheetJob } from "./paper.js";
import { sheetDrawer, sheetSet, type SheetSet } from "./sheetsOf.js";

const read = readSite(readFileSync("shared/sites/quarry-lane.site.json", "utf8"));
if (!read.ok) throw new Error("expected Quarry Lane to be read");
const site = read.value;
const schemeId = site.schemes[0]!.id;
const estimated = estimate(site, schemeId);
const jobOf = (sheets: Site["sheets"]): SheetJob => ({
  site: { ...site, ...(sheets && { sheets }) },
  ...{ schemeId, estimate: estimated, date: "2026-11-27", paper: "a4" },
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

const OTHERS: PaperId[] = ["letter", "tabloid"];
const LEFT = ["sections-2", "details", "profiles"];

it.each(OTHERS)(
  "leaves out on %s what was left out on another paper, and nothing else",
  (paper) => {
    const draw = sheetDrawer({ ...jobOf(undefined), paper });
    const whole = draw(undefined).all.flatMap((one) => one.of);
    for (const { id, of } of sheetSet(jobOf(undefined)).all.filter((one) =>
      LEFT.includes(one.id),
    )) {
      expect(of.length).toBeGreaterThan(0);
      const { all } = draw(printSheet(site, { id, of }, false).sheets);
      const shown = (printed: boolean): string[] =>
        all.filter(({ page }) => (page !== null) === printed).flatMap((one) => one.of);
      expect(shown(false).toSorted()).toEqual(of.toSorted());
      expect(new Set([...shown(true), ...of])).toEqual(new Set(whole));
    }
  },
);

it("counts sheets as before when one is left out on the same paper", () => {
  const draw = sheetDrawer(jobOf(undefined));
  const whole = draw(undefined);
  for (const { id, of } of whole.all.filter((one) => LEFT.includes(one.id))) {
    const { all } = draw(printSheet(site, { id, of }, false).sheets);
    expect(all.map((one) => one.id)).toEqual(whole.all.map((one) => one.id));
  }
});

it("reads the ids of older files", () => {
  const { pages } = sheetSet(jobOf({ without: ["sections-2", "cost"] }));
  expect(pages.some(({ id }) => id === "sections-2" || id === "cost")).toBe(false);
  expect(pages.some(({ id }) => id === "sections")).toBe(true);
});
