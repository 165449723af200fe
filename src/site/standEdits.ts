import { changeScheme } from "./edits.js";
import type { PlanPoint, Site } from "./schema.js";

/** Puts a stand of a scheme's crane at another place in plan, m; the same site where it is there. */
export function moveStand(site: Site, schemeId: string, standId: string, at: PlanPoint): Site {
  return changeScheme(site, schemeId, (scheme) => {
    const lift = scheme.machines?.lift;
    const stand = lift?.stands.find(({ id }) => id === standId);
    if (lift === undefined || stand === undefined) return scheme;
    if (stand.at[0] === at[0] && stand.at[1] === at[1]) return scheme;
    const stands = lift.stands.map((one) =>
      one === stand ? { ...one, at: [at[0], at[1]] as [number, number] } : one,
    );
    return { ...scheme, machines: { ...scheme.machines, lift: { ...lift, stands } } };
  });
}
