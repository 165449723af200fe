/** Which cut goes to which fill: the least carriage within a site. */
import type { PlanPoint } from "../site/index.js";

/** Earth that comes out of, or goes into, one place. */
export interface Heap {
  id: string;
  /** Centre of mass in plan, m. */
  at: PlanPoint;
  /** m³, finite and not negative. All heaps of a plan in one measure: bank. */
  volume: number;
}

/** One line of a haul plan. */
export interface Haul {
  /** Id of the cut. */
  from: string;
  /** Id of the fill. */
  to: string;
  /** m³, in the measure of the heaps. */
  volume: number;
  /** m in plan between the two centres of mass. */
  distance: number;
}

/**
 * Plans which cut goes to which fill, so that Σ volume × distance is least. When the totals differ
 * the lesser is used up: what is left of the cuts is surplus, what is left of the fills is import.
 * Lines follow the order of the cuts, then of the fills, and there are fewer of them than there
 * are heaps. Among plans of equal carriage one is taken, always the same for the same lists.
 * Throws when a volume or a place is not finite, or a volume is negative.
 *
 * Moving a cut's volume v straight from its centre of mass to the fill's is the usual measure of
 * mass haul; the true carriage of each grain is never less (the distance between two centres is at
 * most the mean distance between what lies about them).
 */
export function planHaul(cuts: readonly Heap[], fills: readonly Heap[]): Haul[] {
  for (const heap of [...cuts, ...fills]) checkHeap(heap);
  const distance = (cut: number, fill: number): number => {
    const [from, to] = [cuts[cut]!.at, fills[fill]!.at];
    return Math.hypot(to[0] - from[0], to[1] - from[1]);
  };
  const loads = leastCarriage(
    cuts.map(({ volume }) => volume),
    fills.map(({ volume }) => volume),
    distance,
  );
  return loads.map(({ cut, fill, volume }) => ({
    from: cuts[cut]!.id,
    to: fills[fill]!.id,
    volume,
    distance: distance(cut, fill),
  }));
}

function checkHeap({ id, at, volume }: Heap): void {
  if (!(volume >= 0 && volume < Infinity)) {
    throw new Error(`heap "${id}": got volume ${volume}, expected a finite one, not negative`);
  }
  if (!at.every(Number.isFinite)) {
    throw new Error(`heap "${id}": got place ${at.join(", ")}, expected finite coordinates`);
  }
}

/** What goes from one cut to one fill, by their places in the lists. */
export interface Load {
  cut: number;
  fill: number;
  volume: number;
}

/**
 * The transportation problem: loads with the least Σ volume × cost that use up the lesser of both
 * sides. `costOf` gives the cost of moving one unit of volume, finite and not negative.
 *
 * Method: the transportation simplex. Hitchcock, "The distribution of a product from several
 * sources to numerous localities", J. Math. Phys. 20 (1941), states the problem; Dantzig,
 * "Application of the simplex method to a transportation problem" (1951), solves it on spanning
 * trees; Cunningham, "A network simplex method", Math. Programming 11 (1976), keeps the trees
 * strongly feasible, so that equal costs and exhausted heaps cannot send it round in circles.
 *
 * Exactness: volumes are counted in whole grains of about 1e-15 of the total, and costs in whole
 * steps of the dearest's 1e-12 or finer. Sums of whole numbers below 2^53 are exact, so the end is
 * a proven optimum of the counted problem and no load is dust left by rounding. A heap of less
 * than half a grain counts as none.
 */
export function leastCarriage(
  cuts: readonly number[],
  fills: readonly number[],
  costOf: (cut: number, fill: number) => number,
): Load[] {
  const grain = grainOf(Math.max(total(cuts), total(fills)));
  const given = inGrains(cuts, grain);
  const taken = inGrains(fills, grain);
  if (given.length === 0 || taken.length === 0) return [];
  const steps = inSteps(given, taken, costOf);
  evenOut(given, taken, steps);
  const cells = cheapestFirst(given, taken, steps);
  while (improve(cells, steps));
  return cells
    .map(({ cut, fill, grains }) => ({
      cut: given[cut]!.place,
      fill: taken[fill]!.place,
      volume: grains * grain,
    }))
    .filter(({ cut, fill, volume }) => cut >= 0 && fill >= 0 && volume > 0)
    .sort((a, b) => a.cut - b.cut || a.fill - b.fill);
}

