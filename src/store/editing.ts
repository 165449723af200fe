import {
  commit,
  hasMark,
  mark,
  pass,
  redo,
  redoName,
  restore,
  stepsOf,
  stepTo,
  undo,
  undoName,
} from "../site/index.js";
import type { History } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskActions, Dragging, DragStep } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { isLarge } from "./groundTalk.js";
import { nameOfPicked, withDragged } from "./moved.js";
import { allPicked, heldWith, nameOfAll, picksIn } from "./picks.js";

type Editing = Pick<
  DeskActions,
  "edit" | "dragBegin" | "dragMove" | "dragEnd" | "undo" | "redo" | "stepTo" | "flyTo"
>;

/** Goes to another present by undo or redo, and tells which edit that was. */
function stepThrough(
  { get, now, adopt, keepSoon, mayChange }: DeskTools,
  next: History,
  name: string | null,
  word: string,
): void {
  const history = now();
  const { figures, steps } = get();
  if (history === null || next === history || name === null || !mayChange()) return;
  adopt(next, {
    before: figures,
    lastEdit: `${word} ${name}`,
    notice: `${word}: ${name}`,
    steps: steps + 1,
  });
  keepSoon();
}

const STEP_NAMES: Readonly<Record<Dragging, (name: string) => string>> = {
  body: words.picked.steps.move,
  raise: words.picked.steps.raise,
  ...words.drawing.steps,
};

/** A drag: one step of the history. */
function dragging({
  get,
  set,
  now,
  large,
  adopt,
  recorded,
  keepSoon,
  mayChange,
}: DeskTools): Pick<Editing, "dragBegin" | "dragMove" | "dragEnd"> {
  /** Where the point of a large survey was dragged to last: its ground is made at the end only. */
  let dragged: DragStep | null = null;
  return {
    dragBegin(selection, doing = "body") {
      const history = now();
      const { schemeId, figures } = get();
      dragged = null;
      if (history === null || large.isComing || !mayChange()) return;
      const site = history.present;
      const picks = heldWith(get(), selection);
      if (hasMark(site, schemeId, selection, "locked")) {
        const locked = nameOfPicked(site, schemeId, selection) ?? selection.id;
        set({ ...picks, notice: words.picked.told.isLocked(locked) });
        return;
      }
      // A corner or a bearing is one thing's own; all that is picked moves and rises together.
      const isWhole = doing === "body" || doing === "raise";
      const held = isWhole ? picksIn(site, schemeId, picks) : [selection];
      const name = STEP_NAMES[doing](nameOfAll(site, schemeId, held));
      set({ history: mark(history, name), before: figures, lastEdit: name, ...picks });
    },

    dragMove(step) {
      const { history, schemeId } = get();
      const begun = history?.mark?.site;
      if (!history || begun === undefined) return;
      const together = allPicked(get());
      if (together.some(({ kind }) => kind === "point") && isLarge(begun)) {
        dragged = step;
        return;
      }
      adopt(pass(history, withDragged(begun, schemeId, step, together)));
    },

    dragEnd(cancelled) {
      const { history, schemeId, before } = get();
      if (history === null || history.mark === null) return;
      if (dragged !== null && !cancelled) {
        const { site, name } = history.mark;
        set({ history: commit(history) });
        recorded(name, withDragged(site, schemeId, dragged, allPicked(get())));
        return;
      }
      adopt(
        cancelled ? restore(history) : commit(history),
        cancelled ? { before: null } : { before },
      );
      keepSoon();
    },
  };
}

/** Edits of the document, and the way back through them. */
export function editing(tools: DeskTools): Editing {
  const { get, now, recorded } = tools;
  return {
    edit(name, change) {
      const history = now();
      if (history !== null) recorded(name, change(commit(history).present));
    },

    ...dragging(tools),

    undo() {
      const history = now();
      if (history === null) return;
      const name = history.mark?.name ?? undoName(history);
      stepThrough(tools, undo(history), name, "Undone");
    },

    redo() {
      const history = now();
      if (history !== null) stepThrough(tools, redo(history), redoName(history), "Done again");
    },

    stepTo(index) {
      const history = now();
      if (history === null) return;
      const step = stepsOf(history)[index];
      const name = step?.name ?? words.book.steps.oldest;
      stepThrough(tools, stepTo(history, index), name, words.book.steps.went);
    },

    flyTo(picked, leaf) {
      const history = now();
      const { schemeId, frameAsked } = get();
      if (history === null || nameOfPicked(history.present, schemeId, picked) === null) return;
      tools.set({ selected: picked, also: [], leaf, placing: null, frameAsked: frameAsked + 1 });
    },
  };
}
