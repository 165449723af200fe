/** The files of the three faces of the sheets: open fonts with their letters. */
import { FAMILIES } from "./families.js";
import type { Face } from "./paper.js";

/** The files of one face: the letters of Western Europe first, then what else Latin is written with. */
export interface FaceFiles {
  family: string;
  weight: number;
  files: readonly URL[];
}

/** woff, since every reader of fonts that we use knows it; relative addresses work in Node and Vite. */
export const FACES: Readonly<Record<Face, FaceFiles>> = {
  text: {
    ...FAMILIES.text,
    files: [
      new URL(
        "../../node_modules/@fontsource/public-sans/files/public-sans-latin-400-normal.woff",
        import.meta.url,
      ),
      new URL(
        "../../node_modules/@fontsource/public-sans/files/public-sans-latin-ext-400-normal.woff",
        import.meta.url,
      ),
    ],
  },
  strong: {
    ...FAMILIES.strong,
    files: [
      new URL(
        "../../node_modules/@fontsource/public-sans/files/public-sans-latin-700-normal.woff",
        import.meta.url,
      ),
      new URL(
        "../../node_modules/@fontsource/public-sans/files/public-sans-latin-ext-700-normal.woff",
        import.meta.url,
      ),
    ],
  },
  heading: {
    ...FAMILIES.heading,
    files: [
      new URL(
        "../../node_modules/@fontsource/zilla-slab/files/zilla-slab-latin-600-normal.woff",
        import.meta.url,
      ),
      new URL(
        "../../node_modules/@fontsource/zilla-slab/files/zilla-slab-latin-ext-600-normal.woff",
        import.meta.url,
      ),
    ],
  },
};

/** The bytes of every face's files, in the order of `FACES`. */
export type FontBytes = Readonly<Record<Face, readonly Uint8Array[]>>;

/** Reads all faces through a reader of one address, such as a fetch or a file read. */
export async function readFaces(read: (file: URL) => Promise<Uint8Array>): Promise<FontBytes> {
  const bytesOf = (face: Face): Promise<Uint8Array[]> => Promise.all(FACES[face].files.map(read));
  const [text, strong, heading] = await Promise.all([
    bytesOf("text"),
    bytesOf("strong"),
    bytesOf("heading"),
  ]);
  return { text, strong, heading };
}
