import { copyWorksTo, duplicateWorks, findWork, stripsOver } from "../site/index.js";
import type { Site, Work } from "../site/index.js";
import { words } from "../words/index.js";
import { besideOffset } from "./beside.js";
import type { DeskActions, Picked } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { nameOfPicked, withoutPicked } from "./moved.js";
import { freeOf } from "./movedTogether.js";
import { nameOfAll, picksIn, picksOf } from "./picks.js";

type Copying = Pick<DeskActions, "duplicateSelected" | "removeSelected" | "copyToScheme">;

function worksOf(site: Site, schemeId: string, things: readonly Picked[]): Work[] {
  return things
    .filter(({ kind }) => kind === "work")
    .map(({ id }) => findWork(site, schemeId, id))
    .filter((work) => work !== null);
}

/** What is told when these things have gone. */
function removedNotice(site: Site, schemeId: string, gone: readonly Picked[]): string {
  const { told, and } = words.picked;
  const name = nameOfAll(site, schemeId, gone);
  if (gone.length > 1) return told.removedAll(name);
  const strips = gone.flatMap(({ id, kind }) =>
    kind === "work" ? stripsOver(site, schemeId, id) : [],
  );
  const over = strips.map((strip) => strip.name);
  return over.length === 0 ? told.removed(name) : told.removedWith(name, and(over));
}

/** Takes away what is picked, but for what is locked. */
function remove({ get, set, now, recorded }: DeskTools): void {
  const { told, and, steps } = words.picked;
  const site = now()?.present;
  const { schemeId } = get();
  if (site === undefined) return;
  const things = picksIn(site, schemeId, get());
  const gone = freeOf(site, schemeId, things);
  const kept = things.filter((thing) => !gone.includes(thing));
  const names = and(kept.map((thing) => nameOfPicked(site, schemeId, thing) ?? thing.id));
  if (gone.length === 0) {
    if (kept.length > 0) set({ notice: told.isLocked(names) });
    return;
  }
  const next = gone.reduce((left, thing) => withoutPicked(left, schemeId, thing), site);
  if (next === site) {
    if (gone.some(({ kind }) => kind === "point")) set({ notice: told.lastPoints });
    return;
  }
  const notice = removedNotice(site, schemeId, gone);
  const also = kept.length === 0 ? "" : ` ${told.lockedStayed(names)}`;
  recorded(steps.remove(nameOfAll(site, schemeId, gone)), next, {
    ...picksOf(kept),
    notice: notice + also,
  });
}

/** Copying and removing what is picked. */
export function copying(tools: DeskTools): Copying {
  const { get, set, now, recorded } = tools;
  return {
    duplicateSelected() {
      const site = now()?.present;
      const { schemeId } = get();
      if (site === undefined) return;
      const works = worksOf(site, schemeId, picksIn(site, schemeId, get()));
      const [first] = works;
      if (first === undefined) return;
      const ids = works.map((work) => work.id);
      const { site: next, copies } = duplicateWorks(site, schemeId, ids, besideOffset(site, works));
      if (copies.length === 0) {
        set({ notice: words.picked.told.notCopied(first.name) });
        return;
      }
      const originals = works.map(({ id }): Picked => ({ kind: "work", id }));
      const picks = picksOf(copies.map((id) => ({ kind: "work", id })));
      recorded(words.picked.steps.copy(nameOfAll(site, schemeId, originals)), next, picks);
    },

    copyToScheme(toScheme) {
      const site = now()?.present;
      const { schemeId } = get();
      const target = site?.schemes.find((scheme) => scheme.id === toScheme);
      if (site === undefined || target === undefined) return;
      const things = picksIn(site, schemeId, get()).filter(({ kind }) => kind === "work");
      const ids = things.map(({ id }) => id);
      const { site: next, copies } = copyWorksTo(site, schemeId, ids, toScheme);
      const name = nameOfAll(site, schemeId, things);
      if (copies.length === 0) {
        if (ids.length > 0) set({ notice: words.picked.told.notCopied(name) });
        return;
      }
      recorded(words.picked.steps.copyTo(name, target.name), next, {
        notice: words.picked.told.copiedTo(name, target.name),
      });
    },

    removeSelected: () => remove(tools),
  };
}
