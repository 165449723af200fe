/** How each row of the table of setbacks stands on the site as it is. */
import type { SetbackKept } from "../../estimate/index.js";
import type { Setback, Site } from "../../site/index.js";

export interface RowState {
  /** Least distance in plan, m; null where nothing on the site is asked for it. */
  least: number | null;
  /** m that is missing to what is asked, where it falls shortest; 0 where it is kept. */
  short: number;
  /** Whether a limit's own setback is asked in place of the row, of at least one pair. */
  byOwn?: boolean;
}

/** m: as the findings have it, a shortfall that is finer than anyone stakes out. */
const TOLERANCE = 0.005;

/** The state of a row: over every pair of its part and its kind that goes by the table. */
export function rowState(
  { from, to }: Pick<Setback, "from" | "to">,
  kept: readonly SetbackKept[],
  kindOf: ReadonlyMap<string, string>,
): RowState {
  const pairs = kept.filter((one) => one.from === from && kindOf.get(one.to) === to);
  return {
    ...stateOf(pairs.filter(({ own }) => !own)),
    ...(pairs.some(({ own }) => own) && { byOwn: true }),
  };
}

/** The state of limits that have a setback of their own, in the order met. */
export function ownStates(
  kept: readonly SetbackKept[],
): { to: string; toName: string; wanted: number; state: RowState }[] {
  const own = kept.filter((one) => one.own);
  return [...new Map(own.map((one) => [one.to, one])).values()].map(({ to, toName, wanted }) => ({
    ...{ to, toName, wanted },
    state: stateOf(own.filter((one) => one.to === to)),
  }));
}

function stateOf(some: readonly SetbackKept[]): RowState {
  if (some.length === 0) return { least: null, short: 0 };
  const short = Math.max(...some.map(({ wanted, distance }) => wanted - distance));
  return {
    least: Math.min(...some.map(({ distance }) => distance)),
    short: short > TOLERANCE ? short : 0,
  };
}

/** What each thing to keep off is to the table: a limit's kind, or a building. */
export function kindsToKeepOff(site: Site, schemeId: string): ReadonlyMap<string, string> {
  const works = site.schemes.find(({ id }) => id === schemeId)?.works ?? [];
  return new Map([
    ...(site.limits ?? []).map(({ id, kind }) => [id, kind] as const),
    ...works.flatMap(({ id, kind }) => (kind === "building" ? [[id, kind] as const] : [])),
  ]);
}

/** The table that stands on a site: a published one by its id, or "own". */
export function tableThatStands(
  own: readonly Setback[] | undefined,
  tables: readonly { id: string; rows: readonly Setback[] }[],
): string {
  const [first] = tables;
  if (own === undefined) return first?.id ?? "own";
  const alike = tables.find(
    ({ rows }) =>
      rows.length === own.length &&
      rows.every((row, i) => {
        const other = own[i];
        return (
          other !== undefined &&
          row.from === other.from &&
          row.to === other.to &&
          row.distance === other.distance &&
          row.source === other.source
        );
      }),
  );
  return alike?.id ?? "own";
}
