/** The list of sites on this device as the page shows it, and what is done with a site of it. */
import { create } from "zustand";
import { readSite, record, renameSite, writeSite } from "../site/index.js";
import { words } from "../words/index.js";
import { isLong } from "./groundTalk.js";
import { wholeText } from "./openSites.js";
import { nameIn, shelfBase } from "./shelf/base.js";
import type { ShelfHead } from "./shelf/base.js";
import { copyName, fileName } from "./shelf/names.js";
import {
  addSite,
  copySite,
  keepPicture,
  listHeads,
  listPictures,
  purgeSites,
  readKeptSite,
  removeSite,
  renameKept,
  restoreSite,
  sameSite,
} from "./shelf/sites.js";
import { unzipSites, zipSites } from "./shelf/zip.js";
import type { SiteText } from "./shelf/zip.js";
import { useDesk } from "./siteStore.js";

/** A site of the list. */
export interface ShelfSite extends ShelfHead {
  picture: Blob | null;
  /** Another tab of this browser has it. */
  isElsewhere: boolean;
}

export interface ShelfState {
  isOpen: boolean;
  /** Null until they are read. */
  sites: readonly ShelfSite[] | null;
  /** Why there is no list, or null. */
  trouble: string | null;
  /** Bytes used and allowed, when the browser tells. */
  room: { used: number; whole: number } | null;
  /** One line that tells what just happened; empty when there is nothing to tell. */
  note: string;
  /** The site that was deleted last and can be brought back. */
  removed: { id: string; name: string; wasOpen: boolean } | null;
}

/** The list of sites on this device. */
export const useShelf = create<ShelfState>()(() => ({
  isOpen: false,
  sites: null,
  trouble: null,
  room: null,
  note: "",
  removed: null,
}));

function told(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}

async function roomUsed(): Promise<ShelfState["room"]> {
  const storage = (navigator as Partial<Navigator>).storage;
  if (storage === undefined) return null;
  const { usage, quota } = await storage.estimate();
  return usage === undefined || quota === undefined ? null : { used: usage, whole: quota };
}

/** Reads the list anew. */
export async function readShelf(): Promise<void> {
  try {
    const base = await shelfBase();
    const [heads, pictures, elsewhere, room] = await Promise.all([
      listHeads(base),
      listPictures(base),
      useDesk.getState().sitesElsewhere(),
      roomUsed(),
    ]);
    const sites = heads.map((head) => ({
      ...head,
      picture: pictures.get(head.id) ?? null,
      isElsewhere: elsewhere.has(head.id),
    }));
    useShelf.setState({ sites, room, trouble: null });
  } catch (fault) {
    useShelf.setState({ sites: [], trouble: words.shelf.notAllowed(told(fault)) });
  }
}

/** Opens the list. */
export async function openShelf(): Promise<void> {
  useShelf.setState({ isOpen: true, note: "", removed: null });
  // What was edited last is to be on the list as it is.
  await useDesk.getState().keepNow();
  await readShelf();
}

/** Closes the list; what was deleted is then gone for good. */
export async function closeShelf(): Promise<void> {
  const { removed } = useShelf.getState();
  useShelf.setState({ isOpen: false, note: "", removed: null });
  if (removed !== null) await purgeSites(await shelfBase(), Date.now());
}

/** Does something to the list, tells what came of it, and reads the list anew. */
async function doing(work: () => Promise<string>): Promise<void> {
  try {
    const note = await work();
    useShelf.setState({ note });
  } catch (fault) {
    useShelf.setState({ note: words.shelf.notKept(told(fault)) });
  }
  await readShelf();
}

/** Puts a site of the list on the desk and closes the list. */
export async function openFromShelf(id: string): Promise<void> {
  await doing(async () => {
    if (useDesk.getState().siteId === id || (await useDesk.getState().openKept(id))) {
      await closeShelf();
    }
    return "";
  });
}

/** The text with another name in it; also of one whose points lie apart. */
function namedText(text: string, name: string): string {
  return `${JSON.stringify({ ...(JSON.parse(text) as object), name }, null, 2)}\n`;
}

/** Gives a site of the list another name. On the desk it is an edit like any other. */
export async function renameOnShelf({ id, name: old }: ShelfHead, name: string): Promise<void> {
  await doing(async () => {
    const desk = useDesk.getState();
    if ((await useDesk.getState().sitesElsewhere()).has(id)) return words.shelf.heldElsewhere(old);
    if (desk.siteId === id) {
      desk.edit("name of the site", (site) => renameSite(site, name));
      await desk.keepNow();
      return words.shelf.renamed(name);
    }
    await renameKept(await shelfBase(), id, name, {
      named: (text) => namedText(text, name),
      stepped: (history) => record(history, renameSite(history.present, name), "name of the site"),
    });
    return words.shelf.renamed(name);
  });
}

