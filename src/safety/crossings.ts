/** What it means that a work crosses a limit for which no distance is asked, by the limit's kind. */
import type { Part } from "./shapes.js";

/** What to do about a crossing, and where that is written. */
export interface Crossing {
  mend: string;
  source: string;
}

const PRACTICE = "common practice, no source";
const WATERS = "Clean Water Act, section 404 (33 U.S.C. 1344), recalled from memory";

/** Under a drive it counts what is crossed: wheels do other harm to each part. */
const UNDER_WHEELS: Readonly<Record<Part["from"], Crossing>> = {
  field: {
    mend: "Wheels press its soil tight and break its pipe: move one of the two, so that nothing is driven or parked on a field.",
    source:
      "US Environmental Protection Agency, SepticSmart (no driving or parking on a drain field), recalled from memory",
  },
  tank: {
    mend: "A tank and lids under wheels have to be made for that load, and the lids reached: ask the tank's maker, or move one of the two.",
    source: PRACTICE,
  },
  pipe: {
    mend: "The way is closed while it is open, and the pipe has to carry the wheels: ask what cover or sleeve it wants there.",
    source: PRACTICE,
  },
  pad: { mend: "The way is closed there: move one of the two.", source: PRACTICE },
  dig: { mend: "The way is closed while the hole is open.", source: PRACTICE },
};

const WATER: Crossing = {
  mend: "Work in or across water or wet ground is often a permit of its own, besides its setback: ask before digging.",
  source: WATERS,
};

const BY_KIND: Readonly<Record<string, Crossing>> = {
  easement: {
    mend: "Somebody else has rights there: read the deed, and ask its holder in writing before digging.",
    source: `${PRACTICE}; the deed decides`,
  },
  "lot-line": {
    mend: "Part of it then stands on somebody else's ground: move it in, or get the right to build there in writing.",
    source: `${PRACTICE}; a licensed surveyor says where the line is`,
  },
  watercourse: WATER,
  "seasonal-watercourse": WATER,
  spring: WATER,
  wetland: WATER,
  ditch: {
    mend: "Its water then runs into the hole: lead it round, or through a pipe, first.",
    source: PRACTICE,
  },
  building: {
    mend: "Both cannot stand there: move one of the two.",
    source: "geometry",
  },
  well: {
    mend: "Move it: the table has no row for it here, and offices ask for a distance to every well.",
    source: PRACTICE,
  },
  "reserve-field": {
    mend: "That ground is kept for a second field, and soil that is dug or pressed takes less water: move one of the two.",
    source: `${PRACTICE}; ask the office that gives the permit`,
  },
};

const ANY: Crossing = {
  mend: "Ask whoever owns it, and the office that gives the permit, before digging.",
  source: PRACTICE,
};

/** What a crossing of this part of a work and this kind of limit asks for. */
export function crossingOf(part: Part["from"], kind: string): Crossing {
  if (kind === "drive") return UNDER_WHEELS[part];
  return BY_KIND[kind === "neighbour-well" ? "well" : kind] ?? ANY;
}
