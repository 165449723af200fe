/** The permit's list, setbacks, runoff and findings taken on, as lines of the text report. */
import type { Estimate } from "../estimate/index.js";
import type { Finding, Site } from "../site/index.js";
import { area, distance, length, type Measure } from "../units/index.js";
import type { FlowPart } from "./flowReport.js";

type Row = [label: string, text: string];
type Print = (measure: Measure, value: number) => string;

/** Distances kept from what limits the site, and the water that comes to each work. */
export function groundParts(site: Site, answer: Estimate, print: Print): FlowPart[] {
  return [setbackPart(site, answer, print), runoffPart(site, answer, print)].filter(
    ({ rows }) => rows.length > 0,
  );
}

function setbackPart(site: Site, { scheme, setbacks }: Estimate, print: Print): FlowPart {
  return {
    title: "SETBACKS, in plan between the nearest edges",
    rows: setbacks.map((kept): Row => {
      const { work, from, toName, distance: is, wanted, own, source } = kept;
      const short = is < wanted ? "  TOO NEAR" : "";
      const says = own ? "the limit's own" : source;
      return [
        `  ${workName(site, scheme, work)}, ${from}, to ${toName}`,
        `${print(distance, is)} (wanted ${print(distance, wanted)}: ${says})${short}`,
      ];
    }),
  };
}

function runoffPart(site: Site, { scheme, runoff }: Estimate, print: Print): FlowPart {
  return {
    title: "WATER ON THE GROUND, that comes to each work",
    rows: runoff
      .filter(({ area: from, standing }) => from > 0 || standing > 0)
      .map(({ work, area: from, standing, ditch, ditchLimits }): Row => {
        const parts = [
          `from ${print(area, from)} of slope`,
          ...(standing > 0 ? [`stands ${print(length, standing)} deep before it spills`] : []),
          ...(ditch === null ? [] : [`a ditch uphill of ${print(distance, pathLength(ditch))}`]),
          ...(ditchLimits.length === 0
            ? []
            : [`it would meet ${ditchLimits.map(({ name }) => name).join(", ")}`]),
        ];
        return [`  ${workName(site, scheme, work)}`, parts.join("; ")];
      }),
  };
}

function pathLength(path: readonly (readonly [number, number, number])[]): number {
  return path.reduce((sum, [x, y], i) => {
    const next = path[i + 1];
    return next === undefined ? sum : sum + Math.hypot(next[0] - x, next[1] - y);
  }, 0);
}

function workName(site: Site, schemeId: string, id: string): string {
  const scheme = site.schemes.find((one) => one.id === schemeId);
  const places = [...(scheme?.works ?? []), ...(site.limits ?? [])];
  return places.find((one) => one.id === id)?.name ?? id;
}

const STATES = {
  present: "there",
  missing: "MISSING",
  "not-applicable": "not asked",
  "by-hand": "elsewhere",
} as const;

/** The permit's list in groups, each item with its state and reason. */
export function permitPart({ permit }: Estimate): FlowPart {
  return {
    title: `WHAT AN OFFICE ASKS FOR: ${permit.present} of ${permit.asked} there (${permit.source})`,
    rows: permit.groups.flatMap(({ title, items }): Row[] => [
      [title, ""],
      ...items.map((item): Row => [`  ${item.title}`, `${STATES[item.state]}: ${item.because}`]),
    ]),
  };
}

/** A finding's own lines, before they are wrapped; one taken on tells why, by whom and when. */
export function findingLines(finding: Finding): string[] {
  const { level, where, text, source, accepted } = finding;
  const said = [`${level.toUpperCase()} ${where}: ${text}`, `  Source: ${source}`];
  if (accepted === undefined) return said;
  const who = [accepted.by, accepted.on].filter((part) => part !== undefined).join(", ");
  const then =
    accepted.then === undefined
      ? []
      : [`  Its figures have changed since. It said then: ${accepted.then}`];
  return [...said, `  Taken on${who === "" ? "" : ` (${who})`}: ${accepted.reason}`, ...then];
}
