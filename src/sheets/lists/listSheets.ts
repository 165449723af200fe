/** Sheets that hold nothing but texts and tables. */
import { words } from "../../words/index.js";
import { columnWidth, flowSheets, type FlowItem } from "../flow.js";
import type { Room, RoomOf, SheetContent, SheetJob } from "../paper.js";
import { bodySize, proseColumns, proseItem } from "../prose.js";
import { ROOMY, tableItems, TIGHT, type Table } from "../table.js";

/** What stands on a list sheet: tables, and paragraphs between them. */
export type ListPart = Table | string;

/**
 * The parts down the columns of as few sheets as they can be set on, of the numbers of columns that
 * may be taken the first that does, and with roomy rows where that needs no sheet more. The first
 * sheet has the plain id, those after it "id-2" and so on.
 */
export function listSheets(
  { paper }: SheetJob,
  room: RoomOf,
  id: string,
  title: string,
  parts: readonly ListPart[],
  choices: readonly number[] = [proseColumns(paper)],
): SheetContent[] {
  const space = room([]);
  const size = bodySize(paper);
  const settings = choices.flatMap((columns) => [ROOMY, TIGHT].map((pad) => ({ pad, columns })));
  const tried = settings.map(({ pad, columns }) => {
    const width = columnWidth(space, columns);
    const items = parts.flatMap((part) =>
      typeof part === "string"
        ? [proseItem(part, size, width)]
        : tableItems(part, size, width, pad),
    );
    return flowContents(id, title, items, space, columns);
  });
  return tried.reduce((best, sheets) => (sheets.length < best.length ? sheets : best));
}

/** Items of a flow as sheets that hold no drawing. */
export function flowContents(
  id: string,
  title: string,
  items: readonly FlowItem[],
  space: Room,
  columns: number,
): SheetContent[] {
  return flowSheets(items, space, columns).map((marks, i): SheetContent => ({
    id: i === 0 ? id : `${id}-${i + 1}`,
    // A table is not printed by halves.
    of: [id],
    title: i === 0 ? title : words.sheets.goesOn(title),
    scale: "text",
    north: null,
    marks: [{ kind: "group", layer: title, marks }],
    legend: [],
  }));
}
