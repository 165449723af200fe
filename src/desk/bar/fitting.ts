/**
 * How many of the bar's buttons fit into `room` px, counted from the first. When not all do, a menu
 * button `more` px wide must fit too. `gap` px lies before every button, that of the menu included.
 */
export function countFitting(
  widths: readonly number[],
  more: number,
  gap: number,
  room: number,
): number {
  const whole = widths.reduce((sum, width) => sum + gap + width, 0);
  if (whole <= room) return widths.length;
  let used = gap + more;
  const over = widths.findIndex((width) => {
    used += gap + width;
    return used > room;
  });
  return over === -1 ? widths.length : over;
}
