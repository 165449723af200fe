import { describe, expect, it } from "vitest";
import { readChart, writeChart } from "./loadChart.js";

/** The international foot and pound: NIST Special Publication 811, 2008, table B.8. */
const FOOT = 0.3048;
const POUND = 0.45359237;

describe("a load chart as text", () => {
  it("is read in feet and pounds, a heading skipped, thousands with a comma", () => {
    const read = readChart("radius load\n10\t30,000\n20  12,500\n30; 7500", "us");
    if (!read.ok) throw new Error(read.text);
    expect(read.table).toHaveLength(3);
    expect(read.table[0]!.radius).toBeCloseTo(10 * FOOT, 9);
    expect(read.table[0]!.load).toBeCloseTo(30000 * POUND, 6);
    expect(read.table[1]!.load).toBeCloseTo(12500 * POUND, 6);
    expect(read.table[2]!.load).toBeCloseTo(7500 * POUND, 6);
  });

  it("is put in order of the radius", () => {
    const read = readChart("8 3600\n4 8200", "metric");
    expect(read.ok && read.table.map(({ radius }) => radius)).toEqual([4, 8]);
  });

  it("comes back as it was written, a decimal comma too", () => {
    const read = readChart("2.5\t9000\n7,5\t4300", "metric");
    if (!read.ok) throw new Error(read.text);
    expect(read.table[1]).toEqual({ radius: 7.5, load: 4300 });
    expect(writeChart(read.table, "metric")).toBe("2.5\t9000\n7.5\t4300");
    expect(readChart(writeChart(read.table, "us"), "us")).toMatchObject({ ok: true });
  });

  it("keeps whole tens: 10 and 20 do not lose their noughts", () => {
    const table = [
      { radius: 10, load: 2000 },
      { radius: 20, load: 1000 },
    ];
    expect(writeChart(table, "metric")).toBe("10\t2000\n20\t1000");
  });

  it.each([
    ["a line with one figure", "4 8200\n8", /Line 2/],
    ["a line with three", "4 8200 1", /Line 1/],
    ["words among figures", "4 8200\nfar 3600", /Line 2/],
    ["nought", "4 0", /over 0/],
    ["a minus", "-4 8200", /over 0/],
    ["one radius twice", "4 8200\n4 8000", /twice/],
    ["a load that grows", "4 8200\n8 9000", /grows/],
    ["nothing", "\n", /needed/],
  ])("is refused with %s", (_, text, why) => {
    const read = readChart(text, "metric");
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.text).toMatch(why);
  });
});
