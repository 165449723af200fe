/** A box on the screen, CSS px from the scene's top left. */
export interface ScreenBox {
  left: number;
  top: number;
  width: number;
  height: number;
}

/**
 * Which place each written height takes: the first of its seats (best first) that is wholly within
 * the bounds and clear of all that is `taken` and of the heights before it; null where none is, so
 * that it is left out and not cut or written over another. Pure.
 */
export function laySpots(
  spots: readonly (readonly ScreenBox[])[],
  taken: readonly ScreenBox[],
  bounds: ScreenBox,
): (number | null)[] {
  const full = [...taken];
  return spots.map((seats) => {
    const seat = seats.findIndex(
      (box) => within(box, bounds) && !full.some((other) => sharedArea(box, other) > 0),
    );
    const box = seats[seat];
    if (box === undefined) return null;
    full.push(box);
    return seat;
  });
}

/** px² that two boxes share. */
export function sharedArea(a: ScreenBox, b: ScreenBox): number {
  const across = Math.min(a.left + a.width, b.left + b.width) - Math.max(a.left, b.left);
  const down = Math.min(a.top + a.height, b.top + b.height) - Math.max(a.top, b.top);
  return across > 0 && down > 0 ? across * down : 0;
}

/** The smallest box that holds all the places; null for none. */
export function boxAround(
  places: readonly ({ left: number; top: number } | null)[],
): ScreenBox | null {
  const seen = places.filter((place) => place !== null);
  if (seen.length === 0) return null;
  const left = Math.min(...seen.map((place) => place.left));
  const top = Math.min(...seen.map((place) => place.top));
  const width = Math.max(...seen.map((place) => place.left)) - left;
  return { left, top, width, height: Math.max(...seen.map((place) => place.top)) - top };
}

function within(box: ScreenBox, bounds: ScreenBox): boolean {
  return (
    box.left >= bounds.left &&
    box.top >= bounds.top &&
    box.left + box.width <= bounds.left + bounds.width &&
    box.top + box.height <= bounds.top + bounds.height
  );
}
