import type { Thing } from "./marks.js";
import type { Site } from "./schema.js";

/** What an id of the file stands for, as a person sees it. */
export interface NamedThing extends Thing {
  /** What a person calls it. */
  name: string;
  /** The pipe meant, when the id is a pipe's: the thing is then its trench. */
  pipe: string | null;
}

/** The thing that an id stands for in a scheme of the site; null for the site as a whole. */
export function thingNamed(site: Site, schemeId: string, id: string): NamedThing | null {
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const work = works.find((one) => one.id === id);
  if (work !== undefined) return { kind: "work", id, name: work.name, pipe: null };
  for (const trench of works) {
    if (trench.kind !== "trench") continue;
    const pipe = trench.pipes.find((one) => one.id === id);
    if (pipe !== undefined) return { kind: "work", id: trench.id, name: pipe.name, pipe: id };
  }
  if (site.ground.probes.some((probe) => probe.id === id)) {
    return { kind: "probe", id, name: id, pipe: null };
  }
  const limit = site.limits?.find((one) => one.id === id);
  if (limit !== undefined) {
    return { kind: "limit", id, name: limit.name ?? limit.kind, pipe: null };
  }
  if (id !== "site" && site.survey.points.some((point) => point.id === id)) {
    return { kind: "point", id, name: id, pipe: null };
  }
  return null;
}
