/** Where this browser keeps sites: an IndexedDB of our own, and what version 1 of it held. */
import { openDB } from "idb";
import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from "idb";
import type { History } from "../../site/index.js";
import { words } from "../../words/index.js";
import { freshKey } from "./names.js";

/** What the list shows of a site without reading its text. */
export interface ShelfHead {
  /** Made here; it is not in the file. */
  id: string;
  name: string;
  /** When the site was last edited, ms since 1970. */
  changed: number;
  /** Grows by one with each writing; a page writes only on top of the one that it has read. */
  revision: number;
  schemeId: string;
  /** Which points go with the text; null when they are in it. */
  stamp: string | null;
  figures: ShelfFigures | null;
  /** When it was put away to be deleted, ms since 1970; absent while it stands on the list. */
  removed?: number;
}

/** Key figures as last worked out; SI, money in the site's currency. */
export interface ShelfFigures {
  /** m³ bank, all works. */
  cut: number;
  /** The likely total. */
  cost: number;
  currency: string;
  units: "us" | "metric";
  /** How many points the survey has. */
  points: number;
}

/** What is open when the app is opened next. */
export type LastOpen = { site: string } | { example: string };

export type ThemeChoice = "light" | "dark" | "system";

/** The last steps of a site. The site objects share what did not change, here as in memory. */
export interface KeptHistory {
  /** The revision of the site that the present belongs to. */
  revision: number;
  history: History;
}

interface SiteV1 {
  text: string;
  schemeId: string;
  theme: ThemeChoice;
  stamp?: string;
}

interface PointsV1 {
  stamp: string;
  points: Blob;
}

export interface ShelfSchema extends DBSchema {
  /** Of the device: "theme", "open", "asked to persist"; and what version 1 left and nobody can read. */
  desk: { key: string; value: unknown };
  sites: { key: string; value: ShelfHead; indexes: { stamp: string } };
  /** By the site's id. */
  texts: { key: string; value: string };
  pictures: { key: string; value: Blob };
  histories: { key: string; value: KeptHistory };
  /** Points of large surveys as JSON, by their stamp; never written over. */
  points: { key: string; value: Blob };
}

export type ShelfBase = IDBPDatabase<ShelfSchema>;

const BASE_NAME = "bankyard";
const BASE_VERSION = 2;
const SITE_V1 = "open-site";
const POINTS_V1 = "open-site-points";

function makeStores(base: ShelfBase, from: number): void {
  if (from < 1) base.createObjectStore("desk");
  const sites = base.createObjectStore("sites", { keyPath: "id" });
  // A stamp of null is no key: only sites with points apart are in this index.
  sites.createIndex("stamp", "stamp");
  base.createObjectStore("texts");
  base.createObjectStore("pictures");
  base.createObjectStore("histories");
  base.createObjectStore("points");
}

/** The name in a site file's text, though the rest of it may be damaged. */
export function nameIn(text: string): string {
  try {
    const { name } = JSON.parse(text) as { name?: unknown };
    return typeof name === "string" && name.trim() !== "" ? name : words.shelf.unnamed;
  } catch (fault) {
    if (fault instanceof SyntaxError) return words.shelf.unnamed;
    throw fault;
  }
}

type Upgrade = IDBPTransaction<ShelfSchema, StoreNames<ShelfSchema>[], "versionchange">;

/** Version 1 kept one open site; it becomes the first on the list. Nothing that is read is lost. */
async function takeOverV1(change: Upgrade): Promise<void> {
  const desk = change.objectStore("desk");
  const site = (await desk.get(SITE_V1)) as SiteV1 | undefined;
  const kept = (await desk.get(POINTS_V1)) as PointsV1 | undefined;
  if (kept !== undefined) {
    await change.objectStore("points").put(kept.points, kept.stamp);
    await desk.delete(POINTS_V1);
  }
  if (site === undefined) return;
  const head: ShelfHead = {
    id: freshKey(),
    name: nameIn(site.text),
    changed: Date.now(),
    revision: 1,
    schemeId: site.schemeId,
    stamp: site.stamp ?? null,
    figures: null,
  };
  await change.objectStore("sites").put(head);
  await change.objectStore("texts").put(site.text, head.id);
  await desk.put(site.theme, "theme");
  await desk.put({ site: head.id } satisfies LastOpen, "open");
  await desk.delete(SITE_V1);
}

/**
 * Opens the base, making or bringing it up to date. Rejects when the browser does not allow it, or
 * when a page of an older Bankyard still holds it.
 */
export function openBase(name = BASE_NAME): Promise<ShelfBase> {
  return new Promise((resolve, reject) => {
    openDB<ShelfSchema>(name, BASE_VERSION, {
      upgrade(base, from, _to, change) {
        makeStores(base, from);
        // What fails in it takes the whole upgrade back, and version 1 stays as it was.
        if (from === 1) takeOverV1(change).catch(() => change.abort());
      },
      blocked: () => reject(new Error(words.shelf.olderPage)),
      // A newer Bankyard in another tab wants to bring it up to date: do not stand in its way.
      blocking: (_now, _next, event) => (event.target as IDBDatabase).close(),
      terminated: () => forget(),
    }).then(resolve, reject);
  });
}

let opening: Promise<ShelfBase> | undefined;

function forget(): void {
  opening = undefined;
}

/** The base of this page, opened once. */
export async function shelfBase(): Promise<ShelfBase> {
  try {
    opening ??= openBase();
    return await opening;
  } catch (fault) {
    // The next edit tries again: a browser may let go of a lock or be given room.
    forget();
    throw fault;
  }
}
