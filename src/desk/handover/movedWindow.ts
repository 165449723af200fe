/** What a plan shows: what is in its middle, m, and n of 1 : n; north is up. */
export interface SheetWindow {
  middle: readonly [number, number];
  scale: number;
}

/** The window after its drawing was moved so many mm to the right and down on the paper. */
export function movedWindow(
  { middle, scale }: SheetWindow,
  [right, down]: readonly [number, number],
): SheetWindow {
  const metres = scale / 1000;
  return { middle: [middle[0] - right * metres, middle[1] + down * metres], scale };
}
