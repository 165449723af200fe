import { commit, mark, pass, redo, redoName, restore, undo, undoName } from "../site/index.js";
import type { History } from "../site/index.js";
import type { DeskActions } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { nameOfPicked, withDragged, withMoved } from "./moved.js";

type Editing = Pick<
  DeskActions,
  "edit" | "dragBegin" | "dragMove" | "dragEnd" | "undo" | "redo" | "nudge"
>;

/** Goes to another present by undo or redo, and tells which edit that was. */
function stepThrough(
  { get, adopt, keepSoon }: DeskTools,
  next: History,
  name: string | null,
  word: string,
): void {
  const { history, figures, steps } = get();
  if (history === null || next === history || name === null) return;
  adopt(next, {
    before: figures,
    lastEdit: `${word} ${name}`,
    notice: `${word}: ${name}`,
    steps: steps + 1,
  });
  keepSoon();
}

/** Edits of the document, and the way back through them. */
export function editing(tools: DeskTools): Editing {
  const { get, set, adopt, recorded, keepSoon } = tools;
  return {
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
      stepThrough(tools, undo(history), name, "Undone");
    },

    redo() {
      const { history } = get();
      if (history !== null) stepThrough(tools, redo(history), redoName(history), "Done again");
    },

    nudge(by) {
      const { history, schemeId, selected } = get();
      if (history === null || selected === null) return;
      const name = nameOfPicked(history.present, schemeId, selected) ?? "it";
      recorded(`nudge ${name}`, withMoved(history.present, schemeId, selected, by));
    },
  };
}
