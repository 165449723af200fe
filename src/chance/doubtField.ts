/**
 * How far a layer's thickness may lie from what the probes say, place by place: a normal random
 * field that is nothing at the probes, and grows with the distance from the nearest one.
 */
import { cholesky, solveLower, type Cholesky } from "./cholesky.js";
import type { Random } from "./random.js";

/** A probe as the field of one layer sees it. m. */
export interface Seen {
  x: number;
  y: number;
  /** True where the probe stopped in the layer: there it is as thick as found, or thicker. */
  atLeast: boolean;
}

export interface Doubt {
  /** Standard deviation far from every probe, m. */
  sd: number;
  /** Distance at which two places tell nothing of each other any more (5% is left), m. */
  range: number;
}

/**
 * Covariance of two places `distance` m apart: sd² exp(−3 distance ÷ range), the exponential model
 * with its practical range (Isaaks and Srivastava, An Introduction to Applied Geostatistics, 1989,
 * ch. 16; US Army Corps of Engineers ETL 1110-1-175, 1997).
 */
export function covariance({ sd, range }: Doubt, distance: number): number {
  return sd * sd * Math.exp((-3 * distance) / range);
}

/** Share of the variance added to the diagonal, against rounding. */
const JITTER = 1e-8;
/** Tries for a draw in which every probe that stopped short finds more, before the last resort. */
const TRIES = 4096;

/** Conditional simulation of one layer's doubt at given places, which never change. */
export class DoubtField {
  private readonly factor: Cholesky;
  private readonly stopped: number;
  private readonly noise: Float64Array;

  /** `places` in m, in the frame of the probes. */
  constructor(
    doubt: Doubt,
    probes: readonly Seen[],
    private readonly places: readonly { x: number; y: number }[],
  ) {
    const exact = probes.filter((probe) => !probe.atLeast);
    const stopped = probes.filter((probe) => probe.atLeast);
    const all = [...stopped, ...places];
    const variance = doubt.sd * doubt.sd;
    const between = (p: { x: number; y: number }, q: { x: number; y: number }): number =>
      covariance(doubt, Math.hypot(p.x - q.x, p.y - q.y));
    const known = cholesky(
      exact.length,
      (i, j) => between(exact[i]!, exact[j]!),
      JITTER * variance,
    );
    const told = all.map((place) =>
      solveLower(
        known,
        Float64Array.from(exact, (probe) => between(probe, place)),
      ),
    );
    const given = (i: number, j: number): number => {
      let rest = between(all[i]!, all[j]!);
      const [one, other] = [told[i]!, told[j]!];
      for (let k = 0; k < one.length; k++) rest -= one[k]! * other[k]!;
      return rest;
    };
    this.factor = cholesky(all.length, given, JITTER * variance);
    this.stopped = stopped.length;
    this.noise = new Float64Array(all.length);
  }

  /** Standard deviation at each place before what stopped probes say, m. */
  deviations(): Float64Array {
    const { rows } = this.factor;
    return Float64Array.from(this.places, (_, place) => {
      const i = place + this.stopped;
      const start = (i * (i + 1)) / 2;
      let variance = 0;
      for (let k = 0; k <= i; k++) variance += rows[start + k]! ** 2;
      return Math.sqrt(variance);
    });
  }

  /** Draws the doubt at every place, m, into `into`. */
  draw(random: Random, into: Float64Array): void {
    const { noise, stopped } = this;
    this.drawStopped(random);
    for (let i = stopped; i < noise.length; i++) noise[i] = random.normal();
    const { rows } = this.factor;
    for (let place = 0; place < this.places.length; place++) {
      const i = place + stopped;
      const start = (i * (i + 1)) / 2;
      let sum = 0;
      for (let k = 0; k <= i; k++) sum += rows[start + k]! * noise[k]!;
      into[place] = sum;
    }
  }

  /**
   * Draws until every stopped probe finds no less than it did. Many probes that all stopped could
   * need very many tries; then each is drawn in turn from what the ones before it leave, which
   * counts unlikely combinations a little too often.
   */
  private drawStopped(random: Random): void {
    const { stopped, noise } = this;
    for (let tries = 0; tries < TRIES && stopped > 0; tries++) {
      for (let i = 0; i < stopped; i++) noise[i] = random.normal();
      if (this.allMore()) return;
    }
    for (let i = 0; i < stopped; i++) noise[i] = this.drawAbove(i, random);
  }

  private valueAtStopped(i: number, upTo: number): number {
    const { rows } = this.factor;
    let sum = 0;
    for (let k = 0; k < upTo; k++) sum += rows[(i * (i + 1)) / 2 + k]! * this.noise[k]!;
    return sum;
  }

  private allMore(): boolean {
    for (let i = 0; i < this.stopped; i++) if (this.valueAtStopped(i, i + 1) < 0) return false;
    return true;
  }

  private drawAbove(i: number, random: Random): number {
    const pivot = this.factor.rows[(i * (i + 1)) / 2 + i]!;
    const least = -this.valueAtStopped(i, i) / pivot;
    for (let tries = 0; tries < TRIES; tries++) {
      const drawn = random.normal();
      if (drawn >= least) return drawn;
    }
    return least;
  }
}
