// The covariance behind the doubt about the ground, and the solving with it, held against the worked
// example of ordinary kriging in E. H. Isaaks and R. M. Srivastava, An Introduction to Applied
// Geostatistics (Oxford University Press, 1989), ch. 12: seven samples about (65, 137), exponential
// model with sill 10 and range 10, no nugget. Figures recalled from memory.
import { expect, it } from "vitest";
import { cholesky, solveLower, solveUpper } from "../../src/chance/cholesky.js";
import { covariance } from "../../src/chance/doubtField.js";

const SAMPLES = [
  { x: 61, y: 139, v: 477 },
  { x: 63, y: 140, v: 696 },
  { x: 64, y: 129, v: 227 },
  { x: 68, y: 128, v: 646 },
  { x: 71, y: 140, v: 606 },
  { x: 73, y: 141, v: 791 },
  { x: 75, y: 128, v: 783 },
];
const PLACE = { x: 65, y: 137 };
const DOUBT = { sd: Math.sqrt(10), range: 10 };

it("gives the published weights, estimate and variance", () => {
  const between = (p: { x: number; y: number }, q: { x: number; y: number }): number =>
    covariance(DOUBT, Math.hypot(p.x - q.x, p.y - q.y));
  const factor = cholesky(7, (i, j) => between(SAMPLES[i]!, SAMPLES[j]!), 0);
  const solve = (right: number[]): Float64Array =>
    solveUpper(factor, solveLower(factor, Float64Array.from(right)));
  const to = SAMPLES.map((sample) => between(sample, PLACE));
  const [simple, ones] = [solve(to), solve(SAMPLES.map(() => 1))];
  const sum = (values: Iterable<number>): number => [...values].reduce((a, b) => a + b, 0);
  // Ordinary kriging is simple kriging with a multiplier that makes the weights add up to 1.
  const multiplier = (1 - sum(simple)) / sum(ones);
  const weights = Array.from(simple, (weight, i) => weight + multiplier * ones[i]!);
  expect(weights.map((weight) => Number(weight.toFixed(3)))).toEqual([
    0.173, 0.318, 0.129, 0.086, 0.151, 0.057, 0.086,
  ]);
  expect(sum(weights.map((weight, i) => weight * SAMPLES[i]!.v))).toBeCloseTo(592.7, 1);
  const variance = 10 - sum(weights.map((weight, i) => weight * to[i]!)) + multiplier;
  expect(variance).toBeCloseTo(8.96, 1);
});
