/**
 * Least falls of gravity pipe against published rules. Inside diameters: ASTM D1785, Schedule 40
 * (1 to 4 in read; 6 and 8 in recalled).
 */
import { describe, expect, it } from "vitest";
import type { PipeRun } from "../../src/dig/index.js";
import { checkFlow, fallRules, leastFallFor } from "../../src/flow/index.js";
import type { Scheme, Site } from "../../src/site/index.js";
import { pipeSlope } from "../../src/units/index.js";

const IN = 0.0254;
const FOOT = 0.3048;
const SCHEDULE_40: Readonly<Record<string, number>> = {
  "1½": 1.61,
  "2": 2.067,
  "3": 3.068,
  "4": 4.026,
  "6": 6.065,
  "8": 7.981,
};

function insideOf(nominal: string): number {
  const inches = SCHEDULE_40[nominal];
  if (inches === undefined) throw new Error(`got ${nominal}, expected a size of the table`);
  return inches * IN;
}

describe("International Plumbing Code, Table 704.1 pattern, Chicago Municipal Code 18-29-704.1 (read)", () => {
  it.each([
    ["1½", 1 / 4, "2.083%"],
    ["2", 1 / 4, "2.083%"],
    ["3", 1 / 8, "1.042%"],
    ["4", 1 / 8, "1.042%"],
    ["6", 1 / 8, "1.042%"],
    ["8", 1 / 16, "0.521%"],
  ])("%s in: %f in per ft is %s", (nominal, inchesPerFoot, percent) => {
    const least = leastFallFor(insideOf(nominal), {});
    expect(least.value).toBeCloseTo((inchesPerFoot * IN) / FOOT, 12);
    expect(pipeSlope.print(least.value, "us", { digits: 3 })).toBe(percent);
    expect(least.source).toContain("Table 704.1");
  });

  it("a 3 in drain over 40 ft runs with the 5 in that ⅛ in per ft asks for, and lacks ½ in with 4½", () => {
    const enough = checked("3", 40 * FOOT, 5 * IN);
    expect(enough?.verdict).toBe("runs");
    const short = checked("3", 40 * FOOT, 4.5 * IN);
    expect(short?.verdict).toBe("too flat");
    expect(short?.mends[0]?.by).toBeCloseTo(0.5 * IN, 9);
    const shorten = short?.mends.find((mend) => mend.kind === "shorten");
    // 4½ in at ⅛ in per ft is enough for 36 ft.
    expect(shorten?.by).toBeCloseTo(4 * FOOT, 9);
  });

  it("a 2 in drain over 40 ft needs 10 in", () => {
    expect(checked("2", 40 * FOOT, 10 * IN)?.verdict).toBe("runs");
    expect(checked("2", 40 * FOOT, 5 * IN)?.mends[0]?.by).toBeCloseTo(5 * IN, 9);
  });
});

describe("other published rules that a scheme can take instead", () => {
  it.each([
    // Municipal code of Saugatuck, Michigan (read): building sewer 4 in 2%, 6 in 1%.
    ["building-sewer-2-1", "4", 0.02, "Saugatuck"],
    ["building-sewer-2-1", "6", 0.01, "Saugatuck"],
    // Municipal code of Vienna, Illinois, 53.073 (read): raw sewage 12 in, tank to field 6 in per 100 ft.
    ["raw-sewage-12-per-100", "4", 12 / 1200, "53.073"],
    ["tank-to-field-6-per-100", "4", 6 / 1200, "53.073"],
  ])("%s, %s in: %f", (id, nominal, fall, cited) => {
    const rule = fallRules().find((each) => each.id === id);
    if (rule === undefined) throw new Error(`got no rule ${id}, expected it in the catalogue`);
    const leastFall = rule.rows.map((row) => ({ ...row, source: rule.source }));
    const least = leastFallFor(insideOf(nominal), { flow: { leastFall } });
    expect(least.value).toBeCloseTo(fall, 12);
    expect(least.source).toContain(cited);
  });
});

/** One straight gravity pipe well under level ground, checked by the catalogue's rule. */
function checked(nominal: string, length: number, drop: number) {
  const inside = insideOf(nominal);
  const outside = inside + 0.01;
  const run: PipeRun = {
    id: "p",
    name: "Drain",
    trench: "t",
    service: "gravity",
    inside,
    outside,
    material: "pvc",
    length,
    drop,
    fall: drop / length,
    cover: { least: 1, most: 1 + drop },
    stations: [
      { station: 0, at: [0, 0], ground: 10, invert: 9 - (outside + inside) / 2 },
      { station: length, at: [length, 0], ground: 10, invert: 9 - (outside + inside) / 2 - drop },
    ],
  };
  const scheme: Scheme = { id: "s", name: "S", works: [] };
  const site: Site = {
    format: "bankyard-site",
    version: 1,
    name: "Check",
    units: "us",
    currency: "USD",
    survey: { points: [] },
    ground: { layers: [], probes: [] },
    schemes: [scheme],
  };
  return checkFlow(site, scheme, [run]).flow.pipes[0];
}
