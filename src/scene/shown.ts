/** What of a site is drawn and picked: what is hidden is still counted, but not here. */
import type { Limit, Probe, Site, Work } from "../site/index.js";
import type { Selection } from "./props.js";

const isShown = (one: { hidden?: boolean | undefined }): boolean => one.hidden !== true;

/** Works that show. A strip over a work has no outline of its own to pick or drag: its work has. */
export function shownWorks(works: readonly Work[]): Work[] {
  return works.filter(
    (work) => isShown(work) && (work.kind !== "strip" || work.area.by === "outline"),
  );
}

export function shownProbes(site: Site): readonly Probe[] {
  return site.ground.probes.filter(isShown);
}

export function shownLimits(site: Site): readonly Limit[] {
  return (site.limits ?? []).filter(isShown);
}

/** Whether the thing is locked, as all is in a scene that is looked at only: then no drag moves it. */
export function isLocked(
  { site, works, fixed }: { site: Site; works: readonly Work[]; fixed?: boolean | undefined },
  { kind, id }: Selection,
): boolean {
  if (fixed === true) return true;
  const lists = { work: works, probe: site.ground.probes, limit: site.limits ?? [], point: [] };
  const list: readonly { id: string; locked?: boolean | undefined }[] = lists[kind];
  return list.find((one) => one.id === id)?.locked === true;
}

/** Whether the thing is among these. */
export function isAmong(things: readonly (Selection | null)[], { kind, id }: Selection): boolean {
  return things.some((one) => one !== null && one.kind === kind && one.id === id);
}

/** Ids of the chosen things of one kind. */
export function idsAmong(
  things: readonly (Selection | null)[],
  kind: Selection["kind"],
): ReadonlySet<string> {
  return new Set(things.flatMap((one) => (one?.kind === kind ? [one.id] : [])));
}
