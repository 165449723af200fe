/** What people call the things that a finding may be about. */
import { words } from "../../words/index.js";
import type { SheetJob } from "../paper.js";

/** The name of a work, pipe or limit; the id of what has none; "the site" for the whole. */
export function nameOfPlace({ site, schemeId }: SheetJob, id: string): string {
  if (id === "site") return words.sheetsFront.wholeSite;
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const named = [
    ...works,
    ...works.flatMap((work) => (work.kind === "trench" ? work.pipes : [])),
    ...(site.limits ?? []),
  ].find((each) => each.id === id);
  return named?.name ?? id;
}
