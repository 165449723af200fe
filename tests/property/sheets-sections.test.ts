/**
 * Profiles, sections and details of both examples: their figures are the estimate's, nothing leaves
 * the room, no text covers another, every material that is drawn has its hatch and its legend row.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { estimate, type Estimate } from "../../src/estimate/index.js";
import { readSite, type Scheme, type Site } from "../../src/site/index.js";
import { textQuad } from "../../src/sheets/box.js";
import { roomOf } from "../../src/sheets/frame.js";
import type { Mark, PaperId, SheetContent, SheetMaker, TextMark } from "../../src/sheets/paper.js";
import { overlap } from "../../src/sheets/quads.js";
import { pipeChains } from "../../src/sheets/sections/chains.js";
import { cutDataOf } from "../../src/sheets/sections/cutData.js";
import { cutsOf } from "../../src/sheets/sections/cuts.js";
import { details } from "../../src/sheets/sections/details.js";
import { profileData } from "../../src/sheets/sections/profileData.js";
import { pipeProfiles } from "../../src/sheets/sections/profiles.js";
import { workSections } from "../../src/sheets/sections/sections.js";
import { wallSlopes } from "../../src/sheets/sections/wallSlopes.js";
import { drawnText } from "../../src/sheets/textWidth.js";
import { elevation, length } from "../../src/units/index.js";
import { words } from "../../src/words/index.js";
import { present } from "../fixtures/present.js";
import { movedSite, STILL } from "../fixtures/moved.js";

const MAKERS: Readonly<Record<string, SheetMaker>> = {
  profiles: pipeProfiles,
  sections: workSections,
  details,
};

function siteOf(name: string): Site {
  const outcome = readSite(readFileSync(`shared/sites/${name}.site.json`, "utf8"));
  if (!outcome.ok) throw new Error(`${name}: expected a site that can be read`);
  return outcome.value;
}

interface Job {
  site: Site;
  scheme: Scheme;
  estimate: Estimate;
}

function jobOf(site: Site, index = 0): Job {
  const scheme = site.schemes[index]!;
  return { site, scheme, estimate: estimate(site, scheme.id) };
}

function sheets(job: Job, maker: SheetMaker, paper: PaperId): readonly SheetContent[] {
  const { site, scheme } = job;
  const asked = { site, schemeId: scheme.id, estimate: job.estimate, date: "2026-11-27", paper };
  return maker(asked, (legend) => roomOf(paper, legend), {}, new Set());
}

type Box = readonly [number, number, number, number];

/** All marks but groups, each with the box that it is cut off at. */
function flat(marks: readonly Mark[], clip: Box | null = null): { mark: Mark; clip: Box | null }[] {
  return marks.flatMap((mark) =>
    mark.kind === "group" ? flat(mark.marks, mark.clip ?? clip) : [{ mark, clip }],
  );
}

const textsOf = ({ marks }: SheetContent): TextMark[] =>
  flat(marks).flatMap(({ mark }) => (mark.kind === "text" ? [mark] : []));

function cornersOf(mark: Mark): readonly (readonly [number, number])[] {
  if (mark.kind === "text") return textQuad(mark);
  if (mark.kind === "path") return mark.lines.flat();
  if (mark.kind === "circle") {
    const [x, y] = mark.at;
    return [
      [x - mark.radius, y - mark.radius],
      [x + mark.radius, y + mark.radius],
    ];
  }
  return [];
}

const ALDER = jobOf(siteOf("alder-flat"));
const QUARRY = jobOf(siteOf("quarry-lane"));
const JOBS = { "alder-flat": ALDER, "quarry-lane": QUARRY } as const;

