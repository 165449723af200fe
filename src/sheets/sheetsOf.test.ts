import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { estimate } from "../estimate/index.js";
import { readSite, type Site } from "../site/index.js";
import { textQuad } from "./box.js";
import { MARGIN, TITLE_HEIGHT } from "./frame.js";
import { PAPERS, type Mark, type Page, type PaperId, type Spot, type TextMark } from "./paper.js";
import { overlap } from "./quads.js";
import { sheetsOf } from "./sheetsOf.js";
import { svgOf } from "./svg.js";

const PAPER_IDS = Object.keys(PAPERS) as PaperId[];
const ROUNDING = 0.01;

function siteOf(example: string): Site {
  const read = readSite(readFileSync(`shared/sites/${example}.site.json`, "utf8"));
  if (!read.ok) throw new Error(read.problems[0]?.text);
  return read.value;
}

/** A site with nothing but three points, one layer and a scheme without works. */
function bareSite(): Site {
  const site = siteOf("quarry-lane");
  const { project, checklist, limits, ...rest } = site;
  expect(project ?? checklist ?? limits).toBeDefined();
  return {
    ...rest,
    survey: { points: site.survey.points.slice(0, 3) },
    ground: { layers: site.ground.layers.slice(-1), probes: [] },
    schemes: [{ id: "none", name: "Nothing yet", works: [] }],
  };
}

/** Drawn once for each site and paper. */
const drawn = new WeakMap<Site, Map<PaperId, Page[]>>();

function pagesOf(site: Site, paper: PaperId): Page[] {
  const kept = drawn.get(site) ?? new Map<PaperId, Page[]>();
  drawn.set(site, kept);
  const pages = kept.get(paper) ?? drawPages(site, paper);
  kept.set(paper, pages);
  return pages;
}

function drawPages(site: Site, paper: PaperId): Page[] {
  const schemeId = site.schemes[0]!.id;
  const job = { site, schemeId, estimate: estimate(site, schemeId), date: "2026-11-27", paper };
  return sheetsOf(job);
}

const textsOf = (marks: readonly Mark[]): TextMark[] =>
  marks.flatMap((mark) =>
    mark.kind === "text" ? [mark] : mark.kind === "group" ? textsOf(mark.marks) : [],
  );

/** 12, 13 and 14 of "12–14", 3 of "3", none of other texts. */
function numbersIn(text: string): number[] {
  const said = /^(\d+)(?:–(\d+))?$/.exec(text);
  if (said === null) return [];
  const [from, to] = [Number(said[1]), Number(said[2] ?? said[1])];
  return Array.from({ length: to - from + 1 }, (_each, i) => from + i);
}

describe.each([
  ["alder-flat", siteOf("alder-flat")],
  ["quarry-lane", siteOf("quarry-lane")],
  ["almost nothing", bareSite()],
])("the sheets of %s", (_name, site) => {
  it.each(PAPER_IDS)("on %s: numbered through, each with an id of its own", (paper) => {
    const pages = pagesOf(site, paper);
    expect(new Set(pages.map(({ id }) => id)).size).toBe(pages.length);
    expect(pages[0]!.id).toBe("cover");
    for (const [i, page] of pages.entries()) {
      expect(page.number).toBe(i + 1);
      const said = textsOf(page.marks).map(({ text }) => text);
      expect(said).toContain(`${i + 1} of ${pages.length}`);
      expect([page.width, page.height]).toEqual([PAPERS[paper].width, PAPERS[paper].height]);
    }
    const listed = textsOf(pages[0]!.marks).flatMap(({ text }) => numbersIn(text));
    for (const { number } of pages) expect(listed).toContain(number);
  });

  it.each(PAPER_IDS)("on %s: every text inside the frame", (paper) => {
    const { width, height } = PAPERS[paper];
    const isOutside = ([x, y]: Spot): boolean =>
      Math.min(x, width - x, y, height - y) < MARGIN - ROUNDING;
    for (const page of pagesOf(site, paper)) {
      const out = textsOf(page.marks).filter((text) => textQuad(text).some(isOutside));
      expect(out.map(({ text, at }) => ({ sheet: page.id, text, at }))).toEqual([]);
    }
  });

  it.each(PAPER_IDS)("on %s: texts of list sheets and title blocks cover no other", (paper) => {
    const foot = PAPERS[paper].height - MARGIN - TITLE_HEIGHT;
    for (const page of pagesOf(site, paper)) {
      const isList = /^(cover|permit|findings|flow|quantities|machines|cost)/.test(page.id);
      const texts = textsOf(page.marks).filter(({ at }) => isList || at[1] > foot);
      const quads = texts.map((text) => textQuad({ ...text, size: 0.9 * text.size }));
      const covered = quads.flatMap((quad, i) =>
        quads
          .slice(i + 1)
          .flatMap((other, j) =>
            overlap(quad, other) ? [[page.id, texts[i]!.text, texts[i + 1 + j]!.text]] : [],
          ),
      );
      expect(covered).toEqual([]);
    }
  });
});

describe("a sheet as SVG", () => {
  const [page] = pagesOf(siteOf("alder-flat"), "letter");
  const svg = page === undefined ? "" : svgOf(page);

  it("is as large as the paper, with named layers and real texts", () => {
    expect(svg).toContain('width="279.4mm" height="215.9mm" viewBox="0 0 279.4 215.9"');
    expect(svg).toContain('data-layer="Title block" aria-label="Title block"');
    expect(svg).toMatch(/<text [^>]*>Alder Flat<\/text>/);
  });

  it("has every id once", () => {
    const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map((match) => match[1]);
    expect(ids.length).toBeGreaterThan(2);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
