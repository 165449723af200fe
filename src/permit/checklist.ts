/** What an office asks to see on a plan, held against what the site has. */
import rows from "../../shared/catalogue/permit-items.json" with { type: "json" };
import type { ItemFound, ItemState, PermitGround } from "./found.js";
import { findItem } from "./items.js";

/** One item of the list and how it stands. */
export interface ChecklistItem {
  id: string;
  group: string;
  title: string;
  state: ItemState;
  /** Why it stands so, in words: what was found, what is missing, or the person's own reason. */
  because: string;
  /** Whether a person may answer it: some can only be shown by the site itself. */
  byHand: boolean;
  /** The state that the site itself gives, before any answer. */
  found: ItemState;
}

/** Ids of the items, in the list's order. */
export const PERMIT_ITEMS: readonly string[] = rows.items.map(({ id }) => id);

export interface Checklist {
  groups: readonly { id: string; title: string; items: readonly ChecklistItem[] }[];
  /** Items that count: all but those that are not applicable. */
  asked: number;
  present: number;
  source: string;
}

/**
 * The list as it stands. A person's answer (not applicable, or shown elsewhere, each with a note)
 * fills what the site does not show. What the site shows needs none, and is overruled by one alone that
 * was given while it was shown (`though`): a "no well here" does not outlive the well that is drawn.
 */
export function checklist(ground: PermitGround): Checklist {
  const items = rows.items.map((row): ChecklistItem => {
    const found = findItem(row.id, ground);
    const answer = ground.site.checklist?.find(({ item }) => item === row.id);
    const holds =
      answer !== undefined &&
      (found.state === "missing" ||
        (found.state === "present" && answer.though === true && answer.state === "not-applicable"));
    const stands = holds ? answered(answer) : found;
    return { ...row, state: stands.state, because: stands.because, found: found.state };
  });
  const asked = items.filter(({ state }) => state !== "not-applicable");
  return {
    groups: rows.groups.map((group) => ({
      ...group,
      items: items.filter((item) => item.group === group.id),
    })),
    asked: asked.length,
    present: asked.filter(({ state }) => state !== "missing").length,
    source: rows.source,
  };
}

function answered({
  state,
  note,
}: {
  state: "not-applicable" | "by-hand";
  note: string;
}): ItemFound {
  return { state, because: note };
}
