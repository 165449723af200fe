/** Times of calls, as medians, and the rows that the bench prints. */

/** One line of the bench. `ratio` is vs ÷ ours: above 1, ours is the quicker. */
export interface Row {
  name: string;
  median_ms: number;
  /** What it is measured beside, in the same run. */
  vs?: string;
  vs_median_ms?: number;
  ratio?: number;
  /** What the figures do not say by themselves. */
  note?: string;
  /** Further figures of this row. */
  [more: string]: string | number | readonly number[] | undefined;
}

/** Milliseconds that a call takes. */
export function timeOf(call: () => void): number {
  const start = performance.now();
  call();
  return performance.now() - start;
}

/** The middle of a list of times; of an even count, the upper one of the middle two. */
export function middle(times: readonly number[]): number {
  if (times.length === 0) throw new Error("got no times, expected one at least");
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
}

/**
 * Median times of several calls, ms. They take turns, so that a busy machine or a collection of
 * garbage falls on all alike. `warmUp` rounds before are not counted.
 */
export function medians(runs: number, warmUp: number, calls: readonly (() => void)[]): number[] {
  const times: number[][] = calls.map(() => []);
  for (let run = -warmUp; run < runs; run++) {
    calls.forEach((call, i) => {
      const time = timeOf(call);
      if (run >= 0) times[i]!.push(time);
    });
  }
  return times.map(middle);
}

/** Median time of one call, ms. */
export function median(runs: number, warmUp: number, call: () => void): number {
  return medians(runs, warmUp, [call])[0]!;
}

/** A row beside something else, with the ratio worked out. */
export function beside(name: string, ours: number, vs: string, theirs: number): Row {
  return { name, median_ms: ours, vs, vs_median_ms: theirs, ratio: theirs / ours };
}

/** A row as a person reads it: times to three figures. */
export function inWords({ name, median_ms, vs, vs_median_ms, ratio, note, ...more }: Row): string {
  const columns = [name.padEnd(18), `${median_ms.toPrecision(3).padStart(9)} ms`];
  if (vs !== undefined && vs_median_ms !== undefined) {
    columns.push(`${vs} ${vs_median_ms.toPrecision(3)} ms`);
  }
  if (ratio !== undefined) columns.push(`ratio ${ratio.toPrecision(3)}`);
  for (const [key, figure] of Object.entries(more)) columns.push(`${key} ${shown(figure)}`);
  if (note !== undefined) columns.push(`(${note})`);
  return columns.join("  ");
}

function shown(figure: string | number | readonly number[] | undefined): string {
  if (typeof figure === "number") return Number(figure.toPrecision(4)).toString();
  return Array.isArray(figure) ? figure.map(shown).join(" / ") : String(figure);
}
