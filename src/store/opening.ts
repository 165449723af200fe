import { readSite, writeSite } from "../site/index.js";
import type { Site } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskActions, DeskState, Unopened } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { examples } from "./examples.js";
import { isLong } from "./groundTalk.js";
import { openInTab } from "./keeper.js";
import { openLink } from "./openLink.js";
import { notWorkedOut, openExample, openKept, openNew, openRead, sharing } from "./openSites.js";
import { shelfBase } from "./shelf/base.js";
import type { LastOpen, ShelfBase, ThemeChoice } from "./shelf/base.js";
import { fileName } from "./shelf/names.js";
import { keepSetting, listHeads, purgeSites, readSetting } from "./shelf/sites.js";

type Opening = Pick<
  DeskActions,
  | "begin"
  | "openText"
  | "openExample"
  | "openKept"
  | "openNext"
  | "keepNow"
  | "sitesElsewhere"
  | "workHere"
  | "workOnCopy"
  | "startSite"
  | "chooseScheme"
  | "siteFile"
  | "show"
  | "tell"
  | "keepFailed"
  | "dropSetAside"
  | "dismissUnopened"
  | "stopWaiting"
  | "workAgain"
>;

/** Sites taken off the list this long ago are gone for good, ms: no page can bring them back. */
const FORGOTTEN = 600_000;

/** What this tab had open, else what was open last on the device. */
async function lastOpen(base: ShelfBase): Promise<LastOpen | null> {
  const [first] = await listHeads(base);
  const open = openInTab() ?? ((await readSetting(base, "open")) as LastOpen | undefined);
  return open ?? (first === undefined ? null : { site: first.id });
}

/** Takes up the theme that was chosen on this device. */
async function restoreTheme(tools: DeskTools): Promise<void> {
  const theme = (await readSetting(await shelfBase(), "theme")) as ThemeChoice | undefined;
  if (theme !== undefined) tools.set({ theme });
}

/** Opens what was open last; false when that was nothing, or cannot be used. */
async function openLast(tools: DeskTools): Promise<boolean> {
  const base = await shelfBase();
  await purgeSites(base, Date.now() - FORGOTTEN);
  const open = await lastOpen(base);
  if (open === null || tools.get().history !== null) return false;
  return "example" in open ? openExample(tools, open.example, "") : openKept(tools, open.site);
}

/** Opens the site that was changed last, else the first example. */
async function openNext(tools: DeskTools): Promise<void> {
  const [next] = await listHeads(await shelfBase());
  const first = examples[0];
  if (next !== undefined && (await openKept(tools, next.id))) return;
  if (first !== undefined) await openExample(tools, first.id);
}

/** Opens what was kept in this browser; else the first example; else an empty page. */
async function beginDesk(tools: DeskTools, listen: () => void): Promise<void> {
  const { get, set, keeper } = tools;
  const inBackground = (): void => {
    if (document.visibilityState === "hidden") void keeper.keepNow();
  };
  document.addEventListener("visibilitychange", inBackground);
  window.addEventListener("pagehide", () => void keeper.keepNow());
  listen();
  window.addEventListener("hashchange", () => void openLink(tools));
  let trouble: { fault: unknown } | null = null;
  // What is wrong with a link is told over whatever is opened instead.
  let unfit: Unopened | null = null;
  try {
    await restoreTheme(tools);
    if (await openLink(tools)) return;
    unfit = get().unopened;
    if (await openLast(tools)) {
      if (unfit !== null) set({ unopened: unfit });
      return;
    }
  } catch (fault) {
    trouble = { fault };
  }
  // The person may have opened another site while the kept one was read.
  if (get().history !== null) return;
  const unopened = get().unopened ?? unfit;
  const first = examples[0];
  if (first === undefined || !(await openExample(tools, first.id, ""))) {
    if (get().history === null) set({ status: "empty", starting: true });
  }
  // What could not be opened stays on the list as it is.
  if (unopened !== null) set({ unopened });
  if (trouble !== null) keeper.tellTrouble(trouble.fault);
}

