import { fittingRows } from "../../estimate/index.js";
import { plainNumber, size } from "../../units/index.js";
import { words } from "../../words/index.js";
import { pipeSize, workNames } from "./item.js";
import type { OrderItem, Ordering } from "./item.js";

/** One kind of fitting, counted over the scheme. */
interface Counted {
  name: string;
  count: number;
  where: Set<string>;
  /** Degrees that the path turns where bends stand. */
  turns: string[];
}

/** Bends that drains are made with: 1/16, 1/8 and 1/4 of a turn (common practice, no source). */
const BENDS = [22.5, 45, 90] as const;
/** Degrees that joints take up: common practice, no source. */
const IN_JOINTS = 5;

/** Fittings of the pressure systems, and bends, cleanouts and tank connectors of the drains. */
export function fittingItems(ordering: Ordering): OrderItem[] {
  const counted = new Map<string, Counted>();
  const add = (name: string, count: number, work: string, turn?: string): void => {
    const known = counted.get(name) ?? { name, count: 0, where: new Set<string>(), turns: [] };
    known.count += count;
    known.where.add(work);
    if (turn !== undefined) known.turns.push(turn);
    counted.set(name, known);
  };
  addPressure(ordering, add);
  addDrains(ordering, add);
  return [...counted.values()].map(({ name, count, where, turns }) => ({
    kind: "pipe",
    ...{ name, count, unit: words.orders.each, exact: "" },
    where: workNames(ordering, [...where]),
    notes: [
      ...(turns.length > 0 ? [words.orders.bendsAre(turns.join(", "))] : []),
      words.orders.notInCost,
    ],
    line: null,
  }));
}

type Add = (name: string, count: number, work: string, turn?: string) => void;

function addPressure({ site, scheme }: Ordering, add: Add): void {
  const said = words.orders;
  const named = new Map(fittingRows().rows.map(({ id, name }) => [id, name]));
  const trenches = scheme.works.flatMap((work) => (work.kind === "trench" ? [work] : []));
  for (const system of scheme.flow?.pressure ?? []) {
    const main = trenches
      .flatMap(({ id, pipes }) => pipes.map((pipe) => ({ ...pipe, trench: id })))
      .find(({ id }) => id === system.main[0]);
    if (main !== undefined) {
      const sold = pipeSize(main.inside, site);
      for (const { id, count } of system.fittings ?? []) {
        add(said.fitting(named.get(id) ?? id, sold), count, main.trench);
      }
      if (system.checkValve === true) add(said.checkValve(sold), 1, main.trench);
    }
    for (const { inside, fittings = [], valve, bed } of system.branches) {
      const where = bed ?? system.tank;
      for (const { id, count } of fittings) {
        add(said.fitting(named.get(id) ?? id, pipeSize(inside, site)), count, where);
      }
      if (valve !== undefined) add(said.valve(pipeSize(inside, site)), 1, where);
    }
  }
}

function addDrains({ site, scheme, estimate }: Ordering, add: Add): void {
  const said = words.orders;
  const { flow } = estimate;
  for (const pipe of flow.pipes) {
    if (pipe.service !== "gravity") continue;
    for (const { angle } of pipe.bends) {
      if (angle < IN_JOINTS) continue;
      const nearest = BENDS.reduce((best, bend) =>
        Math.abs(bend - angle) < Math.abs(best - angle) ? bend : best,
      );
      const turn = `${plainNumber(angle, 1)}°`;
      const name = said.bend(`${nearest}°`, pipeSize(pipe.inside, site));
      add(name, 1, pipe.trench, turn);
    }
  }
  const laid = scheme.works.flatMap((work) =>
    work.kind === "trench" ? work.pipes.map((pipe) => ({ ...pipe, trench: work.id })) : [],
  );
  for (const { inside, outside, id, trench, cleanouts = [] } of laid) {
    if (cleanouts.length > 0) add(said.cleanout(pipeSize(inside, site)), cleanouts.length, trench);
    for (const joint of flow.joints.filter(({ pipe }) => pipe === id)) {
      add(said.tankSeal(size.print(outside, site.units)), 1, joint.tank);
    }
  }
}
