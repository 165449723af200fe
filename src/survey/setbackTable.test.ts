import { describe, expect, it } from "vitest";
import { LIMIT_KINDS, type Setback } from "../site/index.js";
import { joinSetbacks, leftOut, readSetbacks } from "./setbackTable.js";

describe("a pasted table of setbacks", () => {
  it("is read by commas, tabs or semicolons, with or without a head", () => {
    const lines = ["part,to,distance,source", "tank,well,50 ft,Code 1", "Drain field,lot line,10,"];
    for (const mark of [",", "\t", ";"]) {
      const text = lines.map((line) => line.replaceAll(",", mark)).join("\n");
      const { rows, problems } = readSetbacks(text, "us", "mine");
      expect(problems).toEqual([]);
      expect(rows).toEqual([
        { from: "tank", to: "well", distance: 50 * 0.3048, source: "Code 1" },
        {
          from: "field",
          to: "lot-line",
          distance: expect.closeTo(3.048, 9) as number,
          source: "mine",
        },
      ]);
    }
  });

  it("takes bare figures as metres on a metric site, and commas within the source", () => {
    const { rows } = readSetbacks("pipe, water line, 3, Code 1, section 2", "metric", "mine");
    expect(rows).toEqual([
      { from: "pipe", to: "water-line", distance: 3, source: "Code 1, section 2" },
    ]);
  });

  it("knows every kind by its name and its id", () => {
    for (const { id, name } of LIMIT_KINDS) {
      for (const word of [id, name]) {
        expect(readSetbacks(`tank, ${word}, 5`, "us", "x").rows).toMatchObject([{ to: id }]);
      }
    }
  });

  it.each([
    ["roof, well, 5", "no part"],
    ["trench, well, 5", "field (where the water soaks away)"],
    ["tank, moon, 5", "no kind"],
    ["tank well 5", "one column"],
    ["tank, well, far 1", "no distance"],
    ["tank, well, -5", "no distance"],
    ["tank, building, 6\ntank, house, 7", "already"],
  ])("%s is told with its line", (text, what) => {
    const { problems } = readSetbacks(`field, spring, 5\n${text}`, "us", "x");
    expect(problems).toHaveLength(1);
    expect(problems[0]!.line).toBe(text.includes("\n") ? 3 : 2);
    expect(problems[0]!.text).toContain(what);
  });
});

describe("pasted rows and the table that stands", () => {
  const table: Setback[] = [
    { from: "field", to: "well", distance: 30, source: "state" },
    { from: "tank", to: "well", distance: 15, source: "state" },
    { from: "tank", to: "spring", distance: 0, source: "state" },
  ];
  const pasted: Setback[] = [
    { from: "tank", to: "well", distance: 23, source: "county" },
    { from: "field", to: "ditch", distance: 9, source: "county" },
  ];

  it("are joined pair by pair, and what is not pasted stays", () => {
    expect(joinSetbacks(table, pasted)).toEqual([table[0], pasted[0], table[2], pasted[1]]);
    expect(leftOut(table, joinSetbacks(table, pasted))).toEqual([]);
  });

  it("alone leave out what only the table asks, a pasted 0 too", () => {
    expect(leftOut(table, pasted)).toEqual([table[0]]);
    expect(leftOut(table, [...pasted, { ...table[0]!, distance: 0 }])).toEqual([table[0]]);
  });
});
