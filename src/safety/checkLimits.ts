import type { WorkQuantities } from "../dig/index.js";
import type { Wording } from "../flow/index.js";
import { isBuriedLine } from "../site/index.js";
import type { Finding, Limit, Scheme, Site, Work } from "../site/index.js";
import {
  boundsOf,
  distanceBetween,
  isOutsideLot,
  keptSetbacks,
  setbacksOf,
  type SetbackKept,
} from "./setbacks.js";
import { crossingOf } from "./crossings.js";
import { bodiesOf, bodyShapes, digsOf, limitShapes, type Part } from "./shapes.js";

/** m: a distance short of its setback by less than this is finer than anyone stakes out. */
const SETBACK_TOLERANCE = 0.005;

/**
 * Every part of a work that stands nearer to something than the table of setbacks or the limit's own
 * one asks; every limit whose own setback stands in place of a greater one; every work that crosses a limit for which no distance is asked; every hole whose edge
 * reaches over a limit that the work itself keeps off; and holes among a tree's roots.
 */
export function checkLimits(
  site: Pick<Site, "limits" | "setbacks">,
  scheme: Scheme,
  dug: readonly WorkQuantities[],
  words: Wording,
): { findings: Finding[]; setbacks: SetbackKept[] } {
  const setbacks = keptSetbacks(site, scheme, dug);
  const parts = new Map(bodiesOf(scheme).map(({ work, from }) => [work, from]));
  const crosses = (work: Work, limit: Limit): Finding[] => {
    const part = parts.get(work.id);
    return part === undefined ? [] : crossed({ work, part }, limit, setbacks, dug);
  };
  const findings = scheme.works.flatMap((work) => [
    ...setbacks
      .filter((kept) => kept.work === work.id && kept.reserve !== true)
      .flatMap((kept) => tooNear(work, kept, words)),
    ...(site.limits ?? []).flatMap((limit) => crosses(work, limit)),
  ]);
  return {
    findings: [
      ...findings,
      ...reservesTooNear(site, setbacks, words),
      ...lessThanTable(site, scheme, setbacks, words),
    ],
    setbacks,
  };
}

/** Reserve areas that a field could not be put on as far off as one has to be. */
function reservesTooNear(
  site: Pick<Site, "limits">,
  setbacks: readonly SetbackKept[],
  words: Wording,
): Finding[] {
  return setbacks.flatMap((kept): Finding[] => {
    const limit = site.limits?.find(({ id }) => kept.reserve === true && id === kept.work);
    if (limit === undefined) return [];
    const name = limit.name ?? "The reserve area";
    if (kept.outside !== true) return tooNear({ id: limit.id, name }, kept, words);
    const text = `${name} lies outside ${kept.toName}. Move it onto the lot: a second field has to find its place there.`;
    const where = limit.id;
    return [{ level: "caution", code: "limit.outside-lot", where, text, source: "geometry" }];
  });
}

/**
 * Each limit whose own setback stands in place of a greater one of the table, once: checks keep
 * silent between the two, and whoever reads the plan has to know why.
 */
function lessThanTable(
  site: Pick<Site, "limits" | "setbacks">,
  scheme: Scheme,
  setbacks: readonly SetbackKept[],
  words: Wording,
): Finding[] {
  const rows = setbacksOf(site);
  return boundsOf(site, scheme).flatMap(({ id, name, kind, setback, replaces }): Finding[] => {
    if (!replaces || setback === null || setback <= 0) return [];
    const parts = new Set(setbacks.filter((kept) => kept.to === id).map(({ from }) => from));
    const greater = rows.filter(
      ({ from, to, distance }) => to === kind && parts.has(from) && distance > setback,
    );
    if (greater.length === 0) return [];
    const asked = greater.map(({ from, distance }) => `${words.distance(distance)} of a ${from}`);
    const text = `For ${name} the setback of ${words.distance(setback)} is used, where the table asks ${asked.join(" and ")}. Keep at hand where your office allows that; local codes decide.`;
    const source = [...new Set(greater.map((row) => row.source))].join("; ");
    return [{ level: "caution", code: "limit.less-than-table", where: id, text, source }];
  });
}

