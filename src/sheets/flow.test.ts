import { describe, expect, it } from "vitest";
import { flowSheets, type FlowItem } from "./flow.js";
import type { Mark, TextMark } from "./paper.js";
import { tableItems } from "./table.js";

const ROOM = { left: 10, top: 20, width: 200, height: 60 };

const textsOf = (marks: readonly Mark[]): TextMark[] =>
  marks.flatMap((mark) =>
    mark.kind === "text" ? [mark] : mark.kind === "group" ? textsOf(mark.marks) : [],
  );

const item = (text: string, more: Partial<FlowItem> = {}): FlowItem => ({
  height: 10,
  draw: (left, top) => [
    { kind: "text", at: [left, top], text, face: "text", size: 2, anchor: "start" },
  ],
  ...more,
});

describe("a flow", () => {
  it("fills column by column, sheet by sheet, and loses nothing", () => {
    const names = Array.from({ length: 15 }, (_each, i) => `item ${i}`);
    const items = (count: number): FlowItem[] => names.slice(0, count).map((name) => item(name));
    const sheets = flowSheets(items(15), ROOM, 2);
    expect(sheets.map((marks) => textsOf(marks).length)).toEqual([12, 3]);
    expect(
      flowSheets(items(4), ROOM, 2).map((marks) => textsOf(marks).map(({ at }) => at[1])),
    ).toEqual([[20, 30, 20, 30]]);
    expect(sheets.flatMap((marks) => textsOf(marks).map(({ text }) => text))).toEqual(names);
  });

  it("lets the columns of the last sheet end level, with the table's head on each", () => {
    const head = item("head");
    const rows = Array.from({ length: 16 }, (_each, i) => item(`row ${i}`, { again: [head] }));
    const last = textsOf(flowSheets([head, ...rows], ROOM, 2).at(-1)!);
    const downEach = [...new Set(last.map(({ at }) => at[0]))].map((x) =>
      last.filter(({ at }) => at[0] === x).map(({ text }) => text),
    );
    // 6 a column: head and 11 rows (a second head) on the first sheet, 6 rows on the last.
    expect(downEach).toEqual([
      ["head", "row 10", "row 11", "row 12"],
      ["head", "row 13", "row 14", "row 15"],
    ]);
  });

  it("takes a heading along to what it heads", () => {
    const items = [
      ...["a", "b", "c", "d", "e"].map((name) => item(name)),
      item("head", { tied: true }),
      item("row"),
    ];
    const sheets = flowSheets(items, ROOM, 2);
    const head = textsOf(sheets[0]!).find(({ text }) => text === "head");
    const row = textsOf(sheets[0]!).find(({ text }) => text === "row");
    expect(row?.at).toEqual([head?.at[0], (head?.at[1] ?? 0) + 10]);
  });
});

describe("a table", () => {
  const table = {
    title: "Quantities",
    columns: [{ head: "What" }, { head: "Bank", figures: true }],
    rows: Array.from({ length: 40 }, (_each, i) => ({ cells: [`row ${i}`, `${i}.0 yd³`] })),
  };

  it("says its title and heads again where it goes on", () => {
    const sheets = flowSheets(tableItems(table, 2.4, 96), ROOM, 2);
    const all = sheets.map((marks) => textsOf(marks).map(({ text }) => text));
    const flat = all.flat();
    expect(flat.filter((text) => text === "Quantities")).toHaveLength(1);
    const again = flat.filter((text) => text === "Quantities, continued").length;
    expect(again).toBeGreaterThan(1);
    expect(flat.filter((text) => text === "Bank")).toHaveLength(again + 1);
    expect(flat.filter((text) => text.startsWith("row "))).toHaveLength(40);
  });

  it("keeps within the room, and sets figures to the right", () => {
    for (const marks of flowSheets(tableItems(table, 2.4, 96), ROOM, 2)) {
      for (const { at, text, anchor } of textsOf(marks)) {
        expect(at[1]).toBeGreaterThan(20);
        expect(at[1]).toBeLessThan(80);
        if (text.endsWith("yd³")) expect(anchor).toBe("end");
      }
    }
  });

  it("stays whole when it is short", () => {
    const short = { ...table, rows: table.rows.slice(0, 5) };
    const before = Array.from({ length: 4 }, (_each, i) => item(`before ${i}`));
    const sheets = flowSheets([...before, ...tableItems(short, 2.4, 96)], ROOM, 2);
    const rows = textsOf(sheets[0]!).filter(({ text }) => text.startsWith("row "));
    expect(new Set(rows.map(({ at }) => at[0])).size).toBe(1);
  });
});