/** Reads a long text away from the page. Resolves to true when its site comes on the desk. */
function readLong(
  tools: DeskTools,
  text: string,
  file: string,
  use: (site: Site) => void,
): Promise<boolean> {
  const { get, set, large } = tools;
  return new Promise((done) => {
    const end = (part: Partial<DeskState>): void => {
      set({ ...part, ...(get().history === null ? { status: "empty" } : {}) });
      done(false);
    };
    large.read(
      text,
      null,
      file,
      {
        onSite(site) {
          use(site);
          large.whenLanded((landed) => {
            if (landed) done(true);
            else end({});
          });
        },
        onProblems: (problems) => end({ unopened: { file, problems } }),
        onFault: (fault) => end({ unopened: { file, problems: [notWorkedOut(fault)] } }),
      },
      () => end({ notice: STOPPED }),
    );
  });
}

/** Reads a text at once, or away from the page when it is long. True unless it cannot be used. */
function openNowOrSoon(
  tools: DeskTools,
  text: string,
  file: string,
  use: (site: Site) => void,
): boolean {
  if (isLong(text)) {
    void readLong(tools, text, file, use);
    return true;
  }
  const site = readSite(text);
  if (site.ok) use(site.value);
  else tools.set({ unopened: { file, problems: site.problems } });
  return site.ok;
}

const STOPPED = "Stopped. The site on the desk is as it was.";

/** How the desk is looked at. */
function looking(tools: DeskTools): Pick<Opening, "chooseScheme" | "siteFile" | "show"> {
  const { get, set, now, large, adopt, keeper, keepSoon } = tools;
  const keepTheme = async (theme: ThemeChoice): Promise<void> =>
    keepSetting(await shelfBase(), "theme", theme);
  return {
    chooseScheme(schemeId) {
      const history = now();
      if (history === null) return;
      adopt(history, { schemeId, before: null, lastEdit: null, selected: null });
      keepSoon();
    },

    siteFile() {
      const site = now()?.present;
      return site === undefined ? null : { name: fileName(site.name), text: writeSite(site) };
    },

    show(part) {
      set(part);
      if (part.theme !== undefined) keepTheme(part.theme).catch(keeper.tellTrouble);
      if (part.stage !== undefined && get().drawn !== null) {
        set({ working: { fault: null } });
        large.again();
      }
    },
  };
}

/** Opening and leaving sites, and what is told of it. */
export function opening(tools: DeskTools): Opening {
  const { get, set, large, keeper } = tools;
  const { listen, workHere, workOnCopy } = sharing(tools);

  return {
    ...looking(tools),
    ...{ workHere, workOnCopy },
    begin: () => beginDesk(tools, listen),
    openExample: (id) => openExample(tools, id),
    openKept: (id) => openKept(tools, id),
    openNext: () => openNext(tools),
    keepNow: () => keeper.keepNow(),
    sitesElsewhere: () => tools.turns.elsewhere(),

    openText(text, file) {
      large.giveUp();
      return openNowOrSoon(tools, text, file, (site) => void openRead(tools, site));
    },

    startSite(site) {
      large.giveUp();
      const notice = words.shelf.started(site.name);
      openNew(tools, site, { leaf: "survey", notice }, { isOwn: true });
      return new Promise((done) => large.whenLanded(done));
    },

    tell(notice) {
      set({ notice });
    },

    keepFailed: keeper.tellTrouble,

    dropSetAside(site) {
      set({ setAside: get().setAside.filter((one) => one !== site) });
    },

    dismissUnopened() {
      set({ unopened: null });
    },

    stopWaiting() {
      large.giveUp();
      set({ notice: STOPPED });
    },

    workAgain() {
      set({ working: { fault: null } });
      large.again();
    },
  };
}
