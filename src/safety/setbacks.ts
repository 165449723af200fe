/** Distances that parts of the works keep from what limits the site, measured in plan. */
import catalogue from "../../shared/catalogue/setbacks.json" with { type: "json" };
import type { WorkQuantities } from "../dig/index.js";
import { planDistance, type PlanShape } from "../flow/index.js";
import { limitKind, type Limit, type Scheme, type Setback, type Site } from "../site/index.js";
import { bodiesOf, digsOf, limitShapes, type Part } from "./shapes.js";

/** One distance to be kept, and what it is. Metres in plan. */
export interface SetbackKept {
  /** Id of the work, and what part of it is meant; of a reserve area its limit's id. */
  work: string;
  /** It is ground kept for a second field, and no work: it keeps what a field keeps. */
  reserve?: true;
  from: Setback["from"];
  /** Id and name of the limit, or of a building of the scheme. */
  to: string;
  toName: string;
  /** Between the nearest edges; 0 where they touch, cross or lie in each other. */
  distance: number;
  /** It lies beyond a lot line that closes: on ground that is not one's own. */
  outside?: boolean;
  wanted: number;
  source: string;
  /** Whether the limit's own setback decides, as it is the greater or replaces the table's. */
  own: boolean;
}

/** What is asked of one part for one limit, m. */
interface AskedOf {
  wanted: number;
  own: boolean;
  source: string;
}

/** The table of setbacks that holds on a site: its own, or the published one. */
export function setbacksOf(site: Pick<Site, "setbacks">): readonly Setback[] {
  return site.setbacks ?? PUBLISHED;
}

/** The published table that stands until a site has its own. */
export function publishedSetbacks(): readonly Setback[] {
  return PUBLISHED;
}

/** A published table of one place, to be chosen by its name. Each row carries the table's source. */
export interface SetbackTable {
  id: string;
  name: string;
  rows: readonly Setback[];
}

/** Every published table of the catalogue; the first stands until a site has its own. */
export function setbackTables(): readonly SetbackTable[] {
  return TABLES;
}

const TABLES: readonly SetbackTable[] = catalogue.tables.map(({ id, name, source, rows }) => ({
  id,
  name,
  rows: rows.map((row) => ({ ...row, source })),
}));
const PUBLISHED: readonly Setback[] = TABLES[0]?.rows ?? [];

/** Something to keep off: a limit, or a building of the scheme. */
export interface Bound {
  id: string;
  name: string;
  kind: string;
  setback: number | null;
  /** Whether that setback stands in place of the table's rows, where they ask for more. */
  replaces: boolean;
  shapes: readonly PlanShape[];
  /** The limit itself; null for a building. */
  limit: Limit | null;
}

/** All that a scheme has to keep off: the site's limits, then buildings of the scheme. */
export function boundsOf(site: Pick<Site, "limits">, scheme: Scheme): Bound[] {
  return [...(site.limits ?? []).map(boundOf), ...buildingsOf(scheme)];
}

/** The areas kept for a second field, as the fields that they may become. */
export function reservesOf({ limits = [] }: Pick<Site, "limits">): Part[] {
  return limits.flatMap((limit) => {
    const shapes = limit.kind === "reserve-field" ? limitShapes(limit) : [];
    return shapes.length === 0 ? [] : [{ work: limit.id, from: "field" as const, shapes }];
  });
}

/** Every distance that is asked for on a scheme, in the order of its works; then of reserve areas. */
export function keptSetbacks(
  site: Pick<Site, "limits" | "setbacks">,
  scheme: Scheme,
  dug: readonly WorkQuantities[],
): SetbackKept[] {
  const rows = setbacksOf(site);
  const bounds = boundsOf(site, scheme);
  const parts = [...bodiesOf(scheme), ...digsOf(dug)];
  const kept = scheme.works.flatMap(({ id }) =>
    parts
      .filter((part) => part.work === id)
      .flatMap((part) => bounds.flatMap((bound) => keptBetween(part, bound, rows))),
  );
  const reserved = reservesOf(site).flatMap((part) =>
    bounds.flatMap((bound) => keptBetween(part, bound, rows)),
  );
  return [...kept, ...reserved.map((one) => ({ ...one, reserve: true as const }))];
}

