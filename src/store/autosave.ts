import { openDB } from "idb";
import type { DBSchema, IDBPDatabase } from "idb";

/** What is kept between visits: the site file's own text, and how the desk stood. */
export interface Kept {
  text: string;
  schemeId: string;
  theme: "light" | "dark" | "system";
}

interface DeskSchema extends DBSchema {
  desk: { key: string; value: Kept };
}

const KEY = "open-site";
let opening: Promise<IDBPDatabase<DeskSchema>> | undefined;

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
  return (await base.get("desk", KEY)) ?? null;
}

/** Keeps the site for the next visit. Rejects when the browser has no room or does not allow it. */
export async function keep(kept: Kept): Promise<void> {
  const base = await database();
  await base.put("desk", kept, KEY);
}
