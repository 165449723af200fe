import { changeWork, withoutAbsent } from "../../site/index.js";
import type { Work } from "../../site/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";

/** Makes one named edit of this work; a field given as undefined is taken out. */
export function useChange<W extends Work>(work: W): (what: string, next: Partial<W>) => void {
  const { schemeId } = useSite();
  const edit = useEdit();
  return (what, next) =>
    edit(words.digLeaf.changeOf(what, work.name), (site) =>
      changeWork(site, schemeId, work.id, (now) => withoutAbsent({ ...now, ...next })),
    );
}
