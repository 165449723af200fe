/** Keeping the open site in this browser: when, on top of what, and what is told when it fails. */
import { writeSite } from "../site/index.js";
import type { History, Site } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskState, Keeping } from "./deskState.js";
import { isLarge, withoutPoints } from "./groundTalk.js";
import { shelfBase } from "./shelf/base.js";
import type { LastOpen, ShelfFigures } from "./shelf/base.js";
import { freshKey } from "./shelf/names.js";
import { isFull, keepSetting, keepSite, readSetting, ShelfConflict } from "./shelf/sites.js";
import type { ToKeep } from "./shelf/sites.js";
import type { Turns } from "./shelf/turns.js";
import { surveyText } from "./surveyText.js";

const KEEP_AFTER_MS = 300;

/** How many steps of the history are kept over a reload, each way. */
const KEPT_STEPS = 30;

const OPEN_KEY = "bankyard open";

/** What this page knows of a site that it has open. */
export interface Hold {
  /** The revision that this page has read or written; 0 while it is not on the list. */
  revision: number;
  /** The site as it is kept, or as it came from an example; null when all of it is still to be kept. */
  kept: Site | null;
  schemeId: string;
  /** The points as they lie apart. */
  points: { stamp: string; points: Blob } | null;
  /** The example that it is while nothing has been changed. */
  example: string | null;
  /** The site as it came from a file that the person has, or from an example; else null. */
  fromFile: Site | null;
}

export interface Keeper {
  /** Says what this page knows of a site that comes on the desk. */
  hold: (id: string, hold: Hold) => void;
  /** Says which site is to come on the desk next, so that it is not let go of meanwhile. */
  want: (id: string) => void;
  /** Whether that site is still the one that is wanted next. */
  isWanted: (id: string) => boolean;
  /** Keeps the site on the desk at once. */
  keepNow: () => Promise<void>;
  /** Keeps it when edits have paused. */
  keepSoon: () => void;
  /** Resolves when all that was to be kept so far has been, or has failed. */
  settled: () => Promise<void>;
  /** Whether the site on the desk has edits that are not kept. */
  hasUnsaved: () => boolean;
  /** The site on the desk goes on in a copy: what is not kept of it is not lost. */
  carriedOn: () => void;
  /** Follows the desk from one state to the next. */
  follow: (now: DeskState, before: DeskState) => void;
  /** Tells that the browser keeps nothing, or has no room. */
  tellTrouble: (fault: unknown) => void;
}

/** Where a tab remembers something over a reload; there is none where no page is. */
function tabStorage(): Storage | undefined {
  return (globalThis as Partial<typeof globalThis>).sessionStorage;
}

/** What was open in this tab, or null. */
export function openInTab(): LastOpen | null {
  try {
    const text = tabStorage()?.getItem(OPEN_KEY) ?? null;
    return text === null ? null : (JSON.parse(text) as LastOpen);
  } catch (fault) {
    // Storage that is not allowed: opening the base says so to the person.
    if (fault instanceof DOMException || fault instanceof SyntaxError) return null;
    throw fault;
  }
}

function keepOpenInTab(open: LastOpen): void {
  try {
    tabStorage()?.setItem(OPEN_KEY, JSON.stringify(open));
  } catch (fault) {
    if (!(fault instanceof DOMException)) throw fault;
    // As above: the person is told when the base is opened.
    return;
  }
}

/** The last steps of a history, as they are kept. */
export function lastSteps({ past, present, future }: History): History {
  return {
    past: past.slice(-KEPT_STEPS),
    present,
    future: future.slice(0, KEPT_STEPS),
    mark: null,
  };
}

/** The site that is kept of a desk: during a drag, the one before it. */
function siteOf({ history }: DeskState): Site | null {
  return history === null ? null : (history.mark?.site ?? history.present);
}

function figuresOf({ figures }: DeskState, site: Site): ShelfFigures | null {
  if (figures === null) return null;
  const { currency, units, survey } = site;
  return {
    ...{ cut: figures.cut, cost: figures.cost.likely },
    ...{ currency, units, points: survey.points.length },
  };
}

/** Points get a stamp when they are first kept, and another when they change. */
async function pointsOf(site: Site, hold: Hold): Promise<Hold["points"]> {
  if (!isLarge(site)) return null;
  const points = await surveyText(site.survey.points);
  return hold.points?.points === points ? hold.points : { stamp: freshKey(), points };
}

function troubleOf(fault: unknown): Keeping {
  const why = fault instanceof Error ? fault.message : String(fault);
  return isFull(fault)
    ? { state: "failed", isFull: true, text: words.shelf.full }
    : { state: "failed", isFull: false, text: words.shelf.notKept(why) };
}

/** Asks the browser, once on a device, not to clear away what is kept when it wants room. */
async function askToPersist(): Promise<void> {
  const storage = (navigator as Partial<Navigator>).storage;
  const base = await shelfBase();
  if (storage === undefined || (await readSetting(base, "asked to persist")) === true) return;
  await keepSetting(base, "asked to persist", true);
  await storage.persist();
}

