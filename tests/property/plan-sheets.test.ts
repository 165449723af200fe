import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT } from "../../src/cli/prepare.mjs";
import { textQuad } from "../../src/sheets/box.js";
import { roomOf } from "../../src/sheets/frame.js";
import { PAPERS, type PaperId, type SheetContent, type TextMark } from "../../src/sheets/paper.js";
import { overlap } from "../../src/sheets/quads.js";
import { inRoom } from "../../src/sheets/plan/clip.js";
import { excavationPlan, existingGround, layoutPlan } from "../../src/sheets/plan/index.js";
import {
  jobOf,
  reachOf,
  sheetsFrom,
  singles,
  textsOf,
} from "../../src/sheets/plan/plan.fixture.js";
import { PLAN_SCALES } from "../../src/sheets/plan/scales.js";
import { cutsOf } from "../../src/sheets/sections/cuts.js";
import { schemeOf } from "../../src/estimate/index.js";
import { readSite, type Site } from "../../src/site/index.js";
import { elevation } from "../../src/units/index.js";
import { present } from "../fixtures/present.js";

const MAKERS = [
  { maker: "existing ground", make: existingGround },
  { maker: "layout plan", make: layoutPlan },
  { maker: "excavation plan", make: excavationPlan },
];
const KINDS = Object.keys(PAPERS).flatMap((paper) =>
  MAKERS.map((one) => ({ ...one, paper: paper as PaperId })),
);

function example(name: string): Site {
  const file = join(ROOT, "shared", "sites", `${name}.site.json`);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error(`${name}: got ${JSON.stringify(read.problems[0])}`);
  return read.value;
}

/** Pairs of texts that share paper; lines of one label touch in their margins. */
function overlapping(texts: readonly TextMark[]): string[] {
  const quads = texts.map((text) => textQuad(text, -0.12 * text.size));
  return texts.flatMap((a, i) =>
    texts.flatMap((b, k) =>
      k > i && overlap(quads[i]!, quads[k]!) ? [`${a.text} / ${b.text}`] : [],
    ),
  );
}

describe.each(["alder-flat", "quarry-lane"])("plan sheets of %s", (name) => {
  const site = example(name);
  const job = jobOf(site, "letter");

  it.each(KINDS)("$maker on $paper: in its room, no text over another", ({ paper, make }) => {
    for (const sheet of sheetsFrom(make, { ...job, paper })) {
      const room = roomOf(paper, sheet.legend);
      const outside = singles(sheet.marks).filter((mark) =>
        reachOf(mark).some((spot) => !inRoom(room, spot, -0.01)),
      );
      expect(outside).toEqual([]);
      const texts = textsOf(sheet);
      expect(texts.length).toBeGreaterThan(20);
      expect(overlapping(texts)).toEqual([]);
      expect(Math.min(...texts.map(({ size }) => size))).toBeGreaterThanOrEqual(1.8);
      expect(PLAN_SCALES[site.units]).toContain(sheet.scale);
      const names = sheet.legend.map((row) => row.name);
      expect(new Set(names).size).toBe(names.length);
    }
  });

  it("works too small on the layout are drawn again by themselves, larger", () => {
    const made = sheetsFrom(layoutPlan, job);
    expect(made.map(({ id }) => id)).toEqual(["layout-plan", "works-plan"]);
    const [layout, works] = made.map((sheet) => present(sheet.window));
    expect(present(works).scale).toBeLessThan(present(layout).scale);
    const rowsOf = (sheet: SheetContent | undefined): string[] =>
      present(sheet).legend.map((row) => row.name);
    const section = "Line of a section, with the way it looks";
    expect(rowsOf(made[0])).toContain("Edge of the enlarged plan, on the next sheet");
    expect(rowsOf(made[0])).not.toContain(section);
    expect(rowsOf(made[1])).toContain(section);
    // Everything at once is there where a person has moved the layout.
    const [all] = sheetsFrom(layoutPlan, job, { "layout-plan": present(works) });
    expect(rowsOf(all)).toContain(section);
  });

  it("distances kept stand by numbers in frames of their own, sections by letters", () => {
    const layout = present(sheetsFrom(layoutPlan, job)[0]);
    const numbered = textsOf(layout).filter(
      ({ text, face }) => face === "strong" && /^\d+$/.test(text),
    );
    const frames = singles(layout.marks).filter(
      (mark) =>
        mark.kind === "path" && mark.lines[0]?.length === 6 && mark.fill?.color === "#ffffff",
    );
    expect(frames.length).toBe(numbered.length);
    const numbers = new Set(numbered.map(({ text }) => text));
    expect(numbers.size).toBeGreaterThan(5);
    // Each on the plan and in its table.
    for (const number of numbers) {
      expect(numbered.filter(({ text }) => text === number).length).toBe(2);
    }
  });

  it("most elevations of the survey are written where the paper is large", () => {
    const sheet = sheetsFrom(existingGround, { ...job, paper: "a3" })[0]!;
    const inSite = new Set(
      site.survey.points.map(({ z }) => elevation.print(z, site.units, { bare: true })),
    );
    const written = textsOf(sheet).filter(({ text }) => inSite.has(text));
    expect(written.length).toBeGreaterThan(0.75 * site.survey.points.length);
  });

  it("elevations without room on Letter stand in a list, by a number on the plan or told as missing", () => {
    const sheet = present(sheetsFrom(existingGround, job)[0]);
    const numbersIn = (layer: string): string[] =>
      singles(sheet.marks.filter((mark) => mark.kind === "group" && mark.layer === layer)).flatMap(
        (mark) => (mark.kind === "text" && /^\(\d+\)$/.test(mark.text) ? [mark.text] : []),
      );
    const [onPlan, inList] = [numbersIn("Lettering"), numbersIn("Tables")];
    expect(onPlan.length).toBeGreaterThan(0.8 * inList.length);
    expect(new Set(onPlan).size).toBe(onPlan.length);
    for (const number of onPlan) expect(inList).toContain(number);
    const said = textsOf(sheet).flatMap(({ text }) => /measured here (\d+) found/.exec(text) ?? []);
    expect(Number(said[1] ?? 0)).toBe(inList.length - onPlan.length);
  });

  it("the layout plan marks both ends of every section", () => {
    const texts = sheetsFrom(layoutPlan, { ...job, paper: "a3" }).flatMap(textsOf);
    const written = new Set(texts.map(({ text }) => text));
    const scheme = schemeOf(site, job.schemeId);
    const cuts = cutsOf(site, scheme, job.estimate);
    expect(cuts.length).toBeGreaterThan(2);
    for (const { letter } of cuts) {
      expect(written).toContain(letter);
      expect(written).toContain(`${letter}′`);
    }
  });

  it("a plan shows the window that a person chose", () => {
    const [middle, scale] = [[24, 21] as const, 120];
    const sheet = sheetsFrom(layoutPlan, job, { "layout-plan": { middle, scale } })[0]!;
    expect(sheet.scale).toBe(120);
    const rows = sheet.legend.map((row) => row.name);
    expect(rows).not.toContain("Well");
    expect(rows).toContain("Trench, at its floor");
  });
});
