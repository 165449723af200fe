/** The sheets' fonts from the installed packages. */
import { readFile } from "node:fs/promises";
import { readFaces, type FontBytes } from "../sheets/index.js";

export function fontsOnDisk(): Promise<FontBytes> {
  return readFaces((file) => readFile(file));
}