/** Puts a copy of a site on the list. */
export async function copyOnShelf({ id, name }: ShelfHead): Promise<void> {
  await doing(async () => {
    const base = await shelfBase();
    const names = (await listHeads(base)).map((head) => head.name);
    const copy = copyName(name, names);
    await copySite(base, id, copy, (text) => namedText(text, copy));
    return words.shelf.copied(copy);
  });
}

/** Takes a site off the list. The desk goes on with the next one, if it was open. */
export async function removeFromShelf({ id, name }: ShelfHead): Promise<void> {
  await doing(async () => {
    const desk = useDesk.getState();
    if ((await useDesk.getState().sitesElsewhere()).has(id)) return words.shelf.heldElsewhere(name);
    const base = await shelfBase();
    await purgeSites(base, Date.now());
    const wasOpen = desk.siteId === id;
    if (wasOpen) await desk.keepNow();
    await removeSite(base, id);
    if (wasOpen) await desk.openNext();
    useShelf.setState({ removed: { id, name, wasOpen } });
    return "";
  });
}

/** Brings back the site that was deleted last. */
export async function bringBack(): Promise<void> {
  await doing(async () => {
    const { removed } = useShelf.getState();
    if (removed === null) return "";
    await restoreSite(await shelfBase(), removed.id);
    useShelf.setState({ removed: null });
    return words.shelf.broughtBack(removed.name);
  });
}

/** A site of the list as a file, or null when it is gone. */
export async function fileOnShelf(id: string): Promise<{ name: string; text: string } | null> {
  const kept = await readKeptSite(await shelfBase(), id);
  if (kept === null) return null;
  return { name: fileName(kept.head.name), text: await wholeText(kept) };
}

/** All sites of the list in one zip, and a note on what is in it. */
export async function zipOfShelf(): Promise<{ name: string; zip: Blob } | null> {
  let result: { name: string; zip: Blob } | null = null;
  useShelf.setState({ note: words.shelf.packing });
  await doing(async () => {
    const base = await shelfBase();
    const sites: SiteText[] = [];
    const unread: string[] = [];
    for (const { id, name } of await listHeads(base)) {
      try {
        const kept = await readKeptSite(base, id);
        if (kept !== null) sites.push({ name, text: await wholeText(kept) });
      } catch (fault) {
        unread.push(`${name} (${told(fault)})`);
      }
    }
    const name = words.shelf.zipFile(new Date().toISOString().slice(0, 10));
    result = { name, zip: await zipSites(sites) };
    const saved = words.shelf.savedAll(words.shelf.sites(sites.length), name);
    return unread.length === 0 ? saved : `${saved} ${words.shelf.leftOut(unread.join(", "))}`;
  });
  return result;
}

/** A site in a zip as the list wants it, or null when it cannot be used. */
function readZipped(text: string): { name: string; text: string; schemeId: string } | null {
  // A long one is checked when it is opened, away from the page.
  if (isLong(text)) return { name: nameIn(text), text, schemeId: "" };
  const site = readSite(text);
  if (!site.ok) return null;
  const { name, schemes } = site.value;
  return { name, text: writeSite(site.value), schemeId: schemes[0]?.id ?? "" };
}

/** Puts every site of a zip on the list. Gives a note on what came of it. */
async function addZip(bytes: Uint8Array, file: string): Promise<string> {
  const base = await shelfBase();
  const counts = { added: 0, same: 0 };
  const bad: string[] = [];
  const files = unzipSites(bytes);
  for (const one of files) {
    const site = readZipped(one.text);
    if (site === null) bad.push(one.file);
    else if ((await sameSite(base, site.name, site.text)) !== null) counts.same++;
    else {
      await addSite(base, site);
      counts.added++;
    }
  }
  if (files.length === 0) return words.shelf.zipEmpty(file);
  const { added, addedSame, addedBad, sites } = words.shelf;
  return [
    ...(counts.added > 0 ? [added(sites(counts.added), file)] : []),
    ...(counts.same > 0 ? [addedSame(sites(counts.same))] : []),
    ...(bad.length > 0 ? [addedBad(bad.join(", "))] : []),
  ].join(" ");
}

/** Puts every site of a zip on the list, and shows the list. */
export async function openZip(bytes: Uint8Array, file: string): Promise<void> {
  useShelf.setState({ isOpen: true, removed: null });
  await doing(async () => {
    try {
      return await addZip(bytes, file);
    } catch (fault) {
      return words.shelf.zipFailed(file, told(fault));
    }
  });
}

/** Keeps a small picture of the open site, made when its edits paused. */
export async function keepPictureOf(id: string, picture: Blob): Promise<void> {
  await keepPicture(await shelfBase(), id, picture);
  if (useShelf.getState().isOpen) await readShelf();
}
