/** Where on the desk each item of the permit's list is entered. */
import type { Site } from "../../site/index.js";
import type { Leaf, Picked } from "../../store/index.js";
import { byHeading, bySelector, firstOf } from "../book/goTo.js";
import type { Find } from "../book/goTo.js";

/** A place on a leaf; with `picked`, what of it is already there. */
export interface EnteredAt {
  leaf: Leaf;
  find: Find | null;
  picked: Picked | null;
  /** The kind of limit to be placed, where none of the item's kinds is there yet. */
  kind: string | null;
}

const field = (name: string): Find => bySelector(`[data-field="${name}"]`);

const onPaper = byHeading("On paper");
const sizes = byHeading("Design flow and sizes");
/** The head of the first pumped system; where there is none yet, the way to one is beneath the pipes. */
const pumps = firstOf(bySelector("[data-pressure]"), sizes);

type Entered = readonly [leaf: Leaf, find: Find | null];

/** Items that are limits of the site, with the kinds that show them. */
export const LIMIT_ITEMS: Readonly<Record<string, readonly string[]>> = {
  "lot-lines": ["lot-line"],
  wells: ["well", "neighbour-well"],
  water: ["watercourse", "seasonal-watercourse", "ditch", "spring"],
  flood: ["flood-path"],
  wetlands: ["wetland"],
  easements: ["easement"],
  utilities: ["water-line", "buried-cable", "buried-gas", "buried-line", "overhead-line"],
  trees: ["tree"],
  access: ["drive"],
  reserve: ["reserve-field"],
  setbacks: [],
};

const ENTERED: Readonly<Record<string, Entered>> = {
  scale: ["handover", onPaper],
  vicinity: ["handover", field("project-place")],
  owner: ["handover", field("project-owner")],
  parcel: ["handover", field("project-parcel")],
  preparer: ["handover", field("project-preparer")],
  date: ["handover", field("project-date")],
  benchmark: ["handover", field("project-benchmark")],
  contours: ["survey", byHeading("Points")],
  pits: ["survey", byHeading("Probes")],
  "pit-at-tank": ["survey", byHeading("Probes")],
  elevations: ["dig", null],
  "cuts-fills": ["dig", byHeading("The whole dig")],
  buildings: ["dig", null],
  tank: ["dig", null],
  pipes: ["dig", null],
  bedrooms: ["flow", sizes],
  field: ["flow", sizes],
  hydraulics: ["flow", pumps],
  pump: ["flow", pumps],
  dose: ["flow", pumps],
  alarm: ["flow", pumps],
};

/** The place where an item is entered; null for what is always there and entered nowhere. */
export function whereEntered(site: Pick<Site, "limits">, item: string): EnteredAt | null {
  const kinds = LIMIT_ITEMS[item];
  if (kinds !== undefined) {
    const limit = site.limits?.find(({ kind }) => kinds.includes(kind));
    return {
      leaf: "survey",
      // With nothing of the kind yet, the list that a new limit is chosen from.
      find: firstOf(
        limit === undefined
          ? bySelector(".place-limit select")
          : bySelector(".row[aria-pressed=true]"),
        byHeading("Limits"),
      ),
      picked: limit === undefined ? null : { kind: "limit", id: limit.id },
      kind: limit === undefined ? (kinds[0] ?? null) : null,
    };
  }
  const [leaf, find] = ENTERED[item] ?? [];
  return leaf === undefined ? null : { leaf, find: find ?? null, picked: null, kind: null };
}
