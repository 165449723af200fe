import { changeFlow, changePressure } from "../../site/index.js";
import type { Changes, Flow, PressureSystem, Scheme, Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";

/** The scheme in view. */
export function useScheme(): Scheme | undefined {
  const { site, schemeId } = useSite();
  return site.schemes.find((scheme) => scheme.id === schemeId);
}

/** Makes one named edit of the scheme's flow; a field given as undefined is taken out. */
export function useFlowChange(): (what: string, changes: Changes<Flow>) => void {
  const { schemeId } = useSite();
  const edit = useEdit();
  return (what, changes) => edit(what, (site) => changeFlow(site, schemeId, changes));
}

/** Makes one named edit of a pressure system. */
export function usePressureChange(
  system: PressureSystem,
): (what: string, changes: Changes<PressureSystem>) => void {
  const { schemeId } = useSite();
  const edit = useEdit();
  return (what, changes) =>
    edit(words.flowLeaf.changeOf(what, system.name), (site: Site) =>
      changePressure(site, schemeId, system.id, changes),
    );
}
