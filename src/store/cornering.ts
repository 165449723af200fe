import { cornerKept, cornersOf, removeCorner } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskActions } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { nameOfPicked } from "./moved.js";

/** Taking corners away. */
export function cornering({
  get,
  set,
  now,
  recorded,
}: DeskTools): Pick<DeskActions, "removeCorner"> {
  return {
    removeCorner(picked, corner) {
      const site = now()?.present;
      const { schemeId } = get();
      const corners = site === undefined ? null : cornersOf(site, schemeId, picked);
      if (site === undefined || corners?.places[corner] === undefined) return;
      const name = nameOfPicked(site, schemeId, picked) ?? picked.id;
      const kept = cornerKept(corners, corner);
      const says = words.drawing.corner;
      if (kept === null) {
        const next = removeCorner(site, schemeId, picked, corner);
        recorded(words.drawing.steps.remove(name), next, { selected: picked });
      } else if (kept.code === "too-few") {
        set({ notice: says.tooFew(name, String(kept.least)) });
      } else set({ notice: says.crosses(name, kept.problem) });
    },
  };
}
