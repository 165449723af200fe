/** Drawings on one sheet in their order: in rows, or in columns. */

export interface Size {
  /** mm. */
  width: number;
  height: number;
}

/** Upper left corners of drawings set in rows in their order, mm; null when they do not all fit. */
export function shelved(
  sizes: readonly Size[],
  room: Size,
  gap: number,
): (readonly [number, number])[] | null {
  const places: (readonly [number, number])[] = [];
  let [x, y, row] = [0, 0, 0];
  for (const { width, height } of sizes) {
    if (x > 0 && x + width > room.width + 1e-9) [x, y, row] = [0, y + row + gap, 0];
    if (x + width > room.width + 1e-9 || y + height > room.height + 1e-9) return null;
    places.push([x, y]);
    x += width + gap;
    row = Math.max(row, height);
  }
  return places;
}

/** The same in columns from the left, each as wide as what is in it; null when they do not all fit. */
export function inColumns(
  sizes: readonly Size[],
  room: Size,
  gap: number,
): (readonly [number, number])[] | null {
  const turned = sizes.map(({ width, height }): Size => ({ width: height, height: width }));
  const places = shelved(turned, { width: room.height, height: room.width }, gap);
  return places?.map(([down, across]) => [across, down] as const) ?? null;
}
