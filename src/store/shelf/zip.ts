/** Many sites in one zip: each a site file of its own, as it would be saved. */
import { strFromU8, strToU8, unzipSync, Zip, ZipDeflate } from "fflate";
import { words } from "../../words/index.js";
import { uniqueFileNames } from "./names.js";

/** A site's name and its whole file text. */
export interface SiteText {
  name: string;
  text: string;
}

/** Bytes packed between two pauses. */
const SLICE = 256 * 1024;
/** Bytes, unpacked, that one zip may hold: more than this is no zip of sites. */
const MOST_BYTES = 300 * 1024 * 1024;

/** Packs sites into one zip, letting the page have its turn. Rejects when one cannot be packed. */
export async function zipSites(sites: readonly SiteText[]): Promise<Blob> {
  const names = uniqueFileNames(sites.map((site) => site.name));
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const faults: Error[] = [];
  const zip = new Zip((trouble, part) => {
    if (trouble === null) parts.push(Uint8Array.from(part));
    else faults.push(trouble);
  });
  for (const [at, site] of sites.entries()) {
    const file = new ZipDeflate(names[at]!, { level: 6 });
    zip.add(file);
    const bytes = strToU8(site.text);
    for (let from = 0; from < bytes.length || from === 0; from += SLICE) {
      const to = from + SLICE;
      file.push(bytes.subarray(from, to), to >= bytes.length);
      await new Promise((resolve) => setTimeout(resolve));
    }
  }
  zip.end();
  const [fault] = faults;
  if (fault !== undefined) throw fault;
  return new Blob(parts, { type: "application/zip" });
}

/** Whether these bytes begin a zip. */
export function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b;
}

/** One file of a zip: its name there and its text. */
export interface ZippedFile {
  file: string;
  text: string;
}

/** The JSON files in a zip, in its order. Throws when it is damaged or far too large. */
export function unzipSites(bytes: Uint8Array): ZippedFile[] {
  let whole = 0;
  const files = unzipped(bytes, (size) => {
    whole += size;
    return whole <= MOST_BYTES;
  });
  if (whole > MOST_BYTES) throw new Error(words.shelf.zipTooLarge);
  return Object.entries(files).map(([file, part]) => ({ file, text: strFromU8(part) }));
}

function unzipped(bytes: Uint8Array, fits: (size: number) => boolean): Record<string, Uint8Array> {
  try {
    return unzipSync(bytes, {
      filter: ({ name, originalSize }) => isSiteFile(name) && fits(originalSize),
    });
  } catch (fault) {
    throw new Error(words.shelf.zipDamaged(fault instanceof Error ? fault.message : String(fault)));
  }
}

/** Some systems put files of their own beside ours in a zip. */
function isSiteFile(path: string): boolean {
  const name = path.replace(/^.*\//, "");
  return /\.json$/i.test(name) && !name.startsWith(".") && !path.startsWith("__MACOSX/");
}
