/**
 * The printed sheets, read back with poppler (general-purpose PDF tools): papers, fonts, words,
 * bookmarks, and lengths measured on the page.
 *
 * Paper sizes: ISO 216:2007 for A4 and A3; ANSI/ASME Y14.1 (sizes A and B: 8.5 × 11 in and
 * 11 × 17 in) for Letter and Tabloid, both recalled.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { fontsOnDisk } from "../../src/cli/sheetFonts.js";
import { estimate, fiveFigures } from "../../src/estimate/index.js";
import {
  pdfOf,
  sheetsOf,
  type FontBytes,
  type Page,
  type PaperId,
} from "../../src/sheets/index.js";
import { readSite, type Site } from "../../src/site/index.js";
import { earthVolume, FOOT, money } from "../../src/units/index.js";
import {
  bookmarks,
  fontsOf,
  MM_PER_POINT,
  pageSizes,
  pageText,
  particulars,
  raster,
  strokesOn,
  wordsOn,
} from "./poppler.js";

const SIZES: Readonly<Record<PaperId, readonly [number, number]>> = {
  letter: [11 * 72, 8.5 * 72],
  tabloid: [17 * 72, 11 * 72],
  a4: [297 / MM_PER_POINT, 210 / MM_PER_POINT],
  a3: [420 / MM_PER_POINT, 297 / MM_PER_POINT],
};

/** Each example on the papers of its own part of the world: every paper is printed once. */
const EXAMPLES = [
  { example: "alder-flat", papers: ["letter", "tabloid"] },
  { example: "quarry-lane", papers: ["a4", "a3"] },
] as const;

interface Printed {
  site: Site;
  schemeId: string;
  pages: readonly Page[];
  file: string;
}

let folder: string;
let fonts: FontBytes;
const made = new Map<string, Promise<Printed>>();

// A whole set is drawn and written in the first test that asks for it.
vi.setConfig({ testTimeout: 120_000 });

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "bankyard-sheets-"));
  fonts = await fontsOnDisk();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function siteOf(example: string): Site {
  const read = readSite(readFileSync(`shared/sites/${example}.site.json`, "utf8"));
  if (!read.ok) throw new Error(read.problems[0]?.text);
  return read.value;
}

/** Each PDF is made once. */
function printed(example: string, paper: PaperId): Promise<Printed> {
  const key = `${example}-${paper}`;
  const kept = made.get(key) ?? print(example, paper, join(folder, `${key}.pdf`));
  made.set(key, kept);
  return kept;
}

async function print(example: string, paper: PaperId, file: string): Promise<Printed> {
  const site = siteOf(example);
  const schemeId = site.schemes[0]!.id;
  const date = "2026-11-27";
  const pages = sheetsOf({ site, schemeId, estimate: estimate(site, schemeId), date, paper });
  const subject = "the printed sheets";
  writeFileSync(file, await pdfOf(pages, { fonts, title: site.name, subject, date }));
  return { site, schemeId, pages, file };
}

/** What poppler reads for a text of ours: signs that the fonts lack are written out. */
const asWritten = (text: string): string => text.replaceAll("′", "'").replaceAll("″", '"');

describe.each(EXAMPLES)("the sheets of $example", ({ example, papers }) => {
  it.each(papers)("are of %s to half a point, every page of them", async (paper) => {
    const { pages, file } = await printed(example, paper);
    const sizes = pageSizes(file);
    expect(sizes).toHaveLength(pages.length);
    const [width, height] = SIZES[paper];
    for (const size of sizes) {
      expect(Math.abs(size.width - width)).toBeLessThan(0.5);
      expect(Math.abs(size.height - height)).toBeLessThan(0.5);
    }
  });

  it("bring their letters along, only those used", async () => {
    const { file } = await printed(example, papers[0]);
    const fontRows = fontsOf(file);
    expect(fontRows.map(({ name }) => name.replace(/^[A-Z]{6}\+/, "")).sort()).toEqual([
      "PublicSans-Bold",
      "PublicSans-Regular",
      "ZillaSlab-SemiBold",
    ]);
    for (const font of fontRows) expect(font).toMatchObject({ embedded: true, subset: true });
  });

  it("say their title and number on each page, as the bookmarks do", async () => {
    const { site, pages, file } = await printed(example, papers[0]);
    for (const [i, page] of pages.entries()) {
      const says = pageText(file, i + 1);
      expect(says).toContain(site.name);
      expect(says.replaceAll(" ", "")).toContain(page.title.replaceAll(" ", ""));
      expect(says).toContain(`${i + 1} of ${pages.length}`);
    }
    expect(bookmarks(file)).toEqual(pages.map(({ title }, i) => ({ text: title, page: i + 1 })));
    expect(particulars(file).get("Title")).toBe(site.name);
  });

  it("say the figures that the estimate says", async () => {
    const { site, schemeId, pages, file } = await printed(example, papers[0]);
    const answer = estimate(site, schemeId);
    const five = fiveFigures(answer, site);
    const print = (value: number): string => money(site.currency).print(value, site.units);
    const cover = pageText(file, 1);
    for (const value of [five.cut, five.rock, five.spoil]) {
      expect(cover).toContain(earthVolume.print(value, site.units));
    }
    expect(cover).toContain(print(five.cost.likely));
    const all = pages.map((_page, i) => pageText(file, i + 1)).join(" ");
    for (const line of answer.cost.lines) expect(all).toContain(print(line.amount.likely));
    for (const { cut } of answer.works) {
      for (const volume of Object.values(cut)) {
        expect(all).toContain(earthVolume.print(volume, site.units));
      }
    }
    for (const { text } of answer.findings) {
      expect(all.replaceAll(" ", "")).toContain(firstWords(asWritten(text)).replaceAll(" ", ""));
    }
    for (const caution of answer.cautions) {
      expect(all.replaceAll(" ", "")).toContain(firstWords(caution).replaceAll(" ", ""));
    }
  });
});

