import { create } from "zustand";
import {
  addProbe,
  addWork,
  commit,
  duplicateWork,
  findWork,
  mark,
  pass,
  readSite,
  record,
  redo,
  redoName,
  restore,
  startHistory,
  undo,
  undoName,
  writeSite,
} from "../site/index.js";
import type { History, Site } from "../site/index.js";
import { keep, readKept } from "./autosave.js";
import type { DeskState, DeskStore, Picked } from "./deskState.js";
import { examples } from "./examples.js";
import { fiveFigures } from "./figures.js";
import { nameOfPicked, withDragged, withMoved, withoutPicked } from "./moved.js";
import { placedProbe, placedWork } from "./placed.js";
import { worked } from "./worked.js";

const KEEP_AFTER_MS = 300;

const beginning: DeskState = {
  status: "opening",
  history: null,
  schemeId: "",
  estimate: null,
  fault: null,
  figures: null,
  before: null,
  lastEdit: null,
  selected: null,
  placing: null,
  stage: "dug",
  view: "orbit",
  theme: "system",
  leaf: "dig",
  starting: false,
  keeping: { state: "kept" },
  unopened: null,
  notice: "",
};

/** The desk's state: one document with its history, what is shown of it, and its estimate. */
export const useDesk = create<DeskStore>()((set, get) => {
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

  /** Shows another present: works out its figures in the same turn, and drops what is gone. */
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

  function stepThrough(next: History, name: string | null, word: string): void {
    const { history, figures } = get();
    if (history === null || next === history || name === null) return;
    adopt(next, { before: figures, lastEdit: `${word} ${name}`, notice: `${word}: ${name}` });
    keepSoon();
  }

  return {
    ...beginning,

    async begin() {
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
            opened(site.value, { schemeId: kept.schemeId, theme: kept.theme });
            return;
          }
          set({ unopened: { file: "the site kept in this browser", problems: site.problems } });
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
    },

    edit(name, change) {
      const { history } = get();
      if (history !== null) recorded(name, change(commit(history).present));
    },

    dragBegin(selection) {
      const { history, schemeId, figures } = get();
      if (history === null) return;
      const name = nameOfPicked(history.present, schemeId, selection) ?? "it";
      set({
        history: mark(history, `move ${name}`),
        before: figures,
        lastEdit: `move ${name}`,
        selected: selection,
      });
    },

    dragMove(step) {
      const { history, schemeId } = get();
      const begun = history?.mark?.site;
      if (!history || begun === undefined) return;
      adopt(pass(history, withDragged(begun, schemeId, step)));
    },

    dragEnd(cancelled) {
      const { history, before } = get();
      if (history === null || history.mark === null) return;
      adopt(
        cancelled ? restore(history) : commit(history),
        cancelled ? { before: null } : { before },
      );
      keepSoon();
    },

    undo() {
      const { history } = get();
      if (history === null) return;
      const name = history.mark?.name ?? undoName(history);
      stepThrough(undo(history), name, "Undone");
    },

    redo() {
      const { history } = get();
      if (history !== null) stepThrough(redo(history), redoName(history), "Done again");
    },

    select(selection) {
      const { leaf } = get();
      if (selection === null) return set({ selected: null });
      const onWork: DeskState["leaf"] = leaf === "flow" ? "flow" : "dig";
      set({ selected: selection, leaf: selection.kind === "work" ? onWork : "survey" });
    },

    startPlacing(kind) {
      set({ placing: { kind }, selected: null });
    },

    stopPlacing() {
      set({ placing: null });
    },

    place(at) {
      const { history, schemeId, placing } = get();
      const [first] = at;
      if (history === null || placing === null || first === undefined) return;
      const site = commit(history).present;
      if (placing.kind === "probe") {
        const probe = placedProbe(site, first);
        const selected: Picked = { kind: "probe", id: probe.id };
        recorded("place a probe", addProbe(site, probe), {
          selected,
          placing: null,
          leaf: "survey",
        });
        return;
      }
      const work = placedWork(site, schemeId, placing.kind, at);
      if (work === null) {
        set({ notice: "That place is beyond the survey: choose one on the ground that is drawn." });
        return;
      }
      recorded(`place ${work.name}`, addWork(site, schemeId, work), {
        selected: { kind: "work", id: work.id },
        placing: null,
        leaf: "dig",
      });
    },

    duplicateSelected() {
      const { history, schemeId, selected } = get();
      if (history === null || selected?.kind !== "work") return;
      const work = findWork(history.present, schemeId, selected.id);
      if (work === null) return;
      const site = duplicateWork(history.present, schemeId, work.id, [2, -2]);
      const had = new Set(
        history.present.schemes.find((one) => one.id === schemeId)?.works.map((one) => one.id),
      );
      const copy = site.schemes
        .find((one) => one.id === schemeId)
        ?.works.find((one) => !had.has(one.id));
      recorded(`copy ${work.name}`, site, {
        selected: copy === undefined ? selected : { kind: "work", id: copy.id },
      });
    },

    removeSelected() {
      const { history, schemeId, selected } = get();
      if (history === null || selected === null) return;
      const name = nameOfPicked(history.present, schemeId, selected);
      const site = withoutPicked(history.present, schemeId, selected);
      if (site === history.present) {
        if (selected.kind === "point") {
          set({ notice: "A survey needs three points at least: add one before removing this." });
        }
        return;
      }
      recorded(`remove ${name ?? ""}`.trim(), site, {
        selected: null,
        notice: `Removed ${name ?? ""}. Undo brings it back.`,
      });
    },

    nudge(by) {
      const { history, schemeId, selected } = get();
      if (history === null || selected === null) return;
      const name = nameOfPicked(history.present, schemeId, selected) ?? "it";
      recorded(`nudge ${name}`, withMoved(history.present, schemeId, selected, by));
    },

    show(part) {
      set(part);
      if (part.theme !== undefined) keepSoon();
    },

    chooseScheme(schemeId) {
      const { history } = get();
      if (history === null) return;
      adopt(history, { schemeId, before: null, lastEdit: null, selected: null });
      keepSoon();
    },

    openText(text, file) {
      const site = readSite(text);
      if (!site.ok) {
        set({ unopened: { file, problems: site.problems } });
        return false;
      }
      opened(site.value, { notice: `Opened ${site.value.name}.` });
      return true;
    },

    startSite(site) {
      const { history } = get();
      if (history === null) return opened(site, { leaf: "survey" });
      adopt(record(history, site, `start ${site.name}`), {
        schemeId: site.schemes[0]?.id ?? "",
        before: null,
        lastEdit: null,
        selected: null,
        placing: null,
        starting: false,
        leaf: "survey",
        notice: `${site.name} is on the desk. Undo goes back to the site before it.`,
      });
      keepSoon();
    },

    siteFile() {
      const { history } = get();
      if (history === null) return null;
      const site = history.present;
      const stem = site.name
        .toLowerCase()
        .replace(/[^\p{L}\p{N}]+/gu, "-")
        .replace(/^-+|-+$/g, "");
      return { name: `${stem === "" ? "site" : stem}.site.json`, text: writeSite(site) };
    },

    tell(notice) {
      set({ notice });
    },

    dismissUnopened() {
      set({ unopened: null });
    },
  };
});
