import { describe, expect, it } from "vitest";
import { estimate } from "../../estimate/index.js";
import { setPlanWindow, type Site } from "../../site/index.js";
import { plainSite, plainTank } from "../../site/site.fixture.js";
import { words } from "../../words/index.js";
import type { Mark, Page } from "../paper.js";
import { sheetsOf } from "../sheetsOf.js";

const textsOf = (marks: readonly Mark[]): string[] =>
  marks.flatMap((mark) =>
    mark.kind === "text" ? [mark.text] : mark.kind === "group" ? textsOf(mark.marks) : [],
  );

function pagesOf(site: Site): Page[] {
  const schemeId = site.schemes[0]!.id;
  const job = { site, schemeId, estimate: estimate(site, schemeId), date: "2026-11-27" };
  return sheetsOf({ ...job, paper: "letter" });
}

const said = (pages: readonly Page[], id: string): string =>
  textsOf(pages.find((page) => page.id === id)?.marks ?? []).join(" ");

describe("a plan whose window leaves something off the paper", () => {
  const site = plainSite({ works: [plainTank()] });
  const layout = pagesOf(site).find(({ window, id }) => window !== null && id.startsWith("layout"));
  const id = layout?.id ?? "";

  it("says so, and the office's list marks its number", () => {
    const moved = pagesOf(setPlanWindow(site, id, { middle: [500, 500], scale: 240 }));
    expect(said(moved, id)).toContain(words.sheetsPlan.cutOff);
    const number = moved.find((page) => page.id === id)?.number ?? NaN;
    expect(said(moved, "permit")).toContain(words.sheetsFront.partOf(number));
  });

  it("says nothing while all is in sight", () => {
    expect(said(pagesOf(site), id)).not.toContain(words.sheetsPlan.cutOff);
    expect(said(pagesOf(site), "permit")).not.toContain("*");
  });
});
