import { addProbe, addWork, commit } from "../site/index.js";
import type { DeskActions, DeskState, Picked } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { NO_PICKS } from "./picks.js";
import { placedProbe, placedWork, stripPlace } from "./placed.js";

type Placing = Pick<DeskActions, "select" | "startPlacing" | "stopPlacing" | "place">;

/** Picking, and placing by clicks. */
export function placing({ get, set, large, recorded }: DeskTools): Placing {
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

    startPlacing(kind) {
      set({ placing: { kind }, selected: null, section: null });
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
      const work = placedWork(site, schemeId, placing.kind, at);
      if (work === null) {
        set({ notice: "That place is beyond the survey: choose one on the ground that is drawn." });
        return;
      }
      const order = work.kind === "strip" ? stripPlace(site, schemeId) : undefined;
      recorded(`place ${work.name}`, addWork(site, schemeId, work, order), {
        selected: { kind: "work", id: work.id },
        placing: null,
        leaf: "dig",
      });
    },
  };
}