/** A heap in grains, with its place in the caller's list; −1 for what evens out the totals. */
interface Counted {
  place: number;
  grains: number;
}

/** One load of a plan, by place among the counted heaps. A plan's cells make a spanning tree. */
interface BasisCell {
  cut: number;
  fill: number;
  grains: number;
}

/** Cost of a cell in whole steps: `steps[cut][fill]`. */
type Steps = number[][];

/** A power of two, so that dividing by it is exact; the total is below 2^52 grains. */
function grainOf(most: number): number {
  return Math.max(2 ** (Math.ceil(Math.log2(most)) - 51), Number.MIN_VALUE);
}

function inGrains(volumes: readonly number[], grain: number): Counted[] {
  return volumes
    .map((volume, place) => ({ place, grains: Math.round(volume / grain) }))
    .filter(({ grains }) => grains > 0);
}

/** Whole steps such that a sum of one cost for each heap, a potential at most, stays exact. */
function inSteps(
  given: readonly Counted[],
  taken: readonly Counted[],
  costOf: (cut: number, fill: number) => number,
): Steps {
  const costs = given.map((cut) => taken.map((fill) => costOf(cut.place, fill.place)));
  const dearest = costs.flat().reduce((most, cost) => Math.max(most, cost), 0);
  const finest = 50 - Math.ceil(Math.log2(given.length + taken.length));
  const step = dearest > 0 ? dearest / 2 ** finest : 1;
  return costs.map((row) => row.map((cost) => Math.round(cost / step)));
}

/** Gives the lesser side one more heap, at no cost, that makes the totals equal. */
function evenOut(given: Counted[], taken: Counted[], steps: Steps): void {
  const over = grainsOf(given) - grainsOf(taken);
  if (over > 0) {
    taken.push({ place: -1, grains: over });
    for (const row of steps) row.push(0);
  }
  if (over < 0) {
    given.push({ place: -1, grains: -over });
    steps.push(taken.map(() => 0));
  }
}

/**
 * A first plan: of the ways that are left the cheapest takes all it can, and so on. Each cut is
 * thought to hold a trace more than its grains and each fill, but the last, to want a trace less:
 * then a cut and a fill are never used up together before the end, and where only a trace is moved
 * the empty cell that is kept leads towards the last fill, the root, as Cunningham asks.
 */
function cheapestFirst(
  given: readonly Counted[],
  taken: readonly Counted[],
  steps: Steps,
): BasisCell[] {
  const [left, wanted] = [given.map(pile(1)), taken.map(pile(-1))];
  wanted[wanted.length - 1]!.trace = given.length + taken.length - 1;
  const ways = steps
    .flatMap((row, cut) => row.map((cost, fill) => ({ cut, fill, cost })))
    .sort((a, b) => a.cost - b.cost || a.cut - b.cut || a.fill - b.fill);
  const cells: BasisCell[] = [];
  for (const { cut, fill } of ways) {
    const [from, to] = [left[cut]!, wanted[fill]!];
    if (from.spent || to.spent) continue;
    const over = from.grains - to.grains || from.trace - to.trace;
    const { grains, trace } = over < 0 ? from : to;
    cells.push({ cut, fill, grains });
    for (const each of [from, to]) {
      each.grains -= grains;
      each.trace -= trace;
      each.spent = each.grains === 0 && each.trace === 0;
    }
  }
  return cells;
}

function pile(trace: number): (heap: Counted) => { grains: number; trace: number; spent: boolean } {
  return ({ grains }) => ({ grains, trace, spent: false });
}

/**
 * A plan's cells hung from the last fill. Nodes are the cuts, then the fills; every node but the
 * root hangs by one cell from its parent. The potentials of a cell's ends add up to its cost.
 */
interface Tree {
  hangsBy: Int32Array;
  depth: Int32Array;
  potential: Float64Array;
}