/** Limits whose edge on the ground moves with the water: drawn as a line, which bank is meant is open. */
const WATERS = ["watercourse", "seasonal-watercourse", "ditch"];

/** Whether a distance is among these that is measured to water, so that it has to be said to which line. */
export function isKeptOffWater(
  { limits = [] }: Pick<Site, "limits">,
  setbacks: readonly SetbackKept[],
): boolean {
  const waters = new Set(limits.filter(({ kind }) => WATERS.includes(kind)).map(({ id }) => id));
  return setbacks.some(({ to }) => waters.has(to));
}

function keptBetween(part: Part, bound: Bound, rows: readonly Setback[]): SetbackKept[] {
  if (part.work === bound.id || bound.shapes.length === 0) return [];
  const asked = askedBetween(part.from, bound, rows);
  if (asked === null) return [];
  const outside = bound.limit !== null && isOutsideLot(part.shapes, bound.limit);
  return [
    {
      ...{ work: part.work, from: part.from, to: bound.id, toName: bound.name },
      distance: outside ? 0 : distanceBetween(part.shapes, bound.shapes),
      ...(outside && { outside }),
      ...asked,
    },
  ];
}

/**
 * What is asked of a part for a bound: the greater of the limit's own setback and the table's row,
 * since whoever enters a well's own 15 m seldom means to take away the 30 m that a table asks of a
 * field; the person says so where it does (`setbackReplaces`). The edge of a hole goes by the table
 * alone. Null where nothing is asked.
 */
export function askedBetween(
  from: Setback["from"],
  bound: Pick<Bound, "kind" | "name" | "setback" | "replaces">,
  rows: readonly Setback[],
): AskedOf | null {
  const own = from === "dig" ? 0 : (bound.setback ?? 0);
  const row = rows.find((one) => one.from === from && one.to === bound.kind);
  const ofTable = row?.distance ?? 0;
  if (own > 0 && (bound.replaces || own >= ofTable)) {
    const instead = ofTable > own ? ", said to replace the greater one of the table" : "";
    return { wanted: own, own: true, source: `setback as entered for ${bound.name}${instead}` };
  }
  return ofTable > 0 ? { wanted: ofTable, own: false, source: row?.source ?? "" } : null;
}

/** Whether any of some shapes lies wholly beyond a lot line that closes. */
export function isOutsideLot(shapes: readonly PlanShape[], { kind, closed, path }: Limit): boolean {
  if (kind !== "lot-line" || closed !== true || path === undefined || path.length < 3) return false;
  return shapes.some((shape) => planDistance(shape, { points: path, closed: true }) > 0);
}

/** Least distance between any of some shapes and any of others, m. */
export function distanceBetween(some: readonly PlanShape[], others: readonly PlanShape[]): number {
  return Math.min(...some.flatMap((one) => others.map((other) => planDistance(one, other))));
}

function boundOf(limit: Limit): Bound {
  return {
    id: limit.id,
    name: limit.name ?? limitKind(limit.kind)?.name ?? limit.kind,
    kind: limit.kind,
    setback: limit.setback ?? null,
    replaces: limit.setbackReplaces === true,
    shapes: limitShapes(limit),
    limit,
  };
}

function buildingsOf({ works }: Scheme): Bound[] {
  return works.flatMap((work) =>
    work.kind === "building"
      ? [
          {
            ...{ id: work.id, name: work.name, kind: "building", setback: null, replaces: false },
            shapes: [{ points: work.outline, closed: true }],
            limit: null,
          },
        ]
      : [],
  );
}