describe.each(Object.keys(JOBS) as (keyof typeof JOBS)[])("%s", (name) => {
  const job = JOBS[name];
  describe.each(["letter", "tabloid", "a4", "a3"] as const)("on %s", (paper) => {
    test.each(Object.keys(MAKERS))("%s keep to the room, and no text covers another", (kind) => {
      const made = sheets(job, MAKERS[kind]!, paper);
      expect(made.length).toBeGreaterThan(0);
      expect(new Set(made.map(({ id }) => id)).size).toBe(made.length);
      for (const content of made) {
        const { left, top, width, height } = roomOf(paper, content.legend);
        const beyond = flat(content.marks).filter(({ mark, clip }) => {
          const corners = clip
            ? [[clip[0], clip[1]] as const, [clip[0] + clip[2], clip[1] + clip[3]] as const]
            : cornersOf(mark);
          return corners.some(
            ([x, y]) =>
              x < left - 0.01 ||
              x > left + width + 0.01 ||
              y < top - 0.01 ||
              y > top + height + 0.01,
          );
        });
        expect(beyond.map(({ mark }) => mark)).toEqual([]);
        expect(coveredTexts(textsOf(content))).toEqual([]);
        const smallest = Math.min(...textsOf(content).map(({ size }) => size));
        expect(smallest).toBeGreaterThanOrEqual(1.8);
      }
    });

    test("no slope of a wall goes without its figure", () => {
      const { site, scheme, estimate: estimated } = job;
      const wanted = cutDataOf(site, scheme, estimated).flatMap(({ cut, dug, finished }) => {
        if (cut.work.kind === "bed") return [];
        const isPad = cut.work.kind === "pad";
        const { surface } = isPad ? finished : dug;
        return wallSlopes(surface, ...cut.changed, isPad ? 0.1 : 0.3);
      });
      const said = sheets(job, workSections, paper).flatMap(textsOf);
      const slopes = said.filter(({ text }) => / : 1$|^vertical$/.test(text));
      expect(wanted.length).toBeGreaterThan(3);
      expect(slopes).toHaveLength(wanted.length);
    });
  });

  test("each drawing has a bar of a scale that is said, right on paper to a hundredth", () => {
    const [unit, mm] = job.site.units === "us" ? ["ft", 304.8] : ["m", 1000];
    for (const content of Object.values(MAKERS).flatMap((make) => sheets(job, make, "letter"))) {
      const said = textsOf(content).map(({ text }) => text);
      const drawings = said.filter((text) => /^(Profile|Section|Detail) .*:/.test(text)).length;
      const scales = said.flatMap((text) =>
        [...text.matchAll(/\(1 : ([\d.]+)\)/g)].map(([, n]) => Number(n)),
      );
      const bars = content.marks.flatMap((mark) =>
        mark.kind === "group" && mark.layer === "Scale bar" ? [flat(mark.marks)] : [],
      );
      expect(bars.length).toBeGreaterThanOrEqual(drawings);
      expect(drawings).toBeGreaterThan(0);
      for (const bar of bars) {
        const xs = bar.flatMap(({ mark }) =>
          mark.kind === "path" ? mark.lines.flat().map(([x]) => x) : [],
        );
        const figures = bar.flatMap(({ mark }) => (mark.kind === "text" ? [mark.text] : []));
        const long = present(figures.find((text) => text.endsWith(unit)));
        const scale = (parseFloat(long) * mm) / (Math.max(...xs) - Math.min(...xs));
        expect(scales.some((each) => Math.abs(each - scale) < 0.01)).toBe(true);
      }
    }
  });

  test("areas carry hatches that the legend tells", () => {
    for (const maker of Object.values(MAKERS)) {
      for (const content of sheets(job, maker, "a3")) {
        const told = new Set(
          content.legend.flatMap(({ sample }) =>
            sample.flatMap((mark) =>
              mark.kind === "path" && mark.fill ? [JSON.stringify(mark.fill)] : [],
            ),
          ),
        );
        const laid = flat(content.marks).flatMap(({ mark, clip }) =>
          clip && mark.kind === "path" && mark.fill?.hatches && seen(mark.lines.flat(), clip)
            ? [JSON.stringify(mark.fill)]
            : [],
        );
        expect(laid.every((fill) => told.has(fill))).toBe(true);
        if (content.scale !== null) expect(laid.length).toBeGreaterThan(2);
      }
    }
  });
});

function seen(corners: readonly (readonly [number, number])[], [, top, , height]: Box): boolean {
  const ys = corners.map(([, y]) => y);
  return Math.max(...ys) > top + 0.5 && Math.min(...ys) < top + height - 0.5;
}

function coveredTexts(texts: readonly TextMark[]): string[] {
  const quads = texts.map((mark) => textQuad(mark, -0.15));
  return texts.flatMap((one, i) =>
    texts
      .slice(i + 1)
      .flatMap((other, k) =>
        overlap(quads[i]!, quads[i + 1 + k]!) ? [`${one.text} | ${other.text}`] : [],
      ),
  );
}

