/**
 * The kinds of limits that Bankyard knows by name. A file may name others: they are drawn and kept
 * off by their own setback, and nothing more is known of them.
 */

/** A place, a line, or an area with an edge that closes. */
export type LimitShape = "place" | "line" | "area";

export interface LimitKind {
  id: string;
  /** As a person reads it. */
  name: string;
  shape: LimitShape;
}

export const LIMIT_KINDS = [
  { id: "lot-line", name: "lot line", shape: "area" },
  { id: "easement", name: "easement", shape: "area" },
  { id: "well", name: "well", shape: "place" },
  { id: "neighbour-well", name: "neighbor's well", shape: "place" },
  { id: "spring", name: "spring", shape: "place" },
  { id: "watercourse", name: "watercourse", shape: "line" },
  { id: "seasonal-watercourse", name: "seasonal watercourse", shape: "line" },
  { id: "ditch", name: "ditch", shape: "line" },
  { id: "flood-path", name: "flood path", shape: "line" },
  { id: "wetland", name: "wetland", shape: "area" },
  { id: "water-line", name: "water line", shape: "line" },
  { id: "buried-cable", name: "buried cable", shape: "line" },
  { id: "buried-gas", name: "buried gas line", shape: "line" },
  { id: "buried-line", name: "other buried line", shape: "line" },
  { id: "overhead-line", name: "overhead line", shape: "line" },
  { id: "building", name: "building that stands", shape: "area" },
  { id: "drive", name: "drive", shape: "line" },
  { id: "tree", name: "tree", shape: "place" },
  { id: "reserve-field", name: "reserve area for a second field", shape: "area" },
] as const satisfies readonly LimitKind[];

export type LimitKindId = (typeof LIMIT_KINDS)[number]["id"];

/** What is known of a limit's kind; null for one that Bankyard has no name for. */
export function limitKind(kind: string): LimitKind | null {
  return LIMIT_KINDS.find(({ id }) => id === kind) ?? null;
}

/** True for a line in the ground that a bucket could tear: water, cable, gas or any other. */
export function isBuriedLine(kind: string): boolean {
  return /under|buried|utilit|cable|gas|water-?line/i.test(kind);
}
