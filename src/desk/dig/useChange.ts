import { changeWork } from "../../site/index.js";
import type { Work } from "../../site/index.js";
import { useEdit, useSite } from "../useSite.js";

/** The same record without the fields that are undefined: they are absent, not empty. */
export function withoutAbsent<T extends object>(record: T): T {
  const kept = Object.entries(record).filter(([, value]) => value !== undefined);
  return Object.fromEntries(kept) as T;
}

/** Makes one named edit of this work; a field given as undefined is taken out. */
export function useChange<W extends Work>(work: W): (what: string, next: Partial<W>) => void {
  const { schemeId } = useSite();
  const edit = useEdit();
  return (what, next) =>
    edit(`${what} of ${work.name}`, (site) =>
      changeWork(site, schemeId, work.id, (now) => withoutAbsent({ ...now, ...next })),
    );
}
