/** Edits of a scheme's flow: pure functions from one site to the next, as in `edits.ts`. */
import { withoutAbsent, type Changes } from "./absent.js";
import { changeScheme } from "./edits.js";
import type { Branch, Flow, PressureSystem, Site } from "./schema.js";

/** Sets fields of a scheme's flow; a flow left without any is taken out of the scheme. */
export function changeFlow(site: Site, schemeId: string, changes: Changes<Flow>): Site {
  return changeScheme(site, schemeId, (scheme) => {
    const flow = withoutAbsent<Changes<Flow>>({ ...scheme.flow, ...changes }) as Flow;
    if (Object.keys(flow).length > 0) return { ...scheme, flow };
    const { flow: gone, ...rest } = scheme;
    return gone === undefined ? scheme : rest;
  });
}

function flowOf(site: Site, schemeId: string): Flow {
  return site.schemes.find((scheme) => scheme.id === schemeId)?.flow ?? {};
}

/** Sets a limit of the flow checks to the person's own value, or with null back to the catalogue's. */
export function setFlowRule(site: Site, schemeId: string, id: string, value: number | null): Site {
  const others = (flowOf(site, schemeId).rules ?? []).filter((rule) => rule.id !== id);
  const rules = value === null ? others : [...others, { id, value }];
  return changeFlow(site, schemeId, { rules: rules.length > 0 ? rules : undefined });
}

/** Adds a pressure system to a scheme. */
export function addPressure(site: Site, schemeId: string, system: PressureSystem): Site {
  const pressure = [...(flowOf(site, schemeId).pressure ?? []), system];
  return changeFlow(site, schemeId, { pressure });
}

/** Takes a pressure system away. */
export function removePressure(site: Site, schemeId: string, systemId: string): Site {
  const rest = (flowOf(site, schemeId).pressure ?? []).filter((one) => one.id !== systemId);
  return changeFlow(site, schemeId, { pressure: rest.length > 0 ? rest : undefined });
}

/** Sets fields of a pressure system. The same site when it has none of that id. */
export function changePressure(
  site: Site,
  schemeId: string,
  systemId: string,
  changes: Changes<PressureSystem>,
): Site {
  const pressure = flowOf(site, schemeId).pressure;
  if (pressure?.some((one) => one.id === systemId) !== true) return site;
  return changeFlow(site, schemeId, {
    pressure: pressure.map((one) =>
      one.id === systemId
        ? (withoutAbsent<Changes<PressureSystem>>({ ...one, ...changes }) as PressureSystem)
        : one,
    ),
  });
}

/** Changes one branch of a pressure system by a function of it. */
export function changeBranch(
  site: Site,
  schemeId: string,
  systemId: string,
  branchId: string,
  change: (branch: Branch) => Branch,
): Site {
  const system = flowOf(site, schemeId).pressure?.find((one) => one.id === systemId);
  if (system === undefined) return site;
  const branches = system.branches.map((one) => (one.id === branchId ? change(one) : one));
  return changePressure(site, schemeId, systemId, { branches });
}
