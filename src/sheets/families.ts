import type { Face } from "./paper.js";

const SANS = "Public Sans";
const SLAB = "Zilla Slab";

/** The three faces of the sheets by their fonts' names, apart from the files that hold the letters. */
export const FAMILIES = {
  text: { family: SANS, weight: 400 },
  strong: { family: SANS, weight: 700 },
  heading: { family: SLAB, weight: 600 },
} as const satisfies Readonly<Record<Face, { family: string; weight: number }>>;
