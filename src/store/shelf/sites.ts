/** Reading and writing the sites that this browser keeps. Every function is one transaction. */
import type { IDBPTransaction } from "idb";
import type { History } from "../../site/index.js";
import type { KeptHistory, ShelfBase, ShelfFigures, ShelfHead, ShelfSchema } from "./base.js";
import { freshKey } from "./names.js";

/** A site as it is kept: its file's text, or all of it but the points of a large survey. */
export interface KeptSite {
  head: ShelfHead;
  text: string;
  /** The points of a large survey as JSON, kept apart so that an edit need not write them again. */
  points: Blob | null;
  history: History | null;
}

/** What a page wants kept of a site. */
export interface ToKeep {
  id: string;
  /** The revision that the page has read or written; 0 for a site that is not on the list yet. */
  revision: number;
  name: string;
  /** ms since 1970; null leaves it as it was (only the way of looking changed). */
  changed: number | null;
  schemeId: string;
  figures: ShelfFigures | null;
  text: string;
  points: { stamp: string; points: Blob } | null;
  /** The last steps; null when they are not kept. */
  history: History | null;
}

/** Someone else wrote the site, or deleted it, since this page read it. */
export class ShelfConflict extends Error {
  override name = "ShelfConflict";
}

/** The parts of a site file have gone apart: its points are not where the text says. */
export class PointsMissing extends Error {
  override name = "PointsMissing";
}

type Stores = ("sites" | "texts" | "pictures" | "histories" | "points" | "desk")[];
type Change = IDBPTransaction<ShelfSchema, Stores, "readwrite">;

const ALL: Stores = ["sites", "texts", "pictures", "histories", "points", "desk"];

/** Points that no site has any more are let go. */
async function dropPoints(change: Change, stamp: string | null): Promise<void> {
  if (stamp === null) return;
  const users = await change.objectStore("sites").index("stamp").count(stamp);
  if (users === 0) await change.objectStore("points").delete(stamp);
}

/** Runs `work` in one transaction: all of it happens, or nothing. */
async function changing<T>(base: ShelfBase, work: (change: Change) => Promise<T>): Promise<T> {
  const change = base.transaction(ALL, "readwrite");
  // Taken up at once, or a fault before it is awaited would count as nobody's.
  const done = change.done.then(
    () => null,
    (fault: unknown) => fault,
  );
  try {
    const result = await work(change);
    const trouble = await done;
    if (trouble !== null) throw trouble as Error;
    return result;
  } catch (fault) {
    giveUp(change);
    const why = await done;
    // Of a full disk the transaction tells; the request that it took down tells less.
    throw isFull(why) ? why : fault;
  }
}

function giveUp(change: Change): void {
  try {
    change.abort();
  } catch (fault) {
    const isOver = fault instanceof Error && fault.name === "InvalidStateError";
    if (!isOver) throw fault;
  }
}

/** Whether a fault is the browser's that it has no more room for us. */
export function isFull(fault: unknown): fault is DOMException {
  return fault instanceof Error && fault.name === "QuotaExceededError";
}

/**
 * Keeps a site and gives its new revision. Rejects with `ShelfConflict` when the kept one is not
 * the one that the page has read; nothing is written then.
 */
export function keepSite(base: ShelfBase, site: ToKeep): Promise<number> {
  return changing(base, async (change) => {
    const heads = change.objectStore("sites");
    const there = await heads.get(site.id);
    const known = there === undefined || there.removed !== undefined ? 0 : there.revision;
    if (known !== site.revision) {
      throw new ShelfConflict(`expected revision ${site.revision} of the site, got ${known}`);
    }
    const revision = known + 1;
    const stamp = site.points?.stamp ?? null;
    await heads.put({
      id: site.id,
      name: site.name,
      changed: site.changed ?? there?.changed ?? Date.now(),
      revision,
      schemeId: site.schemeId,
      stamp,
      figures: site.figures ?? there?.figures ?? null,
    });
    await change.objectStore("texts").put(site.text, site.id);
    if (site.points !== null && there?.stamp !== stamp) {
      const points = change.objectStore("points");
      if ((await points.count(site.points.stamp)) === 0) {
        await points.put(site.points.points, site.points.stamp);
      }
    }
    const histories = change.objectStore("histories");
    if (site.history === null) await histories.delete(site.id);
    else await histories.put({ revision, history: site.history }, site.id);
    if (there !== undefined && there.stamp !== stamp) await dropPoints(change, there.stamp);
    return revision;
  });
}

/** One site, or null when it is not there. Rejects when its points are missing. */
export async function readKeptSite(base: ShelfBase, id: string): Promise<KeptSite | null> {
  const change = base.transaction(["sites", "texts", "points", "histories"]);
  const head = await change.objectStore("sites").get(id);
  const text = await change.objectStore("texts").get(id);
  if (head === undefined || head.removed !== undefined || text === undefined) return null;
  const points =
    head.stamp === null ? null : ((await change.objectStore("points").get(head.stamp)) ?? null);
  if (head.stamp !== null && points === null) {
    throw new PointsMissing("its survey points are missing");
  }
  const kept: KeptHistory | undefined = await change.objectStore("histories").get(id);
  const history = kept?.revision === head.revision ? kept.history : null;
  return { head, text, points, history };
}

