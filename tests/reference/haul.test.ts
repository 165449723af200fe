/** The haul plan against a textbook's example, every possible plan, and its own dual. */
import { describe, expect, it } from "vitest";
import { leastCarriage, planHaul, type Heap, type Load } from "../../src/dig/haul.js";
import { seeded, type Seeded } from "../fixtures/seeded.js";

const SEED = 20261125;

function costOf(loads: readonly Load[], costs: readonly (readonly number[])[]): number {
  return loads.reduce((sum, { cut, fill, volume }) => sum + volume * costs[cut]![fill]!, 0);
}

/** Least cost over every way to split whole volumes, the lesser side used up. Brute force. */
function leastOfAll(
  cuts: readonly number[],
  fills: readonly number[],
  costs: readonly (readonly number[])[],
): number {
  const sum = (list: readonly number[]): number => list.reduce((all, each) => all + each, 0);
  const mustMove = Math.min(sum(cuts), sum(fills));
  let best = Infinity;
  const wanted = [...fills];
  const go = (cell: number, left: number, moved: number, cost: number): void => {
    const [cut, fill] = [Math.floor(cell / fills.length), cell % fills.length];
    if (cut === cuts.length) {
      if (moved === mustMove) best = Math.min(best, cost);
      return;
    }
    for (let part = 0; part <= Math.min(left, wanted[fill]!); part++) {
      wanted[fill]! -= part;
      const after = fill + 1 === fills.length ? (cuts[cut + 1] ?? 0) : left - part;
      go(cell + 1, after, moved + part, cost + part * costs[cut]![fill]!);
      wanted[fill]! += part;
    }
  };
  go(0, cuts[0] ?? 0, 0, 0);
  return best;
}

/**
 * Duality: a plan is the best if and only if every heap has a price such that going from a cut to
 * a fill never gains more than it costs, and gains just that where something moves; what is left
 * over has the price of leaving it. Here the prices come from shortest ways through the residual
 * network (Bellman and Ford), which knows nothing of how the plan was made. Returns the largest
 * breach; when going round in a circuit would save something, no prices fit and a breach is left.
 */
function breachOfDuality(
  cuts: readonly number[],
  fills: readonly number[],
  costs: readonly (readonly number[])[],
  loads: readonly Load[],
): number {
  const [m, n] = [cuts.length, fills.length];
  const spare = m + n;
  const arcs: [from: number, to: number, cost: number][] = [];
  costs.forEach((row, i) => {
    row.forEach((cost, j) => arcs.push([i, m + j, cost]));
  });
  for (const { cut, fill } of loads) arcs.push([m + fill, cut, -costs[cut]![fill]!]);
  // What stays where it is goes to, or comes from, one spare heap at no cost.
  const moved = (side: "cut" | "fill", i: number): number =>
    loads.reduce((sum, load) => sum + (load[side] === i ? load.volume : 0), 0);
  const surplus = cuts.reduce((a, b) => a + b, 0) >= fills.reduce((a, b) => a + b, 0);
  const dust = 1e-9;
  if (surplus) {
    cuts.forEach((volume, i) => {
      arcs.push([i, spare, 0]);
      if (volume - moved("cut", i) > dust) arcs.push([spare, i, 0]);
    });
  } else {
    fills.forEach((volume, j) => {
      arcs.push([spare, m + j, 0]);
      if (volume - moved("fill", j) > dust) arcs.push([m + j, spare, 0]);
    });
  }
  const price = new Float64Array(m + n + 1);
  for (let round = 0; round <= m + n + 1; round++) {
    for (const [from, to, cost] of arcs) price[to] = Math.min(price[to]!, price[from]! + cost);
  }
  return arcs.reduce(
    (worst, [from, to, cost]) => Math.max(worst, price[to]! - price[from]! - cost),
    0,
  );
}

function randomTable(random: Seeded, cuts: number, fills: number, dearest: number): number[][] {
  return Array.from({ length: cuts }, () =>
    Array.from({ length: fills }, () => random.whole(0, dearest)),
  );
}

