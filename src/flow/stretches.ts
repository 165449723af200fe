import type { PipeRun } from "../dig/index.js";

/** A part of a pipe with one grade: rise per run positive downhill, and stations in m. */
export interface Stretch {
  fall: number;
  from: number;
  to: number;
}

/** m: a bend in the grade that lifts the invert by less than this is rounding, not a bend. */
const BEND = 1e-6;

/**
 * The stretches of one grade that a pipe is made of, in path order and never none: one when its
 * grade is even, more when it is laid by cover and follows the ground.
 */
export function stretchesOf(run: PipeRun): readonly [Stretch, ...Stretch[]] {
  const stretches: (Stretch & { invert: number })[] = [];
  run.stations.forEach((here, i) => {
    const before = run.stations[i - 1];
    if (before === undefined || here.station <= before.station) return;
    const gap = here.station - before.station;
    const fall = (before.invert - here.invert) / gap;
    const last = stretches.at(-1);
    const same =
      last !== undefined && Math.abs(last.fall - fall) * Math.min(gap, last.to - last.from) < BEND;
    if (!same) {
      stretches.push({ fall, from: before.station, to: here.station, invert: before.invert });
      return;
    }
    last.to = here.station;
    last.fall = (last.invert - here.invert) / (last.to - last.from);
  });
  const [first, ...rest] = stretches.map(({ fall, from, to }) => ({ fall, from, to }));
  return first === undefined ? [{ fall: 0, from: 0, to: run.length }] : [first, ...rest];
}

/**
 * The stretch that is furthest, m of drop, from a fall: short of it with `side` 1, over it with −1.
 */
export function furthestStretch(
  run: PipeRun,
  fall: number,
  side: 1 | -1,
): Stretch & { off: number } {
  const off = (each: Stretch) => side * (fall - each.fall) * (each.to - each.from);
  const worst = stretchesOf(run).reduce((most, each) => (off(each) > off(most) ? each : most));
  return { ...worst, off: off(worst) };
}

/** The stretch that falls least; the first of equals. The whole pipe when its grade is even. */
export function flattestStretch(run: PipeRun): Stretch {
  return stretchesOf(run).reduce((least, each) => (each.fall < least.fall ? each : least));
}
