/**
 * Locking and hiding. Both are marks in the file and change no figure: what is hidden is still
 * counted, and what is locked is only kept from the hand.
 */
import { without } from "./absent.js";
import { changeLimit, changeProbe, changeWork } from "./edits.js";
import type { Limit, Probe, Scheme, Site, Work } from "./schema.js";

/** A thing on the site that can be picked. */
export interface Thing {
  kind: "work" | "probe" | "point" | "limit";
  id: string;
}

export type Mark = "locked" | "hidden";

type Marked = Work | Probe | Limit;

/** What carries the marks; null for a survey point, and for what is not there. */
function markedThing(site: Site, schemeId: string, { kind, id }: Thing): Marked | null {
  const byId = (one: { id: string }): boolean => one.id === id;
  switch (kind) {
    case "work":
      return site.schemes.find((one) => one.id === schemeId)?.works.find(byId) ?? null;
    case "probe":
      return site.ground.probes.find(byId) ?? null;
    case "limit":
      return site.limits?.find(byId) ?? null;
    case "point":
      return null;
  }
}

/** Whether the thing carries the mark. */
export function hasMark(site: Site, schemeId: string, thing: Thing, mark: Mark): boolean {
  return markedThing(site, schemeId, thing)?.[mark] === true;
}

function withMark<T extends Marked>(one: T, mark: Mark, on: boolean): T {
  if ((one[mark] === true) === on) return one;
  return on ? { ...one, [mark]: true } : (without(one, mark) as T);
}

/** The work free and shown. */
export function unmarked(work: Work): Work {
  return withMark(withMark(work, "locked", false), "hidden", false);
}

/** Puts a mark on these things, or takes it off; a survey point has none. */
export function setMark(
  site: Site,
  schemeId: string,
  things: readonly Thing[],
  mark: Mark,
  on: boolean,
): Site {
  return things.reduce((now, { kind, id }): Site => {
    switch (kind) {
      case "work":
        return changeWork(now, schemeId, id, (work) => withMark(work, mark, on));
      case "probe":
        return changeProbe(now, id, (probe) => withMark(probe, mark, on));
      case "limit":
        return changeLimit(now, id, (limit) => withMark(limit, mark, on));
      case "point":
        return now;
    }
  }, site);
}

/** Everything of a scheme and its ground that is hidden. */
export function hiddenThings(site: Site, schemeId: string): Thing[] {
  const works = site.schemes.find((one) => one.id === schemeId)?.works ?? [];
  const among = (kind: Thing["kind"], list: readonly Marked[]): Thing[] =>
    list.filter((one) => one.hidden === true).map(({ id }) => ({ kind, id }));
  return [
    ...among("work", works),
    ...among("probe", site.ground.probes),
    ...among("limit", site.limits ?? []),
  ];
}

/** Shows everything again. */
export function showAll(site: Site, schemeId: string): Site {
  return setMark(site, schemeId, hiddenThings(site, schemeId), "hidden", false);
}

/** Fields of a locked work that may change all the same. */
const FREE_FIELDS: ReadonlySet<string> = new Set(["name", "locked", "hidden"]);

function isChanged(before: Work, after: Work | undefined): boolean {
  if (after === before) return false;
  if (after === undefined) return true;
  const [was, is] = [before, after].map(
    (work) => new Map(Object.entries(work).filter(([key]) => !FREE_FIELDS.has(key))),
  );
  const keys = new Set([...(was?.keys() ?? []), ...(is?.keys() ?? [])]);
  return [...keys].some((key) => was?.get(key) !== is?.get(key));
}

function worksBroken(before: Scheme, after: Scheme | undefined): string[] {
  // A whole scheme that goes takes its works along: that is no edit of a work.
  if (after === undefined || after.works === before.works) return [];
  const now = new Map(after.works.map((work) => [work.id, work]));
  return before.works
    .filter((work) => work.locked === true && isChanged(work, now.get(work.id)))
    .map((work) => work.name);
}

/**
 * Names of the locked things that an edit would change or take away: a work in any field but its name
 * and marks, a probe or a limit in its place. The edit of a probe's layers is one of the ground.
 */
export function locksBroken(before: Site, after: Site): string[] {
  const schemes = new Map(after.schemes.map((scheme) => [scheme.id, scheme]));
  const works = before.schemes.flatMap((scheme) => worksBroken(scheme, schemes.get(scheme.id)));
  if (before.ground.probes === after.ground.probes && before.limits === after.limits) return works;
  const probes = new Map(after.ground.probes.map((probe) => [probe.id, probe]));
  const limits = new Map((after.limits ?? []).map((limit) => [limit.id, limit]));
  const movedProbes = before.ground.probes.filter((probe) => {
    const now = probes.get(probe.id);
    return probe.locked === true && (now === undefined || now.x !== probe.x || now.y !== probe.y);
  });
  const movedLimits = (before.limits ?? []).filter((limit) => {
    const now = limits.get(limit.id);
    return (
      limit.locked === true && (now === undefined || now.at !== limit.at || now.path !== limit.path)
    );
  });
  return [
    ...works,
    ...movedProbes.map(({ id }) => id),
    ...movedLimits.map(({ name, kind }) => name ?? kind),
  ];
}