/** The sites on the list, the one changed last first. */
export async function listHeads(base: ShelfBase): Promise<ShelfHead[]> {
  const heads = await base.getAll("sites");
  return heads
    .filter((head) => head.removed === undefined)
    .sort((a, b) => b.changed - a.changed || a.name.localeCompare(b.name));
}

/** The small pictures there are, by the site's id. */
export async function listPictures(base: ShelfBase): Promise<Map<string, Blob>> {
  const change = base.transaction("pictures");
  const [ids, pictures] = await Promise.all([change.store.getAllKeys(), change.store.getAll()]);
  return new Map(ids.map((id, at) => [id, pictures[at]!]));
}

/** Keeps a small picture of a site that is on the list. */
export function keepPicture(base: ShelfBase, id: string, picture: Blob): Promise<void> {
  return changing(base, async (change) => {
    if ((await change.objectStore("sites").count(id)) === 0) return;
    await change.objectStore("pictures").put(picture, id);
  });
}

/** The id of a site that is kept with this very text and no points apart, or null. */
export async function sameSite(
  base: ShelfBase,
  name: string,
  text: string,
): Promise<string | null> {
  const change = base.transaction(["sites", "texts"]);
  for (const head of await change.objectStore("sites").getAll()) {
    if (head.name !== name || head.stamp !== null || head.removed !== undefined) continue;
    if ((await change.objectStore("texts").get(head.id)) === text) return head.id;
  }
  return null;
}

/** Puts a copy of a site on the list, without its history, and gives the copy's id. */
export function copySite(
  base: ShelfBase,
  id: string,
  name: string,
  named: (text: string) => string,
): Promise<string> {
  return changing(base, async (change) => {
    const head = await change.objectStore("sites").get(id);
    const text = await change.objectStore("texts").get(id);
    if (head === undefined || text === undefined) throw new ShelfConflict("the site is gone");
    const copy = freshKey();
    await change
      .objectStore("sites")
      .put({ ...head, id: copy, name, revision: 1, changed: Date.now() });
    await change.objectStore("texts").put(named(text), copy);
    const picture = await change.objectStore("pictures").get(id);
    if (picture !== undefined) await change.objectStore("pictures").put(picture, copy);
    return copy;
  });
}

/**
 * Gives a site another name. `named` makes the text with the new name in it, `stepped` the history
 * with the renaming as one more step (null when there is none).
 */
export function renameKept(
  base: ShelfBase,
  id: string,
  name: string,
  how: { named: (text: string) => string; stepped: (history: History) => History },
): Promise<void> {
  return changing(base, async (change) => {
    const head = await change.objectStore("sites").get(id);
    const text = await change.objectStore("texts").get(id);
    if (head === undefined || text === undefined) throw new ShelfConflict("the site is gone");
    const revision = head.revision + 1;
    await change.objectStore("sites").put({ ...head, name, revision, changed: Date.now() });
    await change.objectStore("texts").put(how.named(text), id);
    const kept = await change.objectStore("histories").get(id);
    if (kept?.revision === head.revision) {
      await change
        .objectStore("histories")
        .put({ revision, history: how.stepped(kept.history) }, id);
    }
  });
}

/** Takes a site off the list; `restoreSite` brings it back until `purgeSite` deletes it. */
export function removeSite(base: ShelfBase, id: string): Promise<void> {
  return marked(base, id, Date.now());
}

/** Puts a site that was taken off the list back on it. */
export function restoreSite(base: ShelfBase, id: string): Promise<void> {
  return marked(base, id, null);
}

function marked(base: ShelfBase, id: string, removed: number | null): Promise<void> {
  return changing(base, async (change) => {
    const head = await change.objectStore("sites").get(id);
    if (head === undefined) throw new ShelfConflict("the site is gone");
    const next = { ...head };
    if (removed === null) delete next.removed;
    else next.removed = removed;
    await change.objectStore("sites").put(next);
  });
}

/** Deletes for good the sites that were taken off the list at this time or before, ms since 1970. */
export function purgeSites(base: ShelfBase, before: number): Promise<void> {
  return changing(base, async (change) => {
    for (const head of await change.objectStore("sites").getAll()) {
      if (head.removed === undefined || head.removed > before) continue;
      await change.objectStore("sites").delete(head.id);
      await change.objectStore("texts").delete(head.id);
      await change.objectStore("pictures").delete(head.id);
      await change.objectStore("histories").delete(head.id);
      await dropPoints(change, head.stamp);
    }
  });
}

/** Puts a site on the list as it comes from a file. */
export function addSite(
  base: ShelfBase,
  site: Pick<ToKeep, "name" | "text" | "schemeId">,
): Promise<number> {
  const { name, text, schemeId } = site;
  return keepSite(base, {
    ...{ id: freshKey(), revision: 0, changed: Date.now(), figures: null },
    ...{ name, text, schemeId, points: null, history: null },
  });
}

/** One setting of the device. */
export async function readSetting(base: ShelfBase, key: string): Promise<unknown> {
  return base.get("desk", key);
}

/** Keeps one setting of the device. */
export async function keepSetting(base: ShelfBase, key: string, value: unknown): Promise<void> {
  await base.put("desk", value, key);
}
