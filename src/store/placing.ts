import { addProbe, commit } from "../site/index.js";
import type { PlanPoint } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskActions, DeskState, Picked } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { NO_PICKS } from "./picks.js";
import { withPlacedLimit, withPlacedOutlet } from "./placedLimit.js";
import { placedProbe, placedWork, withPlaced } from "./placed.js";

type Placing = Pick<DeskActions, "select" | "startPlacing" | "stopPlacing" | "place">;

/** Picking, and placing by clicks. */
export function placing(tools: DeskTools): Placing {
  const { get, set, large, recorded } = tools;
  return {
    select(selection) {
      const { leaf } = get();
      if (selection === null) {
        set(NO_PICKS);
        return;
      }
      const onWork: DeskState["leaf"] = leaf === "flow" ? "flow" : "dig";
      set({ selected: selection, also: [], leaf: selection.kind === "work" ? onWork : "survey" });
    },

    startPlacing(kind, what) {
      set({
        placing: what === undefined ? { kind } : { kind, what },
        selected: null,
        ...{ section: null, measuring: false, watering: false },
      });
    },

    stopPlacing() {
      set({ placing: null });
    },

    place(at) {
      const { history, schemeId, placing } = get();
      const [first] = at;
      if (history === null || placing === null || first === undefined) return;
      if (large.isComing) {
        // What is placed looks for the ground under it, which is not there yet.
        set({ notice: "The ground is still being worked out. Place it when that is done." });
        return;
      }
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
      if (placing.kind === "limit" || placing.kind === "outlet") {
        const { kind, what = "" } = placing;
        placeOther(tools, kind, what, at);
        return;
      }
      const work = placedWork(site, schemeId, placing.kind, at);
      if (work === null) {
        set({ notice: "That place is beyond the survey: choose one on the ground that is drawn." });
        return;
      }
      recorded(`place ${work.name}`, withPlaced(site, schemeId, placing.kind, work), {
        selected: { kind: "work", id: work.id },
        placing: null,
        leaf: "dig",
      });
    },
  };
}

/** Places a limit of kind `what`, or an outlet of the building `what`. */
function placeOther(
  { get, set, now, recorded }: DeskTools,
  kind: "limit" | "outlet",
  what: string,
  at: readonly PlanPoint[],
): void {
  const history = now();
  const { schemeId } = get();
  const [first] = at;
  if (history === null || first === undefined) return;
  const site = commit(history).present;
  if (kind === "outlet") {
    const next = withPlacedOutlet(site, schemeId, what, first);
    const selected: Picked = { kind: "work", id: what };
    if (next === null) set({ placing: null, notice: words.drawing.noBuilding });
    else recorded(words.drawing.placedOutlet, next, { selected, placing: null, leaf: "dig" });
    return;
  }
  const placed = withPlacedLimit(site, what, at);
  if (placed === null) return;
  recorded(words.drawing.placed(placed.limit.name ?? what), placed.site, {
    selected: { kind: "limit", id: placed.limit.id },
    placing: null,
    leaf: "survey",
  });
}
