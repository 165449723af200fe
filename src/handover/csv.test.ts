import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { words } from "../words/index.js";
import { csvOf } from "./csv.js";
import { exampleJob } from "./job.fixture.js";
import { MONEY_FORMAT } from "./sheet.js";
import type { Cell } from "./sheet.js";
import { makeTables } from "./tables/makeTables.js";

const job = exampleJob("alder-flat");

const firstRow = (row: Cell[]): string[] =>
  Papa.parse<string[]>(csvOf(job, [row]).replace(/^\uFEFF/, "")).data[0]!;

describe("a table as CSV", () => {
  it("has money to the cent and all else to seven decimals", () => {
    const money = (number: number): Cell => ({ number, format: MONEY_FORMAT });
    const volume: Cell = { number: 28.12272694, format: "#,##0.00" };
    expect(firstRow([money(28.1227269), money(270), money(-12.5), money(-0.001), volume])).toEqual([
      ...["28.12", "270.00", "-12.50", "0.00", "28.1227269"],
    ]);
  });

  it("takes the formula out of a text, whatever number it begins with", () => {
    expect(firstRow(["-12.50+A1", "=1", "-1"])).toEqual(["'-12.50+A1", "'=1", "'-1"]);
  });

  it("writes every price, amount and total of the example's cost so", async () => {
    const files = await makeTables(job);
    const cost = files.find(({ name }) => name.endsWith("cost.csv"));
    const [head, ...rows] = Papa.parse<string[]>(String(cost?.data).replace(/^\uFEFF/, "")).data;
    const from = (head ?? []).indexOf(words.tables.priceLow);
    const lines = rows.slice(0, job.estimate.cost.lines.length);
    const said = lines.flatMap((row) => row.slice(from, from + 6)).filter((cell) => cell !== "");
    expect(said.length).toBeGreaterThan(60);
    for (const cell of said) expect(cell).toMatch(/^-?\d+\.\d\d$/);
    const total = rows[lines.length]!;
    expect(total[from + 4]).toBe(job.estimate.cost.total.likely.toFixed(2));
  });
});
