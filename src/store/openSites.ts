/** Putting sites on the desk: new ones, examples, and those that this browser keeps. */
import { readSite, renameSite, startHistory, writeSite } from "../site/index.js";
import type { History, Site, SiteProblem } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskState, Turn } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { examples } from "./examples.js";
import { isLarge, isLong } from "./groundTalk.js";
import { shelfBase } from "./shelf/base.js";
import { copyName, freshKey } from "./shelf/names.js";
import { listHeads, readKeptSite, sameSite } from "./shelf/sites.js";
import type { KeptSite } from "./shelf/sites.js";
import { surveyTextMade } from "./surveyText.js";

/** How the desk stands when a site has just been put on it. */
const NOTHING_CHOSEN: Partial<DeskState> = {
  before: null,
  lastEdit: null,
  selected: null,
  placing: null,
  section: null,
  measuring: false,
  watering: false,
  unopened: null,
  starting: false,
  unsaved: false,
};

/** A worker that failed, as a problem of the file that it was given. */
export function notWorkedOut(text: string): SiteProblem {
  return {
    code: "bad-survey",
    path: "",
    text: `it could not be worked on: ${text}`,
    mend: "try once more; if it stays so, use a smaller survey",
  };
}

/** Puts a site on the desk that was not on it before; what was open stays on the list. */
function shown(
  { adopt, set, get }: DeskTools,
  history: History,
  more: Partial<DeskState> & Pick<DeskState, "siteId" | "turn">,
): void {
  const schemeId = history.present.schemes[0]?.id ?? "";
  set({ steps: get().steps + 1 });
  adopt(history, { ...NOTHING_CHOSEN, schemeId, ...more });
}

/** Puts a site on the desk under a key of its own. An example is kept from the first edit on. */
export function openNew(
  tools: DeskTools,
  site: Site,
  more: Partial<DeskState>,
  { example = null, isOwn = false }: { example?: string | null; isOwn?: boolean } = {},
): void {
  const { keeper, turns } = tools;
  const id = freshKey();
  const kept = example === null ? null : site;
  const schemeId = more.schemeId ?? site.schemes[0]?.id ?? "";
  const fromFile = isOwn ? null : site;
  keeper.hold(id, { revision: 0, kept, schemeId, points: null, example, fromFile });
  keeper.want(id);
  void turns.take(id);
  shown(tools, startHistory(site), { siteId: id, turn: "here", ...more });
}

/**
 * Fetches an example and puts it on the desk as it came with the app. False when it cannot be had, or
 * another site has been asked for since.
 */
export async function openExample(tools: DeskTools, id: string, notice?: string): Promise<boolean> {
  const { set, keeper, large } = tools;
  const example = examples.find((one) => one.id === id);
  if (example === undefined) return false;
  large.giveUp();
  keeper.want(`example ${id}`);
  const text = await example.read().catch(() => null);
  if (!keeper.isWanted(`example ${id}`)) return false;
  if (text === null) {
    set({ notice: words.offline.exampleMissing(example.title) });
    return false;
  }
  const site = readSite(text);
  if (!site.ok) {
    set({ unopened: { file: example.title, problems: site.problems } });
    return false;
  }
  const { name } = site.value;
  openNew(tools, site.value, { notice: notice ?? words.shelf.opened(name) }, { example: id });
  return true;
}

/** Puts a site that was read from a file on the desk; the very same one on the list is reopened. */
export async function openRead(
  tools: DeskTools,
  site: Site,
  notice = words.shelf.opened(site.name),
): Promise<void> {
  let id: string | null = null;
  if (!isLarge(site)) {
    try {
      id = await sameSite(await shelfBase(), site.name, writeSite(site));
    } catch (fault) {
      // Then there is no list to find it on; the desk works without.
      tools.keeper.tellTrouble(fault);
    }
  }
  if (id === null || !(await openKept(tools, id, notice))) openNew(tools, site, { notice });
}

/** The whole text of what was kept, though its points were kept apart. */
export async function wholeText({
  text,
  points,
}: Pick<KeptSite, "text" | "points">): Promise<string> {
  if (points === null) return text;
  const site = JSON.parse(text) as { survey: { points: unknown } };
  site.survey.points = JSON.parse(await points.text());
  return `${JSON.stringify(site, null, 2)}\n`;
}

/** Holds a kept site for this page, as it has just been read. */
function holdKept({ keeper }: DeskTools, { head, points }: KeptSite, site: Site): void {
  const { id, revision, schemeId, stamp } = head;
  const apart = points === null || stamp === null ? null : { stamp, points };
  // The same blob again, so that an edit of something else need not write the points anew.
  if (points !== null) surveyTextMade(site.survey.points, points);
  keeper.hold(id, { revision, kept: site, schemeId, points: apart, example: null, fromFile: null });
}

