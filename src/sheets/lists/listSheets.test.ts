import { describe, expect, it } from "vitest";
import { plainSite, plainTank } from "../../site/site.fixture.js";
import { estimate } from "../../estimate/index.js";
import type { SheetJob } from "../paper.js";
import { roomOf } from "../frame.js";
import { textsOf } from "../plan/plan.fixture.js";
import { listSheets } from "./listSheets.js";
import { withinWords } from "./machines.js";

const site = plainSite({ works: [plainTank()] });
const schemeId = site.schemes[0]!.id;
const job: SheetJob = {
  ...{ site, schemeId, estimate: estimate(site, schemeId), date: "2026-11-27", paper: "letter" },
};

const table = (rows: number) => ({
  columns: [{ head: "What" }, { head: "Figure", figures: true }],
  rows: Array.from({ length: rows }, (_row, i) => ({ cells: [`row ${i}`, String(i)] })),
});

const made = (rows: number, choices: readonly number[]) =>
  listSheets(job, (legend) => roomOf("letter", legend), "list", "List", [table(rows)], choices);

/** mm between the first two rows. */
const step = (sheets: ReturnType<typeof made>): number => {
  const rows = textsOf(sheets[0]!).filter(({ text }) => text.startsWith("row "));
  return rows[1]!.at[1] - rows[0]!.at[1];
};

describe("a sheet of lists", () => {
  it("sets its rows closer only where that saves a sheet", () => {
    const rows = Array.from({ length: 100 }, (_each, i) => i + 1);
    const most = Math.max(...rows.filter((count) => made(count, [1]).length === 1));
    // A row takes 1.28 + 2 × 0.32 bodies of 2.4 mm, or 1.28 + 2 × 0.16.
    expect(step(made(most, [1]))).toBeCloseTo(2.4 * 1.6, 6);
    expect(step(made(5, [1]))).toBeCloseTo(2.4 * 1.92, 6);
    expect(step(made(most + 1, [1]))).toBeCloseTo(2.4 * 1.92, 6);
  });

  it("takes more columns only where that saves a sheet", () => {
    const across = (rows: number): number =>
      new Set(
        textsOf(made(rows, [1, 2])[0]!)
          .filter(({ text }) => text.startsWith("row "))
          .map(({ at }) => at[0]),
      ).size;
    expect(across(10)).toBe(1);
    expect(made(50, [1]).length).toBeGreaterThan(1);
    expect(made(50, [1, 2])).toHaveLength(1);
    expect(across(50)).toBe(2);
  });
});

describe("what is hired within a line of the cost", () => {
  it("has that line's price, not one by its own rates", () => {
    const { cost, machines } = job.estimate;
    const line = cost.lines.find(({ id }) => id === "tank-set");
    const crane = machines.job.hires.find(({ within }) => within === "tank-set");
    if (line === undefined || crane === undefined) throw new Error("expected a crane for the tank");
    const said = withinWords(line.id, cost, String);
    expect(line.amount.likely).not.toBe(crane.price.likely);
    expect(said).toContain(`${line.amount.likely},`);
    expect(said).toContain(line.name);
    expect(withinWords("no-such-line", cost, String)).not.toMatch(/\d/);
  });
});
