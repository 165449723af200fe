/** Texts and tables that run down columns, and on to further sheets where they are long. */
import type { Mark, Room } from "./paper.js";

/** A piece of a column that is not parted: a line of a table, a paragraph, a picture. */
export interface FlowItem {
  /** mm. */
  height: number;
  /** Marks with the item's upper left corner at a place. */
  draw: (left: number, top: number) => readonly Mark[];
  /** Does not stand last in a column: it goes with the item after it. */
  tied?: boolean;
  /** Begins a new column. */
  breaks?: boolean;
  /** Stands on top again where a column begins with this item: the head of its table. */
  again?: readonly FlowItem[];
}

/** Between columns, mm. */
export const GUTTER = 7;

/** Width of each of so many columns in a room, mm. */
export function columnWidth(room: Room, columns: number): number {
  return (room.width - GUTTER * (columns - 1)) / columns;
}

/** Shares of the room's height that are tried for the last sheet, whose columns could end level. */
const LEVELS = [0.4, 0.5, 0.6, 0.7, 0.76, 0.82, 0.88, 0.94];

/**
 * The items down the columns of as many sheets as they take: the marks of each sheet. The columns of
 * the last sheet end about level.
 */
export function flowSheets(items: readonly FlowItem[], room: Room, columns: number): Mark[][] {
  const { sheets, lastBegins } = flowWithin(blocksOf(items), room, columns);
  const last = blocksOf(items).slice(lastBegins);
  if (columns === 1 || last.length === 0) return sheets;
  for (const share of LEVELS) {
    const level = flowWithin(last, { ...room, height: share * room.height }, columns).sheets;
    if (level.length === 1) return [...sheets.slice(0, -1), ...level];
  }
  return sheets;
}

/** The sheets, and the place of the block that the last of them begins with. */
function flowWithin(
  blocks: readonly FlowItem[][],
  room: Room,
  columns: number,
): { sheets: Mark[][]; lastBegins: number } {
  const step = columnWidth(room, columns) + GUTTER;
  const sheets: Mark[][] = [];
  let column = -1;
  let down = 0;
  let lastBegins = 0;
  const place = (item: FlowItem): void => {
    const left = room.left + (column % columns) * step;
    sheets.at(-1)!.push(...item.draw(left, room.top + down));
    down += item.height;
  };
  const nextColumn = (first: FlowItem, index: number): void => {
    column++;
    down = 0;
    if (column % columns === 0) {
      sheets.push([]);
      lastBegins = index;
    }
    for (const item of first.again ?? []) place(item);
  };
  for (const [index, block] of blocks.entries()) {
    const first = block[0]!;
    const height = block.reduce((sum, item) => sum + item.height, 0);
    if (column < 0 || first.breaks === true || (down > 0 && down + height > room.height + 1e-6)) {
      nextColumn(first, index);
    }
    for (const item of block) place(item);
  }
  return { sheets, lastBegins };
}

/** Items that are tied together, as one. */
function blocksOf(items: readonly FlowItem[]): FlowItem[][] {
  const blocks: FlowItem[][] = [];
  let block: FlowItem[] = [];
  for (const item of items) {
    block.push(item);
    if (item.tied !== true) {
      blocks.push(block);
      block = [];
    }
  }
  return block.length > 0 ? [...blocks, block] : blocks;
}
