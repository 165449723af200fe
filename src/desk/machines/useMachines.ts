import { changeScheme, withoutAbsent } from "../../site/index.js";
import type { Changes, Lift, Scheme, Site } from "../../site/index.js";
import { useEdit, useSite } from "../useSite.js";

type Machines = NonNullable<Scheme["machines"]>;

/** A site whose scheme's machines are changed; a field given as undefined is taken out. */
function withMachines(
  site: Site,
  schemeId: string,
  change: (machines: Machines) => Changes<Machines>,
): Site {
  return changeScheme(site, schemeId, (scheme) => {
    const machines = scheme.machines ?? {};
    return {
      ...scheme,
      machines: withoutAbsent<object>({ ...machines, ...change(machines) }),
    };
  });
}

/** Makes one named edit of the scheme's machines. */
export function useMachinesChange(): (
  what: string,
  change: (machines: Machines) => Changes<Machines>,
) => void {
  const { schemeId } = useSite();
  const edit = useEdit();
  return (what, change) => edit(what, (site) => withMachines(site, schemeId, change));
}

/** Makes one named edit of the scheme's lift, which it must have; a field undefined is taken out. */
export function useLiftChange(): (what: string, changes: Changes<Lift>) => void {
  const change = useMachinesChange();
  return (what, changes) =>
    change(what, ({ lift }) =>
      lift === undefined ? {} : { lift: withoutAbsent<object>({ ...lift, ...changes }) as Lift },
    );
}
