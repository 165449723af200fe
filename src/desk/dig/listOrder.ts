/**
 * The place in the list of the row taken from place `from` when it is let go at height `at`: after the
 * rows whose middles lie above it. Heights in px, downwards.
 */
export function placeInList(middles: readonly number[], from: number, at: number): number {
  return middles.filter((middle, index) => index !== from && middle < at).length;
}

/** Where the line that shows the place is drawn: on which side of which row; null where it came from. */
export function dropLine(
  from: number,
  to: number,
): { row: number; side: "above" | "below" } | null {
  if (from === to) return null;
  return { row: to, side: to < from ? "above" : "below" };
}
