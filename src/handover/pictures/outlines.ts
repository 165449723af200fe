/** Pieces and lines put together to as few outlines and chains as may be; mm to a hundredth. */
import type { Spot } from "./visible.js";

/** Steps of a mm. */
const FINE = 100;

/** Places to a hundredth of a mm, each once. */
class Places {
  readonly #numbers = new Map<number, number>();
  readonly spots: Spot[] = [];

  numberOf([x, y]: Spot): number {
    const [u, v] = [Math.round(x * FINE), Math.round(y * FINE)];
    const key = u * 1_048_576 + v;
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    this.#numbers.set(key, this.spots.length);
    this.spots.push([u, v]);
    return this.spots.length - 1;
  }
}

const MOST_PLACES = 2 ** 26;

/**
 * Areas that lie side by side and go the same way round, as outlines of all of them: sides that two
 * of them share fall away. Holes go the other way round.
 */
export function outlinesOf(areas: readonly (readonly Spot[])[]): Spot[][] {
  const places = new Places();
  const sides = new Map<number, number>();
  const count = (side: number): number => sides.get(side) ?? 0;
  for (const area of areas) {
    const numbers = area.map((spot) => places.numberOf(spot));
    numbers.forEach((from, i) => {
      const to = numbers[(i + 1) % numbers.length]!;
      if (from === to) return;
      const [there, back] = [from * MOST_PLACES + to, to * MOST_PLACES + from];
      if (count(back) > 0) sides.set(back, count(back) - 1);
      else sides.set(there, count(there) + 1);
    });
  }
  return loopsOf(sides)
    .map((loop) => bendsOf(loop.map((number) => places.spots[number]!)))
    .filter((loop) => loop.length >= 3)
    .map((loop) => loop.map(([x, y]): Spot => [x / FINE, y / FINE]));
}

/** Closed ways along directed sides, each as often as it is there. */
function loopsOf(sides: ReadonlyMap<number, number>): number[][] {
  const next = new Map<number, number[]>();
  for (const [side, times] of sides) {
    const from = Math.floor(side / MOST_PLACES);
    const list = next.get(from) ?? [];
    for (let i = 0; i < times; i++) list.push(side % MOST_PLACES);
    if (times > 0) next.set(from, list);
  }
  const loops: number[][] = [];
  for (const [start, list] of next) {
    while (list.length > 0) loops.push(loopFrom(start, next));
  }
  return loops;
}

/** A way from a place back to it, taken off the sides that are left. */
function loopFrom(start: number, next: ReadonlyMap<number, number[]>): number[] {
  const loop = [start];
  for (let at = next.get(start)?.pop(); at !== undefined && at !== start;) {
    loop.push(at);
    at = next.get(at)?.pop();
  }
  return loop;
}

/** A loop without the places that lie on the straight way between their neighbours. */
function bendsOf(loop: readonly Spot[]): Spot[] {
  return loop.filter((at, i) => {
    const before = loop[(i + loop.length - 1) % loop.length]!;
    const after = loop[(i + 1) % loop.length]!;
    const [ax, ay] = [at[0] - before[0], at[1] - before[1]];
    const [bx, by] = [after[0] - at[0], after[1] - at[1]];
    return ax * by - ay * bx !== 0 || ax * bx + ay * by < 0;
  });
}

/** Lines as chains: one that goes on where the one before it ended is joined to it. */
export function chainsOf(lines: readonly (readonly [Spot, Spot])[]): Spot[][] {
  const chains: Spot[][] = [];
  const isSame = (a: Spot | undefined, b: Spot): boolean =>
    a !== undefined && Math.hypot(a[0] - b[0], a[1] - b[1]) < 1 / FINE;
  for (const [from, to] of lines) {
    const last = chains[chains.length - 1];
    if (isSame(from, to)) continue;
    if (last !== undefined && isSame(last[last.length - 1], from)) last.push(to);
    else chains.push([from, to]);
  }
  return chains;
}