/** Puts a kept site on the desk; false when it cannot be used, which the person is told. */
function putOnDesk(tools: DeskTools, kept: KeptSite, turn: Turn, notice: string): Promise<boolean> {
  const { set, large } = tools;
  const { head, text, points } = kept;
  const more = { siteId: head.id, schemeId: head.schemeId, turn, notice };
  if (points === null && !isLong(text)) {
    const history = kept.history ?? historyOf(text);
    if ("problems" in history) {
      set({ unopened: { file: head.name, problems: history.problems, text } });
      return Promise.resolve(false);
    }
    holdKept(tools, kept, history.present);
    shown(tools, history, more);
    return Promise.resolve(true);
  }
  return new Promise((done) => {
    const fail = (problems: readonly SiteProblem[]): void => {
      void wholeText(kept)
        .catch(() => text)
        .then((whole) => {
          set({ unopened: { file: head.name, problems, text: whole } });
          done(false);
        });
    };
    const reading = {
      onSite(site: Site) {
        holdKept(tools, kept, site);
        shown(tools, startHistory(site), more);
        large.whenLanded(done);
      },
      onProblems: fail,
      onFault: (why: string) => fail([notWorkedOut(why)]),
    };
    large.read(text, points, head.name, reading, () => done(false));
  });
}

function historyOf(text: string): History | { problems: readonly SiteProblem[] } {
  const site = readSite(text);
  return site.ok ? startHistory(site.value) : { problems: site.problems };
}

/** Puts a site of the list on the desk. False when it is not there or cannot be used. */
export async function openKept(tools: DeskTools, id: string, notice = ""): Promise<boolean> {
  const { get, set, keeper, turns, large } = tools;
  large.giveUp();
  keeper.want(id);
  await keeper.settled();
  const isHere = await turns.take(id);
  const kept = await readKeptSite(await shelfBase(), id);
  // Another site may have been asked for since.
  if (!keeper.isWanted(id)) return false;
  const isOn =
    kept !== null && (await putOnDesk(tools, kept, isHere ? "here" : "elsewhere", notice));
  if (!isOn) {
    keeper.want(get().siteId);
    if (get().siteId !== id) turns.letGo(id);
  }
  if (kept === null) set({ notice: words.shelf.gone });
  return isOn;
}

/** Shows what another page has kept of the open site meanwhile. */
async function followOther(tools: DeskTools, id: string): Promise<void> {
  const { get } = tools;
  const kept = await readKeptSite(await shelfBase(), id);
  const { siteId, turn, unsaved } = get();
  if (kept === null || kept.points !== null || siteId !== id || turn === "here" || unsaved) return;
  await putOnDesk(tools, kept, turn, "");
}

/** Puts a copy of what is on the desk on the list, and works on that. */
async function workOnCopy(tools: DeskTools): Promise<void> {
  const site = tools.now()?.present;
  if (site === undefined) return;
  let names = [site.name];
  try {
    names = (await listHeads(await shelfBase())).map((head) => head.name);
  } catch (fault) {
    tools.keeper.tellTrouble(fault);
  }
  const copy = renameSite(site, copyName(site.name, names));
  const { schemeId } = tools.get();
  tools.keeper.carriedOn();
  openNew(tools, copy, { schemeId, notice: words.shelf.onCopy(copy.name) }, { isOwn: true });
}

/** Sharing sites with other pages of this browser: who works on which, and how that changes. */
export function sharing(tools: DeskTools): {
  listen: () => void;
  workHere: () => Promise<void>;
  workOnCopy: () => Promise<void>;
} {
  const { get, set, keeper, turns } = tools;
  const isOpen = (id: string): boolean => get().siteId === id;
  return {
    listen: () =>
      turns.listen({
        onGranted(id) {
          if (!isOpen(id) || get().turn !== "elsewhere") return;
          void openKept(tools, id, words.shelf.yoursNow).catch(keeper.tellTrouble);
        },
        onLost(id) {
          if (!isOpen(id)) return;
          get().dragEnd(true);
          set({ turn: "moved", unsaved: keeper.hasUnsaved(), placing: null });
        },
        async onAsked(id) {
          if (isOpen(id)) await keeper.keepNow();
        },
        onShelfChanged(id) {
          if (isOpen(id)) void followOther(tools, id).catch(keeper.tellTrouble);
        },
      }),
    async workHere() {
      const { siteId } = get();
      await turns.takeOver(siteId);
      await openKept(tools, siteId, words.shelf.yoursNow);
    },
    workOnCopy: () => workOnCopy(tools),
  };
}