describe("the table under a profile", () => {
  test.each(Object.keys(JOBS) as (keyof typeof JOBS)[])(
    "holds the estimate's figures: %s",
    (name) => {
      const { site, scheme, estimate: result } = JOBS[name];
      const chains = pipeChains(scheme, result.flow.pipes);
      const all = chains.map((chain) => present(profileData(site, scheme, result, chain)));
      const texts = sheets(JOBS[name], pipeProfiles, "a3")
        .flatMap(textsOf)
        .map(({ text }) => text);
      for (const { chain, columns } of all) {
        for (const { pipes, trench, start } of chain.runs) {
          const check = pipes[0]!;
          const within = columns.filter(
            ({ station }) => station >= start - 1e-6 && station <= start + check.length + 1e-6,
          );
          const first = within[0]!;
          const last = within.at(-1)!;
          expect(first.invert - last.invert).toBeCloseTo(check.drop, 6);
          expect((first.invert - last.invert) / (last.station - first.station)).toBeCloseTo(
            check.fall,
            6,
          );
          const covers = within.map(({ cover }) => cover);
          expect(Math.min(...covers)).toBeCloseTo(check.cover.least, 6);
          // The most is read at both sides of a step, of which the table lists one.
          expect(Math.abs(Math.max(...covers) - check.cover.most)).toBeLessThan(0.002);
          const floor = present(result.works.find(({ id }) => id === trench.id)).floor;
          expect(Math.min(...within.map((column) => column.floor))).toBeCloseTo(floor.lowest, 6);
          expect(Math.max(...within.map((column) => column.floor))).toBeCloseTo(floor.highest, 6);
          expect(texts).toContain(elevation.print(first.invert, site.units, { bare: true }));
          expect(texts).toContain(elevation.print(last.invert, site.units, { bare: true }));
          expect(
            texts.some((text) => text.includes(length.print(check.cover.least, site.units))),
          ).toBe(true);
        }
      }
    },
  );

  test("water is followed from the house through the tank to the far soakaway", () => {
    const names = pipeChains(QUARRY.scheme, QUARRY.estimate.flow.pipes).map(({ runs }) =>
      runs.map(({ trench }) => trench.id),
    );
    expect(names).toEqual([["drain-trench", "outlet-trench", "soakaway-2"], ["soakaway-1"]]);
    const pumped = pipeChains(ALDER.scheme, ALDER.estimate.flow.pipes);
    expect(pumped.map(({ runs }) => runs.length)).toEqual([1, 1]);
  });

  test("a buried line that crosses is drawn at its depth, or told to be found by hand", () => {
    const path = QUARRY.site.schemes[0]!.works.flatMap((work) =>
      work.kind === "trench" && work.id === "drain-trench" ? work.path : [],
    );
    const [a, b] = [path[0]!, path[1]!];
    const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
    const line = (id: string, depth?: number): NonNullable<Site["limits"]>[number] => ({
      id,
      kind: "water-line",
      name: `Line ${id}`,
      path: [
        [middle[0] - 3, middle[1] - 1],
        [middle[0] + 3, middle[1] + 1],
      ],
      ...(depth !== undefined && { depth }),
    });
    const site = { ...QUARRY.site, limits: [line("known", 0.5), line("unknown")] };
    const job = jobOf(site);
    const data = present(
      profileData(
        site,
        job.scheme,
        job.estimate,
        pipeChains(job.scheme, job.estimate.flow.pipes)[0]!,
      ),
    );
    const known = present(data.buried.find(({ name }) => name === "Line known"));
    const half = Math.hypot(b[0] - a[0], b[1] - a[1]) / 2;
    expect(known.station).toBeCloseTo(half, 6);
    const texts = sheets(job, pipeProfiles, "a3")
      .flatMap(textsOf)
      .map(({ text }) => text)
      .join(" ");
    expect(texts).toContain("Line known");
    expect(texts).toMatch(/Line unknown: depth not.*known/);
  });
});

