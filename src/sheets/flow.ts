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

/** Shares of the room's height that are tried for a sheet whose columns could end level. */
const LEVELS = [0.4, 0.5, 0.6, 0.7, 0.76, 0.82, 0.88, 0.94];

/**
 * The items down the columns of as many sheets as they take: the marks of each sheet. Where one
 * sheet is enough, its columns end about level.
 */
export function flowSheets(items: readonly FlowItem[], room: Room, columns: number): Mark[][] {
  const whole = flowWithin(items, room, columns);
  if (whole.length !== 1 || columns === 1) return whole;
  for (const share of LEVELS) {
    const level = flowWithin(items, { ...room, height: share * room.height }, columns);
    if (level.length === 1) return level;
  }
  return whole;
}

function flowWithin(items: readonly FlowItem[], room: Room, columns: number): Mark[][] {
  const step = columnWidth(room, columns) + GUTTER;
  const sheets: Mark[][] = [];
  let column = -1;
  let down = 0;
  const place = (item: FlowItem): void => {
    const left = room.left + (column % columns) * step;
    sheets.at(-1)!.push(...item.draw(left, room.top + down));
    down += item.height;
  };
  const nextColumn = (first: FlowItem): void => {
    column++;
    down = 0;
    if (column % columns === 0) sheets.push([]);
    for (const item of first.again ?? []) place(item);
  };
  for (const block of blocksOf(items)) {
    const [first] = block;
    if (first === undefined) continue;
    const height = block.reduce((sum, item) => sum + item.height, 0);
    if (column < 0 || first.breaks === true || (down > 0 && down + height > room.height + 1e-6)) {
      nextColumn(first);
    }
    for (const item of block) place(item);
  }
  return sheets;
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