/** Enough of a text to know it by, short enough to be free of fractions that paper writes out. */
function firstWords(text: string): string {
  return text.slice(0, 24);
}

/** The pages that are drawn to one scale, with n of 1 : n, which each of them says. */
function scaledPages({ pages, file }: Printed): { page: number; id: string; n: number }[] {
  return pages.flatMap(({ id, number: page, scale: n }) => {
    if (n === null) return [];
    expect(pageText(file, page).replaceAll(" ", "")).toContain(`(1:${n})`);
    return [{ page, id, n }];
  });
}

const DPI = 300;

/** Length in mm of the longest dark line across a part of a page. */
function longestRun(
  file: string,
  page: number,
  part: { left: number; top: number; width: number; height: number },
): number {
  const { width, height, grey } = raster(file, page, DPI, part);
  let longest = 0;
  for (let row = 0; row < height; row++) {
    let run = 0;
    for (let column = 0; column < width; column++) {
      run = grey[row * width + column]! < 128 ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
  }
  return (longest / DPI) * 25.4;
}

describe.each([
  ["alder-flat", "letter"],
  ["alder-flat", "tabloid"],
  ["quarry-lane", "a4"],
  ["quarry-lane", "a3"],
] as const)("a rule laid on the sheets of %s on %s", (example, paper) => {
  it("finds every scale bar as long as it says, to half a millimetre", async () => {
    const sheets = await printed(example, paper);
    const { site, pages, file } = sheets;
    const scaled = scaledPages(sheets);
    expect(scaled.length).toBeGreaterThan(0);
    for (const { page, n } of scaled) {
      const foot = pages[0]!.height - 37;
      const boxed = wordsOn(file, page).filter(({ top }) => top > foot);
      const unit = site.units === "us" ? "ft" : "m";
      // The bar's last figure and its unit: the lowest such pair on the page, in the title block.
      const units = boxed.filter(({ text }) => text === unit);
      const lowest = units.reduce((low, word) => (word.top > low.top ? word : low));
      const level = boxed.filter(({ top }) => Math.abs(top - lowest.top) < 0.3);
      const figure = level.filter(({ right }) => right < lowest.left + 0.1).at(-1);
      const nought = level.find(({ text }) => text === "0");
      if (figure === undefined || nought === undefined)
        throw new Error(`page ${page}: no figures of a bar`);
      const length = Number(figure.text.replaceAll(",", "")) * (site.units === "us" ? FOOT : 1);
      const run = longestRun(file, page, {
        left: nought.left - 1.5,
        top: lowest.bottom,
        width: lowest.right - nought.left + 3,
        height: 2.2,
      });
      expect(Math.abs(run - (1000 * length) / n)).toBeLessThan(0.5);
    }
  });

  it("finds each side of the lot as long as it is, to half a millimetre", async () => {
    const sheets = await printed(example, paper);
    const { site, file } = sheets;
    const plans = scaledPages(sheets).filter(({ id }) => id === "existing-ground");
    expect(plans).toHaveLength(1);
    const { page, n } = plans[0]!;
    const strokes = strokesOn(file, page);
    for (const [from, to] of lotSides(site)) {
      const east = ((to[0] - from[0]) * 1000) / n;
      const south = (-(to[1] - from[1]) * 1000) / n;
      const off = strokes.map(([a, b]) =>
        Math.min(
          Math.hypot(b[0] - a[0] - east, b[1] - a[1] - south),
          Math.hypot(a[0] - b[0] - east, a[1] - b[1] - south),
        ),
      );
      expect(Math.min(...off)).toBeLessThan(0.5);
    }
  });
});

function lotSides(site: Site): (readonly [readonly [number, number], readonly [number, number]])[] {
  const lot = site.limits?.find(({ kind }) => kind === "lot-line");
  const path = lot?.path ?? [];
  expect(path.length).toBeGreaterThan(2);
  return path.slice(1).map((to, i) => [path[i]!, to] as const);
}
