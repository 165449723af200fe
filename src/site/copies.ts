/** Copies of works: beside their originals, or in another scheme. */
import { changeWorks, freshId, workMovedBy } from "./edits.js";
import { unmarked } from "./marks.js";
import type { PlanPoint, Site, Work } from "./schema.js";

/** A site with copies in it, and their ids in the order of the originals. */
export interface Copied {
  site: Site;
  copies: readonly string[];
}

/** The name counted on to the first that is free: "Tank 1" gives "Tank 2", "Pad" gives "Pad 2". */
export function freshName(name: string, taken: ReadonlySet<string>): string {
  const stem = name.replace(/\s+\d+$/, "");
  const number = Number(/\s(\d+)$/.exec(name)?.[1] ?? 1);
  let count = number + 1;
  while (taken.has(`${stem} ${count}`)) count += 1;
  return `${stem} ${count}`;
}

/**
 * Copies of these works, moved by `by` (m east and north), with ids that the site lacks, neither
 * locked nor hidden; `free` keeps a name that is not taken. A strip over a work goes over that work's
 * copy; without one it is left out, since a second strip there would find nothing to take.
 */
function copiesOf(
  site: Site,
  works: readonly Work[],
  by: PlanPoint,
  nameFor: (name: string) => string,
): { of: string; copy: Work }[] {
  const given: string[] = [];
  const fresh = (prefix: string): string => {
    const id = freshId(site, prefix, given);
    given.push(id);
    return id;
  };
  const ids = new Map(works.map((work) => [work.id, fresh(work.kind)]));
  return works.flatMap((work) => {
    const id = ids.get(work.id) ?? fresh(work.kind);
    const under = work.kind === "strip" && work.area.by === "work" ? work.area.work : null;
    if (under !== null && !ids.has(under)) return [];
    const copy: Work = { ...workMovedBy(unmarked(work), by), id, name: nameFor(work.name) };
    if (copy.kind === "trench") {
      copy.pipes = copy.pipes.map((pipe) => ({ ...pipe, id: fresh("pipe") }));
    }
    if (copy.kind === "strip" && copy.area.by === "work") {
      copy.area = { ...copy.area, work: ids.get(copy.area.work) ?? copy.area.work };
    }
    return [{ of: work.id, copy }];
  });
}

/**
 * Copies these works beside themselves, `by` metres east and north, each right after its original in
 * building order, with names that the scheme lacks.
 */
export function duplicateWorks(
  site: Site,
  schemeId: string,
  workIds: readonly string[],
  by: PlanPoint,
): Copied {
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const taken = new Set(works.map((work) => work.name));
  const nameFor = (name: string): string => {
    const fresh = freshName(name, taken);
    taken.add(fresh);
    return fresh;
  };
  const chosen = works.filter((work) => workIds.includes(work.id));
  const made = copiesOf(site, chosen, by, nameFor);
  if (made.length === 0) return { site, copies: [] };
  const next = changeWorks(site, schemeId, (list) =>
    list.flatMap((work) => [work, ...made.filter(({ of }) => of === work.id).map((m) => m.copy)]),
  );
  return { site: next, copies: made.map(({ copy }) => copy.id) };
}

/** Copies one work beside itself; the same site when it cannot be copied. */
export function duplicateWork(site: Site, schemeId: string, workId: string, by: PlanPoint): Site {
  return duplicateWorks(site, schemeId, [workId], by).site;
}

/**
 * Copies these works to the end of another scheme, at the same places; a name is kept unless that
 * scheme has it already.
 */
export function copyWorksTo(
  site: Site,
  schemeId: string,
  workIds: readonly string[],
  toScheme: string,
): Copied {
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const target = site.schemes.find((scheme) => scheme.id === toScheme);
  const chosen = works.filter((work) => workIds.includes(work.id));
  if (target === undefined || chosen.length === 0) return { site, copies: [] };
  const taken = new Set(target.works.map((work) => work.name));
  const nameFor = (name: string): string => {
    const free = taken.has(name) ? freshName(name, taken) : name;
    taken.add(free);
    return free;
  };
  const made = copiesOf(site, chosen, [0, 0], nameFor).map(({ copy }) => copy);
  if (made.length === 0) return { site, copies: [] };
  return {
    site: changeWorks(site, toScheme, (list) => [...list, ...made]),
    copies: made.map((copy) => copy.id),
  };
}
