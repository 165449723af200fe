const ISO_DAY = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Whether a text is a day that there is, as year-month-day. */
export function isIsoDay(text: string): boolean {
  const parts = ISO_DAY.exec(text);
  if (parts === null) return false;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const date = new Date(Date.UTC(year, month - 1, day));
  // A day that there is not, such as 31 June, rolls over into another month.
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

/** The day on this device, ISO 8601. */
export function todayIso(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