function hang(cells: readonly BasisCell[], steps: Steps): Tree {
  const cuts = steps.length;
  const count = cells.length + 1;
  const tree: Tree = {
    hangsBy: new Int32Array(count).fill(-1),
    depth: new Int32Array(count),
    potential: new Float64Array(count),
  };
  const { first, next } = cellsAt(cells, cuts);
  const reached = [count - 1];
  for (const node of reached) {
    for (let end = first[node]!; end >= 0; end = next[end]!) {
      const cell = end >> 1;
      if (cell === tree.hangsBy[node]) continue;
      const { cut, fill } = cells[cell]!;
      const child = node < cuts ? cuts + fill : cut;
      tree.hangsBy[child] = cell;
      tree.depth[child] = tree.depth[node]! + 1;
      tree.potential[child] = steps[cut]![fill]! - tree.potential[node]!;
      reached.push(child);
    }
  }
  if (reached.length !== count) {
    throw new Error(`haul plan: got a tree of ${reached.length} heaps, expected ${count}`);
  }
  return tree;
}

/** The cells at each node as chains: cell c is chained at its cut as 2c, at its fill as 2c + 1. */
function cellsAt(
  cells: readonly BasisCell[],
  cuts: number,
): { first: Int32Array; next: Int32Array } {
  const first = new Int32Array(cells.length + 1).fill(-1);
  const next = new Int32Array(2 * cells.length);
  cells.forEach(({ cut, fill }, cell) => {
    next[2 * cell] = first[cut]!;
    first[cut] = 2 * cell;
    next[2 * cell + 1] = first[cuts + fill]!;
    first[cuts + fill] = 2 * cell + 1;
  });
  return { first, next };
}

/** Takes the dearest fault out of a plan; false when there is none: the plan is the best. */
function improve(cells: BasisCell[], steps: Steps): boolean {
  const tree = hang(cells, steps);
  const entering = cheapest(tree.potential, steps);
  if (!entering) return false;
  const { gains, losses } = circuit(cells, tree, entering, steps.length);
  // Of those that run dry first, the last along the circuit leaves: Cunningham's rule.
  let leaving = losses[0]!;
  for (const cell of losses) {
    if (cells[cell]!.grains <= cells[leaving]!.grains) leaving = cell;
  }
  const { grains } = cells[leaving]!;
  for (const cell of gains) cells[cell]!.grains += grains;
  for (const cell of losses) cells[cell]!.grains -= grains;
  cells[leaving] = { ...entering, grains };
  return true;
}

/** The cell that costs most less than its ends' potentials; null when none costs less. */
function cheapest(potential: Float64Array, steps: Steps): { cut: number; fill: number } | null {
  let best: { cut: number; fill: number } | null = null;
  let least = 0;
  const cuts = steps.length;
  for (let cut = 0; cut < cuts; cut++) {
    const row = steps[cut]!;
    for (let fill = 0; fill < row.length; fill++) {
      const over = row[fill]! - potential[cut]! - potential[cuts + fill]!;
      if (over >= least) continue;
      least = over;
      best = { cut, fill };
    }
  }
  return best;
}

/**
 * The circuit that an entering cell closes in the tree, in the order met when going from the place
 * where its two branches meet down to the entering cut, over to its fill and up again. What enters
 * is gained by every second cell and lost by those between.
 */
function circuit(
  cells: readonly BasisCell[],
  { hangsBy, depth }: Tree,
  entering: { cut: number; fill: number },
  cuts: number,
): { gains: number[]; losses: number[] } {
  const above = (node: number): number => {
    const { cut, fill } = cells[hangsBy[node]!]!;
    return node < cuts ? cuts + fill : cut;
  };
  const gains: number[] = [];
  const down: number[] = [];
  const up: number[] = [];
  let [a, b] = [entering.cut, cuts + entering.fill];
  while (a !== b) {
    if (depth[a]! >= depth[b]!) {
      (a < cuts ? down : gains).push(hangsBy[a]!);
      a = above(a);
    } else {
      (b < cuts ? gains : up).push(hangsBy[b]!);
      b = above(b);
    }
  }
  return { gains, losses: [...down.reverse(), ...up] };
}

function grainsOf(heaps: readonly Counted[]): number {
  return heaps.reduce((sum, { grains }) => sum + grains, 0);
}

function total(volumes: readonly number[]): number {
  return volumes.reduce((sum, volume) => sum + volume, 0);
}
