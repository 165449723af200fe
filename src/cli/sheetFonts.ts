/** The sheets' fonts from the installed packages. */
import { readFile } from "node:fs/promises";
import { loadRasterLoader } from "../handover/index.js";
import { readFaces, type FontBytes } from "../sheets/index.js";

const fromDisk = (file: URL): Promise<Uint8Array> => readFile(file);

export function fontsOnDisk(): Promise<FontBytes> {
  return readFaces(fromDisk);
}

/** What pictures are drawn with, from the installed packages. */
export async function rasterOnDisk() {
  const load = await loadRasterLoader();
  return load(fromDisk);
}
