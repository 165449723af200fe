import type { Range } from "./types.js";

/** The same figure three times. */
export function exactly(value: number): Range {
  return { low: value, likely: value, high: value };
}

/** Sum end by end: low with low, high with high (the envelope; nothing is assumed to even out). */
export function sumRanges(ranges: readonly Range[]): Range {
  const sum = exactly(0);
  for (const range of ranges) {
    sum.low += range.low;
    sum.likely += range.likely;
    sum.high += range.high;
  }
  return sum;
}

/** Each end through a function that never decreases. */
export function mapRange(range: Range, f: (value: number) => number): Range {
  return { low: f(range.low), likely: f(range.likely), high: f(range.high) };
}

/** Product end by end of two ranges that are not negative. */
export function multiplyRanges(a: Range, b: Range): Range {
  return { low: a.low * b.low, likely: a.likely * b.likely, high: a.high * b.high };
}

/** Time for a volume at a rate per hour, h: the low time goes with the high rate. */
export function hoursAt(volume: number, perHour: Range): Range {
  return {
    low: volume / perHour.high,
    likely: volume / perHour.likely,
    high: volume / perHour.low,
  };
}
