import type { History, Site } from "../site/index.js";
import { locksBroken, record } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskState, DeskStore } from "./deskState.js";
import { fiveFigures } from "../estimate/index.js";
import { isLarge } from "./groundTalk.js";
import { makeKeeper } from "./keeper.js";
import type { Keeper } from "./keeper.js";
import { LargeDesk } from "./largeDesk.js";
import { nameOfPicked } from "./moved.js";
import { Turns } from "./shelf/turns.js";
import { worked } from "./worked.js";

/** What every group of actions works with. */
export interface DeskTools {
  get: () => DeskStore;
  set: (part: Partial<DeskState>) => void;
  /** The newest document: that on the desk, or one that waits for the ground of its survey. */
  now: () => History | null;
  /** What is done away from the page. */
  large: LargeDesk;
  /** Keeps the open site in this browser. */
  keeper: Keeper;
  /** Which page of this browser may change which site. */
  turns: Turns;
  /** Keeps the site when edits have paused. */
  keepSoon: () => void;
  /** False, and the person is told, while another page has the open site. */
  mayChange: () => boolean;
  /**
   * Shows another present, with its figures worked out in the same turn; or, with a large survey,
   * as soon as they are there.
   */
  adopt: (history: History, more?: Partial<DeskState>) => void;
  /**
   * One named edit: recorded, worked out, compared with what was before it. One that would change
   * what is locked is told and not made.
   */
  recorded: (name: string, site: Site, more?: Partial<DeskState>) => void;
}

/** Tells what an edit would change although it is locked; false when there is nothing of the kind. */
function toldLocked(set: DeskTools["set"], before: Site, after: Site): boolean {
  const locked = locksBroken(before, after);
  if (locked.length > 0) set({ notice: words.picked.told.isLocked(words.picked.and(locked)) });
  return locked.length > 0;
}

/** Tells that another page has the open site. Fields then show what holds, not what was typed. */
function toldElsewhere(get: DeskTools["get"], set: DeskTools["set"]): false {
  set({ notice: words.shelf.lookOnly, steps: get().steps + 1 });
  return false;
}

/** The tools of one desk. */
export function deskTools(get: DeskTools["get"], set: DeskTools["set"]): DeskTools {
  const turns = new Turns();
  const keeper = makeKeeper(get, set, turns);
  const { keepSoon } = keeper;
  const large = new LargeDesk(get, set);
  const now = (): History | null => large.now();

  function adopt(history: History, more: Partial<DeskState> = {}): void {
    const site = history.present;
    const wanted = more.schemeId ?? get().schemeId;
    const schemeId =
      site.schemes.find((scheme) => scheme.id === wanted)?.id ?? site.schemes[0]?.id ?? "";
    const same =
      !large.isComing &&
      site === get().history?.present &&
      schemeId === get().schemeId &&
      get().estimate !== null;
    if (same) {
      set({ history, ...more });
      return;
    }
    if (isLarge(site)) {
      large.adopt({ history, schemeId, more });
      return;
    }
    large.leave();
    const result = worked(site, schemeId);
    const estimate = result.ok ? result.estimate : null;
    const selected = more.selected === undefined ? get().selected : more.selected;
    const stays = selected !== null && nameOfPicked(site, schemeId, selected) !== null;
    set({
      ...more,
      status: "open",
      history,
      schemeId,
      estimate,
      fault: result.ok ? null : result.text,
      drawn: null,
      working: null,
      figures: estimate === null ? null : fiveFigures(estimate, site),
      selected: stays ? selected : null,
    });
  }

  const mayChange = (): boolean => get().turn === "here" || toldElsewhere(get, set);

  function recorded(name: string, site: Site, more: Partial<DeskState> = {}): void {
    const history = now();
    const { figures } = get();
    if (history === null || !mayChange()) return;
    if (toldLocked(set, history.present, site)) return;
    const next = record(history, site, name);
    if (next === history) return;
    if (next.present === history.present) {
      adopt(next, more);
      return;
    }
    adopt(next, { before: figures, lastEdit: name, ...more });
    keepSoon();
  }

  return { get, set, now, large, keeper, turns, keepSoon, mayChange, adopt, recorded };
}
