/** What is picked: one thing first, and others along with it. Pure. */
import type { Site } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskState, Picked } from "./deskState.js";
import { nameOfPicked } from "./moved.js";

/** `selected` is what the leaf shows and a drag holds; `also` has the rest, none of them twice. */
export type Picks = Pick<DeskState, "selected" | "also">;

export const NO_PICKS: Picks = { selected: null, also: [] };

export function samePicked(a: Picked | null, b: Picked | null): boolean {
  return a === b || (a !== null && b !== null && a.kind === b.kind && a.id === b.id);
}

/** Everything picked, what was picked last first. */
export function allPicked({ selected, also }: Picks): Picked[] {
  return selected === null ? [] : [selected, ...also];
}

/** The things picked, the first of them as the one that the leaf shows. */
export function picksOf(things: readonly Picked[]): Picks {
  const once = things.filter(
    (thing, index) => things.findIndex((other) => samePicked(thing, other)) === index,
  );
  const [selected = null, ...also] = once;
  return { selected, also };
}

/** One thing added as the first, or taken away when it was picked. */
export function togglePicked(picks: Picks, thing: Picked): Picks {
  const others = allPicked(picks).filter((one) => !samePicked(one, thing));
  const was = others.length < allPicked(picks).length;
  return picksOf(was ? others : [thing, ...others]);
}

/** These things added to what is picked. */
export function withPicked(picks: Picks, things: readonly Picked[]): Picks {
  return picksOf([...allPicked(picks), ...things]);
}

/** What a hand that takes hold of this thing moves: all that is picked if it is among them. */
export function heldWith(picks: Picks, thing: Picked): Picks {
  const all = allPicked(picks);
  const among = all.some((one) => samePicked(one, thing));
  return picksOf(among ? [thing, ...all] : [thing]);
}

/** The picked things that the site still has. */
export function picksIn(site: Site, schemeId: string, picks: Picks): Picked[] {
  return allPicked(picks).filter((one) => nameOfPicked(site, schemeId, one) !== null);
}

/** What these things are called together: a name, "3 works", "2 things". */
export function nameOfAll(site: Site, schemeId: string, things: readonly Picked[]): string {
  const [first] = things;
  if (first === undefined) return "";
  if (things.length === 1) return nameOfPicked(site, schemeId, first) ?? first.id;
  const count = String(things.length);
  const works = things.every(({ kind }) => kind === "work");
  return works ? words.picked.works(count) : words.picked.things(count);
}

/** Another thing picked without a word about the others lets the others go. */
export function lettingGo(state: Picks, part: Partial<DeskState>): Partial<DeskState> {
  const { selected, also } = part;
  if (selected === undefined || also !== undefined) return part;
  return samePicked(selected, state.selected) ? part : { ...part, also: [] };
}
