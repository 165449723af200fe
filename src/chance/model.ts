/** One scheme made ready for many runs, and the runs. */
import { costOf } from "../cost/index.js";
import { balanceEarth, digScheme, type CutBeside, type DigResult } from "../dig/index.js";
import { besideLines, estimate, groundOf, schemeOf } from "../estimate/index.js";
import { thicknessAt, type BaseGround } from "../ground/index.js";
import { diggersOf, placeOn, planMachines } from "../machines/index.js";
import {
  isLocated,
  materialsOf,
  type Material,
  type PlanPoint,
  type Quantity,
  type Scheme,
  type Site,
} from "../site/index.js";
import { drawsOf, type Draws } from "./draws.js";
import { candidatePlaces } from "./probePlaces.js";
import { randomOf } from "./random.js";
import { RockModel } from "./rockModel.js";
import type { Drawn } from "./types.js";

/** What a run needs, made once. */
export interface ChanceModel {
  site: Site;
  scheme: Scheme;
  seed: number;
  draws: Draws;
  rock: RockModel;
  /** Places for a further probe, local m, as watched by `rock`. */
  candidates: readonly { x: number; y: number }[];
  base: BaseGround;
  dig: DigResult;
  /** What is cut within the tolerance of buried lines, as estimated. */
  beside: readonly CutBeside[];
  /** m of erosion barrier, as estimated. */
  barrier: Quantity;
  materials: ReadonlyMap<string, Material>;
}

/** What summing up needs of a model: plain data, for handing over from a worker. */
export interface ChanceShape {
  seed: number;
  drawn: readonly Drawn[];
  /** Site coordinates, m. */
  candidates: readonly PlanPoint[];
  /** m of each layer but the last at each candidate, as the probes give it. */
  thickness: readonly (readonly number[])[];
  /** Layers that are drawn. */
  layers: number;
}

export function shapeOf({ seed, draws, candidates, rock, base }: ChanceModel): ChanceShape {
  const [ox, oy] = base.tin.origin;
  return {
    seed,
    drawn: draws.drawn,
    candidates: candidates.map(({ x, y }): PlanPoint => [x + ox, y + oy]),
    thickness: candidates.map(({ x, y }) => thicknessAt(base.regions, x, y)),
    layers: rock.doubts.length,
  };
}

/** Figures of some runs in a row, one entry each; and sums for the next probe. Plain data. */
export interface ChanceRuns {
  first: number;
  count: number;
  total: Float64Array;
  days: Float64Array;
  jobDays: Float64Array;
  hours: Float64Array;
  rock: Float64Array;
  hardRock: Float64Array;
  loads: Float64Array;
  /** Shares drawn, run after run, as many as the model's draws. */
  shares: Float64Array;
  /** Sums over these runs for each layer and candidate: `SUMS` of them, see `addProbeSums`. */
  sums: Float64Array;
}

/** Sums kept for a layer and a candidate: doubt, its square, doubt × total, doubt × rock. */
export const SUMS = 4;

/** Default seed: any figure would do; a fixed one gives the same answer every time. */
export const DEFAULT_SEED = 1;

/**
 * Makes a scheme ready: digs it, samples it, factors the doubt of every layer. The digger is the
 * one that the estimate chooses. Throws like `estimate`.
 */
export function chanceModel(site: Site, schemeId: string, seed = DEFAULT_SEED): ChanceModel {
  const scheme = schemeOf(site, schemeId);
  const base = groundOf(site);
  const materials = materialsOf(site);
  const { result: dig, ground } = digScheme(site, scheme, base);
  ground.release();
  const whole = estimate(site, schemeId);
  const chosen = whole.machines.digger.id;
  const digger = diggersOf(scheme).find((each) => each.id === chosen);
  if (!digger) throw new Error(`digger: got "${chosen}", expected one that the scheme can choose`);
  let candidates: ChanceModel["candidates"] = [];
  const rock = new RockModel(site, scheme, base, dig, (columns) => {
    candidates = candidatePlaces(site, base, columns);
    return candidates;
  });
  const moved = new Set([
    ...Object.keys(dig.cut),
    ...dig.works.flatMap((work) => Object.keys(work.fill)),
    ...site.ground.layers.map((layer) => layer.material),
  ]);
  const draws = drawsOf(scheme, digger, materials, moved, site.units);
  const beside = besideLines({ site, scheme, base, dig });
  const { barrier } = whole.land;
  return { site, scheme, seed, draws, rock, candidates, base, dig, beside, barrier, materials };
}

