import type { History, Site } from "../site/index.js";
import { record, startHistory, writeSite } from "../site/index.js";
import { keep } from "./autosave.js";
import type { DeskState, DeskStore } from "./deskState.js";
import { fiveFigures } from "./figures.js";
import { nameOfPicked } from "./moved.js";
import { worked } from "./worked.js";

const KEEP_AFTER_MS = 300;

/** What every group of actions works with. */
export interface DeskTools {
  get: () => DeskStore;
  set: (part: Partial<DeskState>) => void;
  /** Keeps the site in this browser at once. */
  keepNow: () => Promise<void>;
  /** Keeps it when edits have paused. */
  keepSoon: () => void;
  /** Shows another present, with its figures worked out in the same turn. */
  adopt: (history: History, more?: Partial<DeskState>) => void;
  /** Puts a site on the desk with a history of its own. */
  opened: (site: Site, more?: Partial<DeskState>) => void;
  /** One named edit: recorded, worked out, compared with what was before it. */
  recorded: (name: string, site: Site, more?: Partial<DeskState>) => void;
}

/** How the site is kept between visits: at once, or soon after the last edit. */
function keeping(
  get: DeskTools["get"],
  set: DeskTools["set"],
): Pick<DeskTools, "keepNow" | "keepSoon"> {
  let timer: ReturnType<typeof setTimeout> | undefined;

  async function keepNow(): Promise<void> {
    clearTimeout(timer);
    timer = undefined;
    const { history, schemeId, theme } = get();
    if (history === null) return;
    const site = history.mark?.site ?? history.present;
    try {
      await keep({ text: writeSite(site), schemeId, theme });
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

  function keepSoon(): void {
    if (get().keeping.state !== "failed") set({ keeping: { state: "waiting" } });
    clearTimeout(timer);
    timer = setTimeout(() => void keepNow(), KEEP_AFTER_MS);
  }

  return { keepNow, keepSoon };
}

/** The tools of one desk. */
export function deskTools(get: DeskTools["get"], set: DeskTools["set"]): DeskTools {
  const { keepNow, keepSoon } = keeping(get, set);

  function adopt(history: History, more: Partial<DeskState> = {}): void {
    const site = history.present;
    const wanted = more.schemeId ?? get().schemeId;
    const schemeId =
      site.schemes.find((scheme) => scheme.id === wanted)?.id ?? site.schemes[0]?.id ?? "";
    const same =
      site === get().history?.present && schemeId === get().schemeId && get().estimate !== null;
    if (same) {
      set({ history, ...more });
      return;
    }
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
      figures: estimate === null ? null : fiveFigures(estimate, site),
      selected: stays ? selected : null,
    });
  }

  function opened(site: Site, more: Partial<DeskState> = {}): void {
    adopt(startHistory(site), {
      before: null,
      lastEdit: null,
      selected: null,
      placing: null,
      section: null,
      unopened: null,
      starting: false,
      ...more,
    });
    keepSoon();
  }

  function recorded(name: string, site: Site, more: Partial<DeskState> = {}): void {
    const { history, figures } = get();
    if (history === null) return;
    const next = record(history, site, name);
    if (next === history) return;
    if (next.present === history.present) {
      adopt(next, more);
      return;
    }
    adopt(next, { before: figures, lastEdit: name, ...more });
    keepSoon();
  }

  return { get, set, keepNow, keepSoon, adopt, opened, recorded };
}