describe("sections and details", () => {
  test("a tank's levels are its own", () => {
    const texts = sheets(ALDER, workSections, "letter")
      .flatMap(textsOf)
      .map(({ text }) => text);
    const tank = present(ALDER.scheme.works.find((work) => work.kind === "tank"));
    const { base, body, bedding } = tank;
    for (const height of [
      base + body.height,
      base + present(body.inlet),
      base + present(body.outlet),
      base - bedding.depth,
    ]) {
      const said = elevation.print(height, "us", { bare: true });
      expect(texts.some((text) => text.startsWith(said))).toBe(true);
    }
    expect(texts).toContain("¾ : 1");
  });

  test("a pumped tank's water stands where its pump starts, another's at its outlet", () => {
    const withWater = ({ site, scheme, estimate: figures }: Job) => {
      const found = cutDataOf(site, scheme, figures).find(({ cut }) => cut.work.kind === "tank");
      return present(found).levels.filter(({ water }) => water !== undefined);
    };
    const { pumpStarts, outlet, outletWater } = words.sheetsSections.cut.level;
    const pressure = present(ALDER.estimate.flow.pressure[0]);
    const on = present(pressure.water.high);
    expect(withWater(ALDER).filter(({ name }) => name === pumpStarts)).toMatchObject([
      { height: on },
    ]);
    expect(withWater(ALDER).some(({ name }) => name === outlet || name === outletWater)).toBe(
      false,
    );
    expect(withWater(QUARRY).some(({ name }) => name === outletWater)).toBe(true);
  });

  test("a tank's sizes are those entered, as its detail has them", () => {
    const { length: long, width: wide } = present(
      ALDER.scheme.works.find((work) => work.kind === "tank"),
    ).body;
    const texts = sheets(ALDER, workSections, "letter")
      .flatMap(textsOf)
      .map(({ text }) => text);
    const { sized, size } = words.sheetsSections.cut;
    expect(texts).toContain(sized(length.print(long, "us"), size.tankLong));
    expect(texts).toContain(sized(length.print(wide, "us"), size.tankWide));
  });

  test("two sections of each tank and pad, lettered in order, their floors within them", () => {
    const cuts = cutsOf(QUARRY.site, QUARRY.scheme, QUARRY.estimate);
    expect(cuts.map(({ letter, work }) => `${letter} ${work.id}`)).toEqual([
      "A tank",
      "B tank",
      "C parking",
      "D parking",
    ]);
    for (const { line, floor, changed } of cuts) {
      const long = Math.hypot(line[1][0] - line[0][0], line[1][1] - line[0][1]);
      expect(changed[0]).toBeGreaterThan(0);
      expect(changed[0]).toBeLessThanOrEqual(floor[0] + 1e-9);
      expect(floor[1]).toBeLessThanOrEqual(changed[1] + 1e-9);
      expect(changed[1]).toBeLessThan(long);
    }
    const along = cuts[0]!;
    expect(along.floor[1] - along.floor[0]).toBeCloseTo(3 + 2 * 0.35, 9);
  });

  test("float levels are the dose's", () => {
    const texts = sheets(ALDER, details, "letter")
      .flatMap(textsOf)
      .map(({ text }) => text);
    const { water, dose } = ALDER.estimate.flow.pressure[0]!;
    const { plan } = present(dose);
    for (const depth of [plan.off, plan.on, plan.alarm, plan.full].map(present)) {
      const said = elevation.print(water.floor + depth, "us", { bare: true });
      expect(texts.some((text) => text.startsWith(said))).toBe(true);
    }
  });

  test("a tank's bedding is its own, and pipes of one trench are told of", () => {
    const made = sheets(ALDER, details, "letter");
    const texts = made.flatMap(textsOf).map(({ text }) => text);
    const { base, bedding } = present(ALDER.scheme.works.find((work) => work.kind === "tank"));
    const floor = elevation.print(base - bedding.depth, "us");
    expect(texts).toContain(`Floor of the hole ${floor}`);
    const told = (all: readonly string[]): boolean => all.some((text) => text.includes("one line"));
    expect(told(texts)).toBe(true);
    const others = sheets(QUARRY, details, "letter").flatMap(textsOf);
    expect(told(others.map(({ text }) => text))).toBe(false);
  });

  test("a site without works has none of these sheets", () => {
    const bare = { ...QUARRY.site, schemes: [{ id: "none", name: "None", works: [] }] };
    const job = jobOf(bare);
    for (const maker of Object.values(MAKERS)) expect(sheets(job, maker, "letter")).toEqual([]);
  });

  test("far from the origin the same is drawn", () => {
    const far = jobOf(movedSite(QUARRY.site, { ...STILL, east: 512_000, north: 4_700_000 }));
    for (const maker of Object.values(MAKERS)) {
      const said = (job: Job): string[] =>
        sheets(job, maker, "a4")
          .flatMap(textsOf)
          .map(({ text, face }) => drawnText(text, face));
      expect(said(far)).toEqual(said(QUARRY));
    }
  });
});