/** Makes runs `first` to `first + count − 1`. Each depends on the seed and its own number alone. */
export function runChance(model: ChanceModel, first: number, count: number): ChanceRuns {
  const { draws, candidates, rock } = model;
  const layers = rock.doubts.length;
  const width = draws.drawn.length;
  const runs: ChanceRuns = {
    first,
    count,
    total: new Float64Array(count),
    days: new Float64Array(count),
    jobDays: new Float64Array(count),
    hours: new Float64Array(count),
    rock: new Float64Array(count),
    hardRock: new Float64Array(count),
    loads: new Float64Array(count),
    shares: new Float64Array(count * width),
    sums: new Float64Array(SUMS * layers * candidates.length),
  };
  for (let i = 0; i < count; i++) {
    const random = randomOf(model.seed, first + i);
    const shares = runs.shares.subarray(i * width, (i + 1) * width);
    for (let k = 0; k < width; k++) shares[k] = random.uniform();
    rock.draw(random);
    oneRun(model, shares, runs, i);
    addProbeSums(model, runs, i);
  }
  return runs;
}

function oneRun(model: ChanceModel, shares: Float64Array, runs: ChanceRuns, i: number): void {
  const inputs = model.draws.inputs(shares);
  const works = model.rock.works();
  const dig: DigResult = {
    ...model.dig,
    works,
    cut: sumOfCuts(works),
    earth: balanceEarth(works, inputs.materials),
  };
  const scheme: Scheme = { ...model.scheme, prices: inputs.prices };
  const { tables, digger, materials } = inputs;
  // Whether it can is settled: the hole keeps its shape.
  const held = new Map([[digger.id, []]]);
  const given = {
    ...{ tables, diggers: [digger], held, beside: model.beside },
    place: placeOn(model.site),
    ...(!isLocated(model.site) && { locate: { days: model.site.locate?.days ?? null } }),
  };
  const machines = planMachines(scheme, dig, materials, "metric", given);
  const { currency } = model.site;
  const cost = costOf(scheme, currency, dig, machines, materials, model.barrier);
  runs.total[i] = cost.total.likely;
  runs.days[i] = machines.days.likely;
  runs.jobDays[i] = machines.job.schedule.likely.calendarDays;
  runs.hours[i] = machines.hours.likely;
  const { surplus, imports } = cost.loads;
  runs.loads[i] = imports.reduce((sum, { loads }) => sum + loads.value, surplus.value);
  for (const [id, volume] of Object.entries(dig.cut)) {
    const kind = materials.get(id)?.kind;
    if (kind === "rock") runs.hardRock[i]! += volume;
    if (kind === "rock" || kind === "rippable") runs.rock[i]! += volume;
  }
}

function sumOfCuts(works: DigResult["works"]): Record<string, number> {
  const cut: Record<string, number> = {};
  for (const work of works) {
    for (const [id, volume] of Object.entries(work.cut)) cut[id] = (cut[id] ?? 0) + volume;
  }
  return cut;
}

function addProbeSums({ rock, candidates }: ChanceModel, runs: ChanceRuns, i: number): void {
  const [total, stone] = [runs.total[i]!, runs.rock[i]!];
  let at = 0;
  for (const doubt of rock.doubts) {
    for (let k = 0; k < candidates.length; k++, at += SUMS) {
      const value = doubt[rock.firstWatched + k]!;
      runs.sums[at]! += value;
      runs.sums[at + 1]! += value * value;
      runs.sums[at + 2]! += value * total;
      runs.sums[at + 3]! += value * stone;
    }
  }
}
