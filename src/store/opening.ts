import { readSite, record, writeSite } from "../site/index.js";
import type { Site, SiteProblem } from "../site/index.js";
import { readKept } from "./autosave.js";
import type { Kept } from "./autosave.js";
import type { DeskActions, DeskState } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { examples } from "./examples.js";
import { isLong } from "./groundTalk.js";
import { words } from "../words/index.js";

type Opening = Pick<
  DeskActions,
  | "begin"
  | "openText"
  | "startSite"
  | "chooseScheme"
  | "siteFile"
  | "show"
  | "tell"
  | "dismissUnopened"
  | "stopWaiting"
  | "workAgain"
>;

/** A file name from the site's own name. */
function fileName(site: Site): string {
  const stem = site.name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  return `${stem === "" ? "site" : stem}.site.json`;
}

const KEPT_NAME = "The site kept in this browser";

/** The whole text of what was kept, though its points were kept apart. */
async function wholeText({ text, points }: Kept): Promise<string> {
  if (points === null) return text;
  const site = JSON.parse(text) as { survey: { points: unknown } };
  site.survey.points = JSON.parse(await points.text());
  return JSON.stringify(site);
}

/** Opens what was kept; false when it cannot be used, which the person is told with its text. */
async function openKept({ set, large, opened }: DeskTools, kept: Kept): Promise<boolean> {
  const { schemeId, theme } = kept;
  if (kept.points === null && !isLong(kept.text)) {
    const site = readSite(kept.text);
    if (site.ok) opened(site.value, { schemeId, theme });
    else set({ unopened: { file: KEPT_NAME, problems: site.problems, text: kept.text } });
    return site.ok;
  }
  set({ theme });
  return new Promise((done) => {
    const fail = (problems: readonly SiteProblem[]): void => {
      void wholeText(kept).then(
        (text) => {
          set({ unopened: { file: KEPT_NAME, problems, text } });
          done(false);
        },
        () => {
          set({ unopened: { file: KEPT_NAME, problems, text: kept.text } });
          done(false);
        },
      );
    };
    large.read(
      kept.text,
      kept.points,
      KEPT_NAME,
      {
        onSite(site) {
          opened(site, { schemeId, theme });
          large.whenLanded((landed) => {
            if (landed) done(true);
            else fail([CANCELLED]);
          });
        },
        onProblems: fail,
        onFault: (text) => fail([notWorkedOut(text)]),
      },
      () => fail([CANCELLED]),
    );
  });
}

const CANCELLED: SiteProblem = {
  code: "bad-survey",
  path: "",
  text: "it did not come on the desk",
  mend: "load the page again to open it, or save it as a file here before you change another site",
};

/** A worker that failed, as a problem of the file that it was given. */
function notWorkedOut(text: string): SiteProblem {
  return {
    code: "bad-survey",
    path: "",
    text: `it could not be worked on: ${text}`,
    mend: "try once more; if it stays so, use a smaller survey",
  };
}

/** Opens the first example; without one an empty page, which says what to do. */
async function openFirst({ get, set }: DeskTools): Promise<void> {
  const first = examples[0];
  const text = await first?.read().catch(() => null);
  // The person may have opened another site while the example was fetched.
  if (get().history !== null) return;
  const isOpen =
    first !== undefined && typeof text === "string" && get().openText(text, first.title);
  if (!isOpen) set({ status: "empty", starting: true });
  set({
    notice: text === null && first !== undefined ? words.offline.exampleMissing(first.title) : "",
  });
}

/** Opens what was kept in this browser; else the first example; else an empty page. */
async function beginDesk(tools: DeskTools): Promise<void> {
  const { get, set, keepNow, keepNothing } = tools;
  const inBackground = (): void => {
    if (document.visibilityState === "hidden") void keepNow();
  };
  document.addEventListener("visibilitychange", inBackground);
  window.addEventListener("pagehide", () => void keepNow());
  let trouble = "";
  try {
    const kept = await readKept();
    if (kept !== null && (await openKept(tools, kept))) return;
  } catch (fault) {
    trouble = fault instanceof Error ? fault.message : String(fault);
  }
  // The person may have opened another site while the kept one was read.
  if (get().history !== null) return;
  const { unopened } = get();
  await openFirst(tools);
  if (unopened !== null) {
    // What could not be opened now may be another time: only an edit puts another in its place.
    keepNothing();
    set({ unopened });
  }
  if (trouble !== "") {
    set({
      keeping: {
        state: "failed",
        text: `This browser keeps nothing for Bankyard (${trouble}). Use Save to keep the site as a file.`,
      },
    });
  }
}

/** Puts another site in place of the open one; undo goes back to that. */
function swapped(
  { now, adopt, opened, keepSoon }: DeskTools,
  step: string,
  site: Site,
  more: Partial<DeskState>,
): void {
  const history = now();
  if (history === null) {
    opened(site, more);
    return;
  }
  adopt(record(history, site, step), {
    schemeId: site.schemes[0]?.id ?? "",
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

/** Opening and leaving sites, and how the desk is looked at. */
export function opening(tools: DeskTools): Opening {
  const { get, set, now, large, adopt, keepSoon } = tools;
  const started = (site: Site): void =>
    swapped(tools, `start ${site.name}`, site, {
      leaf: "survey",
      notice: `${site.name} is on the desk. Undo goes back to the site before it.`,
    });

  return {
    begin: () => beginDesk(tools),

    openText(text, file) {
      large.giveUp();
      const use = (site: Site): void =>
        swapped(tools, `open ${site.name}`, site, { notice: `Opened ${site.name}.` });
      return openNowOrSoon(tools, text, file, use);
    },

    startSite(site) {
      large.giveUp();
      started(site);
      return new Promise((done) => large.whenLanded(done));
    },

    chooseScheme(schemeId) {
      const history = now();
      if (history === null) return;
      adopt(history, { schemeId, before: null, lastEdit: null, selected: null });
      keepSoon();
    },

    siteFile() {
      const site = now()?.present;
      return site === undefined ? null : { name: fileName(site), text: writeSite(site) };
    },

    show(part) {
      set(part);
      if (part.theme !== undefined) keepSoon();
      if (part.stage !== undefined && get().drawn !== null) {
        set({ working: { fault: null } });
        large.again();
      }
    },

    tell(notice) {
      set({ notice });
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
