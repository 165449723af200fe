import type { History, Site } from "../site/index.js";
import { locksBroken, record, startHistory, writeSite } from "../site/index.js";
import { words } from "../words/index.js";
import { keep } from "./autosave.js";
import type { DeskState, DeskStore } from "./deskState.js";
import { fiveFigures } from "./figures.js";
import { isLarge, withoutPoints } from "./groundTalk.js";
import { LargeDesk } from "./largeDesk.js";
import { nameOfPicked } from "./moved.js";
import { surveyText } from "./surveyText.js";
import { worked } from "./worked.js";

const KEEP_AFTER_MS = 300;

/** What every group of actions works with. */
export interface DeskTools {
  get: () => DeskStore;
  set: (part: Partial<DeskState>) => void;
  /** The newest document: that on the desk, or one that waits for the ground of its survey. */
  now: () => History | null;
  /** What is done away from the page. */
  large: LargeDesk;
  /** Keeps the site in this browser at once. */
  keepNow: () => Promise<void>;
  /** Keeps it when edits have paused. */
  keepSoon: () => void;
  /** Keeps nothing until the next edit. */
  keepNothing: () => void;
  /**
   * Shows another present, with its figures worked out in the same turn; or, with a large survey,
   * as soon as they are there.
   */
  adopt: (history: History, more?: Partial<DeskState>) => void;
  /** Puts a site on the desk with a history of its own. */
  opened: (site: Site, more?: Partial<DeskState>) => void;
  /**
   * One named edit: recorded, worked out, compared with what was before it. One that would change
   * what is locked is told and not made.
   */
  recorded: (name: string, site: Site, more?: Partial<DeskState>) => void;
}

/** How the site is kept between visits: at once, or soon after the last edit. */
function keeping(
  get: DeskTools["get"],
  set: DeskTools["set"],
): Pick<DeskTools, "keepNow" | "keepSoon" | "keepNothing"> {
  let isHeld = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  async function keepNow(): Promise<void> {
    clearTimeout(timer);
    timer = undefined;
    const { history, schemeId, theme } = get();
    if (history === null || isHeld) return;
    const site = history.mark?.site ?? history.present;
    try {
      const points = isLarge(site) ? await surveyText(site.survey.points) : null;
      const text = writeSite(points === null ? site : withoutPoints(site));
      await keep({ text, schemeId, theme, points });
      set({ keeping: { state: "kept" } });
    } catch (fault) {
      const why = fault instanceof Error ? fault.message : String(fault);
      set({
        keeping: {
          state: "failed",
          text: `This browser could not keep the site (${why}). Use Save to keep it as a file.`,
        },
      });
    }
  }

  function keepNothing(): void {
    clearTimeout(timer);
    isHeld = true;
    set({ keeping: { state: "kept" } });
  }

  function keepSoon(): void {
    isHeld = false;
    if (get().keeping.state !== "failed") set({ keeping: { state: "waiting" } });
    clearTimeout(timer);
    timer = setTimeout(() => void keepNow(), KEEP_AFTER_MS);
  }

  return { keepNow, keepSoon, keepNothing };
}

/** How the desk stands when a site has just been put on it. */
const NOTHING_CHOSEN: Partial<DeskState> = {
  before: null,
  lastEdit: null,
  selected: null,
  placing: null,
  section: null,
  unopened: null,
  starting: false,
};

/** Tells what an edit would change although it is locked; false when there is nothing of the kind. */
function toldLocked(set: DeskTools["set"], before: Site, after: Site): boolean {
  const locked = locksBroken(before, after);
  if (locked.length > 0) set({ notice: words.picked.told.isLocked(words.picked.and(locked)) });
  return locked.length > 0;
}

/** The tools of one desk. */
export function deskTools(get: DeskTools["get"], set: DeskTools["set"]): DeskTools {
  const { keepNow, keepSoon, keepNothing } = keeping(get, set);
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

  function recorded(name: string, site: Site, more: Partial<DeskState> = {}): void {
    const history = now();
    const { figures } = get();
    if (history === null) return;
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

  const opened: DeskTools["opened"] = (site, more = {}) => {
    adopt(startHistory(site), { ...NOTHING_CHOSEN, ...more });
    keepSoon();
  };

  return { get, set, now, large, keepNow, keepSoon, keepNothing, adopt, opened, recorded };
}
