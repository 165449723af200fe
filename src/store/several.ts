import { setMark, showAll } from "../site/index.js";
import type { Mark, Site, Thing } from "../site/index.js";
import { words } from "../words/index.js";
import type { DeskActions, DeskState, Picked } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { canRaise, withAllMoved, withAllRaised } from "./movedTogether.js";
import { allPicked, nameOfAll, picksIn, picksOf, togglePicked, withPicked } from "./picks.js";

type Picking = Pick<DeskActions, "pick" | "pickThese" | "pickAll" | "setSeveral">;

/** The leaf on which what is picked has its form. */
function leafFor(things: readonly Picked[], leaf: DeskState["leaf"]): DeskState["leaf"] {
  const [first] = things;
  if (first === undefined) return leaf;
  if (things.some(({ kind }) => kind === "work")) return leaf === "flow" ? "flow" : "dig";
  return "survey";
}

/** Picking several things. */
export function picking({ get, set, now }: DeskTools): Picking {
  const adopt = (things: readonly Picked[]): void => {
    const many = things.length > 1 && things.some(({ kind }) => kind === "work");
    set({ ...picksOf(things), leaf: many ? "dig" : leafFor(things, get().leaf) });
  };
  return {
    pick(thing, add) {
      const { select, several } = get();
      const adds = add || several;
      if (thing !== null && adds) adopt(allPicked(togglePicked(get(), thing)));
      // A tap beside a thing does not let go of all that was gathered.
      else if (thing !== null || !adds) select(thing);
    },

    pickThese(things, add) {
      adopt(allPicked(add ? withPicked(get(), things) : picksOf(things)));
    },

    pickAll() {
      const { schemeId } = get();
      const scheme = now()?.present.schemes.find((one) => one.id === schemeId);
      const shown = (scheme?.works ?? []).filter((work) => work.hidden !== true);
      adopt(shown.map(({ id }) => ({ kind: "work", id })));
    },

    setSeveral(several) {
      set({ several });
    },
  };
}

type Changing = Pick<DeskActions, "nudge" | "raise" | "moveBy" | "mark" | "showAll">;

/** Moving, raising, locking and hiding what is picked: each one named step. */
export function changing({ get, set, now, recorded }: DeskTools): Changing {
  const { steps, told } = words.picked;
  const picked = (): { site: Site; things: Picked[] } | null => {
    const site = now()?.present;
    if (site === undefined) return null;
    const things = picksIn(site, get().schemeId, get());
    return things.length === 0 ? null : { site, things };
  };
  return {
    nudge(by) {
      const held = picked();
      if (held === null) return;
      const { schemeId } = get();
      const name = nameOfAll(held.site, schemeId, held.things);
      recorded(steps.nudge(name), withAllMoved(held.site, schemeId, held.things, by));
    },

    raise(by) {
      const held = picked();
      if (held === null || by === 0) return;
      const { schemeId } = get();
      const { site, things } = held;
      const name = nameOfAll(site, schemeId, things);
      if (!canRaise(site, schemeId, things)) {
        set({ notice: told.notRaised });
        return;
      }
      const step = by > 0 ? steps.raise : steps.lower;
      recorded(step(name), withAllRaised(site, schemeId, things, by));
    },

    moveBy([east, north, up]) {
      const held = picked();
      if (held === null) return;
      const { schemeId } = get();
      const { site, things } = held;
      const moved = withAllMoved(site, schemeId, things, [east, north]);
      const name = nameOfAll(site, schemeId, things);
      recorded(steps.move(name), withAllRaised(moved, schemeId, things, up));
    },

    mark(mark, on, named) {
      const site = now()?.present;
      const { schemeId } = get();
      if (site === undefined) return;
      const things: readonly Thing[] = named ?? picksIn(site, schemeId, get());
      const name = nameOfAll(site, schemeId, things);
      recorded(markStep(mark, on)(name), setMark(site, schemeId, things, mark, on), {
        ...(mark === "hidden" && on ? { notice: told.hidden(name) } : {}),
      });
    },

    showAll() {
      const site = now()?.present;
      if (site !== undefined) recorded(steps.showAll, showAll(site, get().schemeId));
    },
  };
}

function markStep(mark: Mark, on: boolean): (name: string) => string {
  const { steps } = words.picked;
  if (mark === "locked") return on ? steps.lock : steps.unlock;
  return on ? steps.hide : steps.show;
}
