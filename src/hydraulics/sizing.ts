import sizing from "../../shared/catalogue/sizing.json" with { type: "json" };

/** A figure and who says so. */
export interface Sourced {
  value: number;
  source: string;
}

/** Tables that can be picked, by id and name. */
export interface SizingTable {
  id: string;
  name: string;
  source: string;
}

/** The tables of each kind, the one in use first. */
export function sizingTables(): {
  flows: readonly SizingTable[];
  loading: readonly SizingTable[];
  classes: readonly (SizingTable & { rows: readonly { id: string; name: string }[] })[];
} {
  return { flows: sizing.flows, loading: sizing.loading, classes: sizing.classes };
}

/**
 * Design flow, m³/s over a day, for a number of bedrooms by a table (the catalogue's usual one when
 * none is named). Fewer bedrooms than the first row take that row; more than the last add the
 * table's step for each. Null for a table that is not there.
 */
export function designFlow(bedrooms: number, table = sizing.usedFlow): Sourced | null {
  const found = sizing.flows.find((each) => each.id === table);
  const first = found?.rows[0];
  const last = found?.rows.at(-1);
  if (found === undefined || first === undefined || last === undefined) return null;
  const row = found.rows.find((each) => each.bedrooms >= bedrooms);
  const value = row?.flow ?? last.flow + (bedrooms - last.bedrooms) * found.beyond;
  return { value, source: found.source };
}

/** Least tank volume, m³, for a number of bedrooms; null beyond the table. */
export function leastTank(bedrooms: number): Sourced | null {
  const table = sizing.tanks.find((each) => each.id === sizing.usedTank);
  const row = table?.rows.find((each) => each.bedrooms >= bedrooms);
  return table === undefined || row === undefined
    ? null
    : { value: row.volume, source: table.source };
}

/**
 * Loading rate, m/s, by percolation in s per m of fall. A rate on a row's limit belongs to that row, or
 * to the next in a table whose rows say "under". Null for a soil faster or slower than the table.
 */
export function loadingByPercolation(rate: number, table = sizing.usedLoading): Sourced | null {
  const found = sizing.loading.find((each) => each.id === table);
  if (found === undefined || rate < found.fastest * (1 - SLACK)) return null;
  const under = found.below === true;
  const row = found.rows.find(({ slowest }) =>
    under ? rate < slowest * (1 - SLACK) : rate <= slowest * (1 + SLACK),
  );
  return row === undefined ? null : { value: row.rate, source: `${found.source}: ${row.says}` };
}

/** Part of a percolation rate that is rounding of minutes per inch. */
const SLACK = 1e-9;

/** Loading rate, m/s, by a class of a table; 0 where the table calls it unsuitable; null if unknown. */
export function loadingByClass(soil: string, table = sizing.usedClass): Sourced | null {
  const found = sizing.classes.find((each) => each.id === table);
  const row = found?.rows.find((each) => each.id === soil);
  return found === undefined || row === undefined
    ? null
    : { value: row.rate, source: `${found.source}: ${row.name}` };
}