const PARTS = { tank: "", field: "", pipe: "", pad: "", dig: "The hole for " } as const;

function tooNear(work: Pick<Work, "id" | "name">, kept: SetbackKept, words: Wording): Finding[] {
  const short = kept.wanted - kept.distance;
  // What lies beyond the lot altogether is said once, for the whole work.
  if (kept.outside === true) return [];
  if (short <= SETBACK_TOLERANCE) return [];
  const subject = `${kept.from === "dig" ? PARTS.dig : ""}${work.name}`;
  const where =
    kept.distance === 0
      ? `crosses ${kept.toName}`
      : `is ${words.atMost(kept.distance)} from ${kept.toName}`;
  const mend =
    kept.distance === 0
      ? "Move it off, and so far beyond"
      : `Move it ${words.atLeastFar(short)} farther off`;
  const asked = kept.own ? "the setback set here is" : "the setback in the table is";
  return [
    {
      level: "caution",
      code: "limit.too-near",
      where: work.id,
      text: `${subject} ${where}; ${asked} ${words.distance(kept.wanted)}. ${mend}, or check your local code.`,
      source: `${kept.source}; distance by geometry`,
    },
  ];
}

/** A limit for which no distance is asked of this work, and which it, or its hole, crosses. */
function crossed(
  { work, part }: { work: Work; part: Part["from"] },
  limit: Limit,
  setbacks: readonly SetbackKept[],
  dug: readonly WorkQuantities[],
): Finding[] {
  const bodies = bodyShapes(work);
  const bounds = limitShapes(limit);
  if (bodies.length === 0 || bounds.length === 0) return [];
  // Buried lines and flood paths have findings of their own, with the hole's depth or the rule.
  if (isBuriedLine(limit.kind) && dug.some(({ id, outlines }) => id === work.id && outlines))
    return [];
  if (limit.kind === "flood-path" || limit.kind === "overhead-line") return [];
  const name = limit.name ?? limit.kind;
  const caution = { level: "caution", where: work.id } as const;
  if (limit.kind === "tree") return amongRoots(work, limit, dug);
  if (isOutsideLot(bodies, limit)) {
    const text = `${work.name} lies outside ${name}. Move it onto the lot, or get the right to build on that ground in writing.`;
    return [{ ...caution, code: "limit.outside-lot", text, source: "geometry" }];
  }
  const asked = setbacks.some((kept) => kept.work === work.id && kept.to === limit.id);
  if (!asked && distanceBetween(bodies, bounds) === 0) {
    const { mend, source } = crossingOf(part, limit.kind);
    const text = `${work.name} crosses ${name}. ${mend}`;
    return [{ ...caution, code: "limit.crossed", text, source: `${source}; place by geometry` }];
  }
  const edge = digsOf(dug).find((part) => part.work === work.id);
  if (edge === undefined || distanceBetween(bodies, bounds) === 0) return [];
  if (distanceBetween(edge.shapes, bounds) > 0) return [];
  const text = `The hole for ${work.name} opens over ${name}, though the work itself keeps off it. Steepen or hold that wall, or move the work.`;
  return [{ ...caution, code: "limit.hole-over", text, source: "geometry of the hole's edge" }];
}

/** A hole within the circle of a tree's roots, where the file gives one. */
function amongRoots(work: Work, limit: Limit, dug: readonly WorkQuantities[]): Finding[] {
  const edge = digsOf(dug).find((part) => part.work === work.id);
  if (edge === undefined || limit.radius === undefined) return [];
  if (distanceBetween(edge.shapes, limitShapes(limit)) > 0) return [];
  const text = `The hole for ${work.name} cuts into the roots of ${limit.name ?? "a tree"}. Move it, or decide that the tree goes.`;
  const source = "circle of roots as entered; geometry of the hole's edge";
  return [{ level: "note", code: "limit.roots", where: work.id, text, source }];
}
