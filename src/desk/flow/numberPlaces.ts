/**
 * Numbers kept apart, in order and as near to their places as may be. More than fit in one row go to
 * several by turns, and stand so that a line from an upper row comes down between those of a lower.
 */
export function numberPlaces(
  wanted: readonly number[],
  apart: number,
  low: number,
  high: number,
): { x: number; row: number }[] {
  const rows = Math.max(1, Math.ceil(((wanted.length - 1) * apart) / (high - low)));
  const step = apart / rows;
  const placed = wanted.map((x, i) => ({ x: Math.max(low, x), row: i % rows }));
  placed.forEach((one, i) => {
    if (i > 0) one.x = Math.max(one.x, placed[i - 1]!.x + step);
  });
  for (let i = placed.length - 1; i >= 0; i -= 1) {
    const limit = i + 1 < placed.length ? placed[i + 1]!.x - step : high;
    placed[i]!.x = Math.min(placed[i]!.x, limit);
  }
  return placed;
}
