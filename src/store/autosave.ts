import { openDB } from "idb";
import type { DBSchema, IDBPDatabase } from "idb";

/** What is kept between visits: the site file's own text, and how the desk stood. */
export interface Kept {
  /** The whole file, or all but the points of a large survey. */
  text: string;
  schemeId: string;
  theme: "light" | "dark" | "system";
  /** The points of a large survey as JSON, kept apart so that an edit need not write them again. */
  points: Blob | null;
}

/** As written: `stamp` names the points that go with it, where they are kept apart. */
type KeptSite = Omit<Kept, "points"> & { stamp?: string };

interface KeptPoints {
  stamp: string;
  points: Blob;
}

interface DeskSchema extends DBSchema {
  desk: { key: string; value: KeptSite | KeptPoints };
}

const KEY = "open-site";
const POINTS_KEY = "open-site-points";
let opening: Promise<IDBPDatabase<DeskSchema>> | undefined;
/** The points that this page kept last, and their stamp. */
let written: KeptPoints | null = null;

async function database(): Promise<IDBPDatabase<DeskSchema>> {
  try {
    opening ??= openDB<DeskSchema>("bankyard", 1, {
      upgrade(base) {
        base.createObjectStore("desk");
      },
    });
    return await opening;
  } catch (fault) {
    // The next edit tries again: a browser may let go of a lock or be given room.
    opening = undefined;
    throw fault;
  }
}

/** What was kept last, or null when nothing was. Rejects when the browser keeps nothing for us. */
export async function readKept(): Promise<Kept | null> {
  const base = await database();
  const store = base.transaction("desk").store;
  const [site, points] = await Promise.all([store.get(KEY), store.get(POINTS_KEY)]);
  if (site === undefined || !("text" in site)) return null;
  const { text, schemeId, theme, stamp } = site;
  if (stamp === undefined) return { text, schemeId, theme, points: null };
  if (points === undefined || !("points" in points) || points.stamp !== stamp) {
    throw new Error("its survey points are missing");
  }
  written = points;
  return { text, schemeId, theme, points: points.points };
}

/** Keeps the site for the next visit. Rejects when the browser has no room or does not allow it. */
export async function keep({ points, ...site }: Kept): Promise<void> {
  const base = await database();
  const change = base.transaction("desk", "readwrite");
  // Both in one transaction: a site is never kept with the points of another.
  if (points === null) {
    await Promise.all([change.store.put(site, KEY), change.store.delete(POINTS_KEY), change.done]);
    return;
  }
  const there = await change.store.get(POINTS_KEY);
  // Another page of this browser may have kept others since.
  const known = there !== undefined && "points" in there ? there.stamp : null;
  const same = written !== null && written.points === points && written.stamp === known;
  const now = same && written !== null ? written : { stamp: crypto.randomUUID(), points };
  const writes: Promise<unknown>[] = [change.store.put({ ...site, stamp: now.stamp }, KEY)];
  if (!same) writes.push(change.store.put(now, POINTS_KEY));
  await Promise.all([...writes, change.done]);
  written = now;
}
