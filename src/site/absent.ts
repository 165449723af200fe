/** Fields of a record, each of which may be undefined to take it out. */
export type Changes<T> = { [K in keyof T]?: T[K] | undefined };

/** The same record without the fields that are undefined: they are absent, not empty. */
export function withoutAbsent<T extends object>(record: T): T {
  const kept = Object.entries(record).filter(([, value]) => value !== undefined);
  return Object.fromEntries(kept) as T;
}

/** The same record without one of its fields. */
export function without<T extends object, K extends keyof T & string>(
  record: T,
  key: K,
): Omit<T, K> {
  const kept = Object.entries(record).filter(([name]) => name !== key);
  return Object.fromEntries(kept) as Omit<T, K>;
}
