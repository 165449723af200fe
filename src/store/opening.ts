import { readSite, record, writeSite } from "../site/index.js";
import type { Site } from "../site/index.js";
import { readKept } from "./autosave.js";
import type { DeskActions, DeskState } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { examples } from "./examples.js";
import { waiting } from "./waiting.js";
import type { Waiting } from "./waiting.js";

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
>;

/** A file name from the site's own name. */
function fileName(site: Site): string {
  const stem = site.name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  return `${stem === "" ? "site" : stem}.site.json`;
}

/** Opens what was kept in this browser; else the first example; else an empty page. */
async function beginDesk(
  { get, set, opened, keepNow }: DeskTools,
  whenGround: Waiting["whenGround"],
): Promise<void> {
  const inBackground = (): void => {
    if (document.visibilityState === "hidden") void keepNow();
  };
  document.addEventListener("visibilitychange", inBackground);
  window.addEventListener("pagehide", () => void keepNow());
  let trouble = "";
  try {
    const kept = await readKept();
    if (kept !== null) {
      const site = readSite(kept.text);
      if (site.ok) {
        whenGround(site.value, () => {
          opened(site.value, { schemeId: kept.schemeId, theme: kept.theme });
        });
        return;
      }
      set({
        unopened: {
          file: "The site kept in this browser",
          problems: site.problems,
          text: kept.text,
        },
      });
    }
  } catch (fault) {
    trouble = fault instanceof Error ? fault.message : String(fault);
  }
  const { unopened } = get();
  const first = examples[0];
  if (first === undefined || !get().openText(first.text, first.title)) {
    set({ status: "empty", starting: true });
  }
  set({ notice: "" });
  if (unopened !== null) set({ unopened });
  if (trouble !== "") {
    set({
      keeping: {
        state: "failed",
        text: `This browser keeps nothing for Bankyard (${trouble}). Use Save to keep the site as a file.`,
      },
    });
  }
}

/** Puts another site in place of the open one, once its ground is made; undo goes back to that. */
function swapping(
  { get, adopt, opened, keepSoon }: DeskTools,
  whenGround: Waiting["whenGround"],
): (step: string, site: Site, more: Partial<DeskState>) => void {
  function swap(step: string, site: Site, more: Partial<DeskState>): void {
    const { history } = get();
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
      unopened: null,
      starting: false,
      ...more,
    });
    keepSoon();
  }

  return (step, site, more) => {
    whenGround(site, () => {
      swap(step, site, more);
    });
  };
}

/** Opening and leaving sites, and how the desk is looked at. */
export function opening(tools: DeskTools): Opening {
  const { get, set, adopt, keepSoon } = tools;
  const { whenGround, stopWaiting } = waiting(tools);

  const swapped = swapping(tools, whenGround);

  return {
    begin: () => beginDesk(tools, whenGround),

    openText(text, file) {
      const site = readSite(text);
      if (!site.ok) {
        set({ unopened: { file, problems: site.problems } });
        return false;
      }
      const { name } = site.value;
      swapped(`open ${name}`, site.value, { notice: `Opened ${name}.` });
      return true;
    },

    startSite(site) {
      swapped(`start ${site.name}`, site, {
        leaf: "survey",
        notice: `${site.name} is on the desk. Undo goes back to the site before it.`,
      });
    },

    chooseScheme(schemeId) {
      const { history } = get();
      if (history === null) return;
      adopt(history, { schemeId, before: null, lastEdit: null, selected: null });
      keepSoon();
    },

    siteFile() {
      const site = get().history?.present;
      return site === undefined ? null : { name: fileName(site), text: writeSite(site) };
    },

    show(part) {
      set(part);
      if (part.theme !== undefined) keepSoon();
    },

    tell(notice) {
      set({ notice });
    },

    dismissUnopened() {
      set({ unopened: null });
    },

    stopWaiting,
  };
}
