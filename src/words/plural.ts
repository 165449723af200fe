/** The form of a noun that goes with a count; the only choice that a text makes by itself. */
export const plural = (count: number, one: string, many: string): string =>
  count === 1 ? one : many;
