import { addProbe, addWork, commit, duplicateWork, findWork, stripsOver } from "../site/index.js";
import type { DeskActions, DeskState, Picked } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { nameOfPicked, withoutPicked } from "./moved.js";
import { placedProbe, placedWork, stripPlace } from "./placed.js";

type Placing = Pick<DeskActions, "select" | "startPlacing" | "stopPlacing" | "place">;

/** Picking, and placing by clicks. */
export function placing({ get, set, large, recorded }: DeskTools): Placing {
  return {
    select(selection) {
      const { leaf } = get();
      if (selection === null) {
        set({ selected: null });
        return;
      }
      const onWork: DeskState["leaf"] = leaf === "flow" ? "flow" : "dig";
      set({ selected: selection, leaf: selection.kind === "work" ? onWork : "survey" });
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

type Copying = Pick<DeskActions, "duplicateSelected" | "removeSelected">;

/** Copying and removing what is picked. */
export function copying({ get, set, now, recorded }: DeskTools): Copying {
  return {
    duplicateSelected() {
      const history = now();
      const { schemeId, selected } = get();
      if (history === null || selected?.kind !== "work") return;
      const work = findWork(history.present, schemeId, selected.id);
      if (work === null) return;
      const site = duplicateWork(history.present, schemeId, work.id, [2, -2]);
      if (site === history.present) {
        set({ notice: `${work.name} lies over a work: a second one would find nothing to take.` });
        return;
      }
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
      const history = now();
      const { schemeId, selected } = get();
      if (history === null || selected === null) return;
      const name = nameOfPicked(history.present, schemeId, selected);
      const site = withoutPicked(history.present, schemeId, selected);
      if (site === history.present) {
        if (selected.kind === "point") {
          set({ notice: "A survey needs three points at least: add one before removing this." });
        }
        return;
      }
      const strips =
        selected.kind === "work" ? stripsOver(history.present, schemeId, selected.id) : [];
      const over = strips.map((strip) => strip.name).join(" and ");
      recorded(`remove ${name ?? ""}`.trim(), site, {
        selected: null,
        notice:
          over === ""
            ? `Removed ${name ?? ""}. Undo brings it back.`
            : `Removed ${name ?? ""}, and ${over} that lay over it. Undo brings all back.`,
      });
    },
  };
}
