/** The day of an instant in words that cannot be read two ways, such as "27 November 2026", UTC. */
export function madeDay(madeAt: string): string {
  const when = new Date(madeAt);
  if (Number.isNaN(when.getTime())) return madeAt;
  return when.toLocaleDateString("en-GB", {
    ...{ day: "numeric", month: "long", year: "numeric", timeZone: "UTC" },
  });
}