describe("leastCarriage against published and brute-force answers", () => {
  it("solves a textbook's example", () => {
    // Hillier and Lieberman, "Introduction to Operations Research", McGraw-Hill, the prototype
    // example of the chapter on the transportation problem: three sources, four goals, least
    // cost 152,535. Recalled from memory.
    const supply = [75, 125, 100];
    const demand = [80, 65, 70, 85];
    const costs = [
      [464, 513, 654, 867],
      [352, 416, 690, 791],
      [995, 682, 388, 685],
    ];
    const loads = leastCarriage(supply, demand, (cut, fill) => costs[cut]![fill]!);
    expect(costOf(loads, costs)).toBe(152_535);
    expect(loads.map(({ cut, fill, volume }) => [cut + 1, fill + 1, volume])).toEqual([
      [1, 2, 20],
      [1, 4, 55],
      [2, 1, 80],
      [2, 2, 45],
      [3, 3, 70],
      [3, 4, 30],
    ]);
  });

  it(`matches every possible plan, small whole volumes with ties, seed ${SEED}`, () => {
    const random = seeded(SEED);
    let uneven = 0;
    for (let run = 0; run < 400; run++) {
      const cuts = Array.from({ length: random.whole(1, 3) }, () => random.whole(0, 4));
      const fills = Array.from({ length: random.whole(1, 3) }, () => random.whole(0, 4));
      const costs = randomTable(random, cuts.length, fills.length, run % 2 ? 3 : 1000);
      const loads = leastCarriage(cuts, fills, (cut, fill) => costs[cut]![fill]!);
      expect(costOf(loads, costs), `run ${run}`).toBeCloseTo(leastOfAll(cuts, fills, costs), 9);
      if (cuts.reduce((a, b) => a + b, 0) !== fills.reduce((a, b) => a + b, 0)) uneven++;
    }
    expect(uneven).toBeGreaterThan(100);
  });

  it(`keeps to complementary slackness on larger plans, seed ${SEED}`, () => {
    const random = seeded(SEED + 1);
    for (let run = 0; run < 150; run++) {
      const volume = (): number => (run % 3 ? random.between(0.1, 200) : random.whole(1, 5));
      const cuts = Array.from({ length: random.whole(1, 14) }, volume);
      const fills = Array.from({ length: random.whole(1, 14) }, volume);
      const costs = randomTable(random, cuts.length, fills.length, run % 2 ? 6 : 1e6);
      const loads = leastCarriage(cuts, fills, (cut, fill) => costs[cut]![fill]!);
      const dearest = Math.max(...costs.flat(), 1);
      expect(breachOfDuality(cuts, fills, costs, loads), `run ${run}`).toBeLessThanOrEqual(
        1e-11 * dearest,
      );
    }
  });

  it("finds fault with a plan that is not the best", () => {
    const costs = [
      [1, 5],
      [5, 1],
    ];
    const crossed = [
      { cut: 0, fill: 1, volume: 3 },
      { cut: 1, fill: 0, volume: 3 },
    ];
    expect(breachOfDuality([3, 3], [3, 3], costs, crossed)).toBeGreaterThan(1);
  });

  it(`gives the same carriage in any order and frame, seed ${SEED}`, () => {
    const random = seeded(SEED + 2);
    const carriage = (cuts: readonly Heap[], fills: readonly Heap[]): number =>
      planHaul(cuts, fills).reduce((sum, { volume, distance }) => sum + volume * distance, 0);
    const heaps = (count: number): Heap[] =>
      Array.from({ length: count }, (_, i) => ({
        id: `heap${i}`,
        at: [random.between(-50, 50), random.between(-50, 50)],
        volume: random.between(0, 90),
      }));
    for (let run = 0; run < 60; run++) {
      const [cuts, fills] = [heaps(random.whole(1, 12)), heaps(random.whole(1, 12))];
      const least = carriage(cuts, fills);
      const turned = (list: readonly Heap[]): Heap[] =>
        random.shuffled(list).map(({ id, at: [x, y], volume }) => ({
          id,
          at: [0.6 * x - 0.8 * y + 700, 0.8 * x + 0.6 * y - 300],
          volume,
        }));
      expect(carriage(turned(cuts), turned(fills))).toBeCloseTo(least, 6);
      // The way back is as long.
      expect(carriage(fills, cuts)).toBeCloseTo(least, 6);
    }
  });
});