/** Writes one state of the desk. Gives false when there was nothing to write. */
async function writeState(state: DeskState, hold: Hold, turns: Turns): Promise<boolean> {
  const site = siteOf(state);
  const { siteId, schemeId, history } = state;
  if (site === null || history === null) return false;
  const isSame = site === hold.kept;
  if (isSame && (hold.revision === 0 || schemeId === hold.schemeId)) return false;
  const points = await pointsOf(site, hold);
  const toKeep: ToKeep = {
    id: siteId,
    revision: hold.revision,
    name: site.name,
    changed: isSame ? null : Date.now(),
    schemeId,
    figures: figuresOf(state, site),
    text: writeSite(points === null ? site : withoutPoints(site)),
    points,
    history: points === null ? lastSteps({ ...history, present: site }) : null,
  };
  const base = await shelfBase();
  hold.revision = await keepSite(base, toKeep);
  // An example that has been changed is opened next time as the site that it has become.
  if (hold.example !== null) await keepSetting(base, "open", { site: siteId } satisfies LastOpen);
  Object.assign(hold, { kept: site, schemeId, points, example: null });
  keepOpenInTab({ site: siteId });
  turns.tellChanged(siteId);
  if (history.past.length > 0) await askToPersist();
  return true;
}

/** How the open site is kept between visits: at once, or soon after the last edit. */
export function makeKeeper(
  get: () => DeskState,
  set: (part: Partial<DeskState>) => void,
  turns: Turns,
): Keeper {
  return new DeskKeeper(get, set, turns);
}

class DeskKeeper implements Keeper {
  private readonly holds = new Map<string, Hold>();
  private timer: ReturnType<typeof setTimeout> | undefined;
  private wanted = "";
  // One after the other, or a page would stand in its own way with a revision that is behind.
  private last: Promise<void> = Promise.resolve();

  constructor(
    private readonly get: () => DeskState,
    private readonly set: (part: Partial<DeskState>) => void,
    private readonly turns: Turns,
  ) {}

  readonly hold = (id: string, hold: Hold): void => void this.holds.set(id, hold);

  readonly want = (id: string): void => {
    this.wanted = id;
  };

  readonly isWanted = (id: string): boolean => this.wanted === id;

  readonly settled = (): Promise<void> => this.last;

  readonly tellTrouble = (fault: unknown): void => this.set({ keeping: troubleOf(fault) });

  readonly keepNow = (): Promise<void> => {
    this.stopTimer();
    return this.keep(this.get());
  };

  readonly keepSoon = (): void => {
    if (this.get().turn !== "here") return;
    if (this.get().keeping.state !== "failed") this.set({ keeping: { state: "waiting" } });
    this.stopTimer();
    this.timer = setTimeout(() => void this.keepNow(), KEEP_AFTER_MS);
  };

  readonly hasUnsaved = (): boolean => {
    const hold = this.holds.get(this.get().siteId);
    return hold !== undefined && siteOf(this.get()) !== hold.kept;
  };

  readonly carriedOn = (): void => {
    const hold = this.holds.get(this.get().siteId);
    if (hold !== undefined) hold.fromFile = siteOf(this.get());
  };

  readonly follow = (now: DeskState, before: DeskState): void => {
    if (now.siteId !== before.siteId) this.came(now, before);
    // The ground of an edited survey comes in a while, and the edit with it.
    else if (siteOf(now) !== siteOf(before)) this.keepSoon();
  };

  private stopTimer(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  private keep(state: DeskState): Promise<void> {
    this.last = this.last.then(() => this.write(state));
    return this.last;
  }

  private async write(state: DeskState): Promise<void> {
    const hold = this.holds.get(state.siteId);
    if (hold === undefined || state.turn !== "here") return;
    const isOpen = (): boolean => this.get().siteId === state.siteId;
    try {
      const isWritten = await writeState(state, hold, this.turns);
      if (!isOpen() || this.timer !== undefined) return;
      // That there was nothing to write mends no trouble that was told.
      if (!isWritten && this.get().keeping.state === "failed") return;
      this.set({ keeping: { state: hold.example === null ? "kept" : "example" } });
    } catch (fault) {
      // What has left the desk is set aside and told of then.
      if (!isOpen()) return;
      if (!(fault instanceof ShelfConflict)) this.tellTrouble(fault);
      else this.set({ turn: "moved", unsaved: true, keeping: { state: "kept" } });
    }
  }

  /** What could not be kept of a site that has left the desk is held until it is saved as a file. */
  private setAside(state: DeskState): void {
    const hold = this.holds.get(state.siteId);
    const site = siteOf(state);
    if (hold === undefined || site === null || this.get().siteId === state.siteId) return;
    if (site === hold.kept || site === hold.fromFile) return;
    this.set({ setAside: [...this.get().setAside, site] });
  }

  /** Another site has come on the desk: what was there is kept first, then let go. */
  private came(now: DeskState, before: DeskState): void {
    this.stopTimer();
    this.set({ keeping: { state: "waiting" } });
    if (before.siteId !== "") {
      void this.keep(before).then(() => {
        this.setAside(before);
        if (this.get().siteId === before.siteId || this.wanted === before.siteId) return;
        this.turns.letGo(before.siteId);
        this.holds.delete(before.siteId);
      });
    }
    const example = this.holds.get(now.siteId)?.example ?? null;
    const open: LastOpen = example === null ? { site: now.siteId } : { example };
    keepOpenInTab(open);
    shelfBase()
      .then((base) => keepSetting(base, "open", open))
      .catch(this.tellTrouble);
    void this.keepNow();
  }
}
