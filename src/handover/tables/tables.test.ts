import { describe, expect, it } from "vitest";
import { earthVolume } from "../../units/index.js";
import { words } from "../../words/index.js";
import { exampleJob, withScheme } from "../job.fixture.js";
import type { HandoverJob } from "../job.js";
import { cellAt, columnName, plainCell } from "../sheet.js";
import type { Sheet } from "../sheet.js";
import { orderItems } from "../orders/orderItems.js";
import { makeTables, tableSheets } from "./makeTables.js";

/** Formulas by their addresses, as other sheets write them too. */
function formulasOf(sheets: readonly Sheet[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const { name, rows } of sheets) {
    rows.forEach((row, y) =>
      row.forEach((cell, x) => {
        if (cell !== null && typeof cell === "object" && "formula" in cell) {
          found.set(cellAt(y, x, name), cell.formula);
        }
      }),
    );
  }
  return found;
}

const alder = exampleJob("alder-flat");

describe("addresses of cells", () => {
  it("count columns by letters and quote a sheet's name", () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(columnName)).toEqual([
      "A",
      "Z",
      "AA",
      "AZ",
      "BA",
      "ZZ",
      "AAA",
    ]);
    expect(cellAt(2, 3)).toBe("D3");
    expect(cellAt(0, 0, "Owner's")).toBe("'Owner''s'!A1");
  });
});

describe.each([
  ["alder-flat", alder],
  ["quarry-lane", exampleJob("quarry-lane")],
  ["nothing drawn", exampleJob("alder-flat", (site) => withScheme(site, { works: [] }))],
])("the tables (%s)", (_, job: HandoverJob) => {
  const sheets = tableSheets(job);
  const all = Object.values(sheets) as Sheet[];

  it("show each cost line's amounts and the totals", () => {
    const { lines, total } = job.estimate.cost;
    const rows = sheets.cost.rows.slice(1);
    lines.forEach(({ name, amount }, i) => {
      const row = rows[i] ?? [];
      expect(plainCell(row[0] ?? null)).toBe(name);
      expect([9, 10, 11].map((x) => plainCell(row[x] ?? null))).toEqual([
        amount.low,
        amount.likely,
        amount.high,
      ]);
    });
    const last = rows[lines.length] ?? [];
    expect([9, 10, 11].map((x) => plainCell(last[x] ?? null))).toEqual([
      total.low,
      total.likely,
      total.high,
    ]);
  });

  it("come to the same loose volume as the earth's balance", () => {
    const row = sheets.quantities.rows.findLast(
      ([name]) => plainCell(name ?? null) === words.tables.all,
    );
    const all = job.estimate.works.length === 0 ? 0 : plainCell(row?.[3] ?? null);
    expect(all).toBeCloseTo(earthVolume.toSystem(job.estimate.earth.loose, job.site.units), 6);
  });

  it("let tons, loads and this scheme's cost follow the sheet of cost", () => {
    const orders = sheets.orders.rows.slice(1);
    orderItems(job).forEach(({ kind, count }, i) => {
      const cell = orders[i]?.[2] ?? null;
      expect(plainCell(cell)).toBe(count);
      expect(typeof cell === "object" && cell !== null && "formula" in cell).toBe(kind === "earth");
    });
    const row = sheets.schemes.rows.find(
      ([name]) => plainCell(name ?? null) === words.tables.costLikely,
    );
    expect(row?.[3]).toMatchObject({ value: job.estimate.cost.total.likely });
    expect(row?.[3]).toHaveProperty("formula");
  });

  it("have no formula that looks at itself, at a sheet that is not there, or beyond it", () => {
    const names = new Set(all.map(({ name }) => name));
    for (const [place, formula] of formulasOf(all)) {
      expect(formula.startsWith("=")).toBe(false);
      for (const [, sheet] of formula.matchAll(/'([^']+)'!/g)) expect(names).toContain(sheet);
      const own = place.slice(place.indexOf("!") + 1);
      expect(formula.replace(/'[^']+'![A-Z]+\d+/g, "").split(/[^A-Z0-9]+/)).not.toContain(own);
    }
  });

  it("make one workbook and four CSV", async () => {
    const files = await makeTables(job);
    expect(files.map(({ name }) => name.replace(/^.*\./, ""))).toEqual([
      "xlsx",
      "csv",
      "csv",
      "csv",
      "csv",
    ]);
  });
});

describe("making tables", () => {
  it("stops where it is told to", async () => {
    const signal = AbortSignal.abort(new Error("enough"));
    await expect(makeTables(alder, { signal })).rejects.toThrow("enough");
  });
});
