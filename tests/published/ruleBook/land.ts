/** The rules of the groups "water" and "land", and of the permit's list. */
import type { Work } from "../../../src/site/index.js";
import { plainPad } from "../../../src/site/site.fixture.js";
import type { RuleCase, Said } from "./case.js";
import {
  allOf,
  box,
  building,
  estimated,
  FOOT,
  holeOf,
  missingItem,
  said,
  type Job,
  type Rules,
} from "../../fixtures/job.js";

const PRACTICE = "common practice, no source";
const CLARK = "Clark County Code 14.07.060";

/** Ground that falls 1 in 10 to the south. */
const falling = (_: number, y: number): number => 100 + 0.1 * y;

/** A house 12 m wide to whose north wall the water of so many m² runs; the survey ends at y = 20. */
function houseBelow(area: number): Job {
  const north = 20 - area / 12;
  return { height: falling, works: [building(box(-6, north - 3, 6, north), 100)] };
}

/** The fall of the ditch that would turn water off a house, rise per run. */
function ditchFall(rules: Rules): number {
  const ditch = estimated({ ...houseBelow(300), rules }).runoff[0]?.ditch ?? [];
  const length = ditch.slice(1).reduce((sum, [x, y], i) => {
    const [u, v] = ditch[i]!;
    return sum + Math.hypot(x - u, y - v);
  }, 0);
  return (ditch[0]![2] - ditch.at(-1)![2]) / length;
}

const PATH_OF_CREEK = (y: number): [number, number][] => [
  [-30, y],
  [30, y],
];

/** A bed on ground of this slope. */
function bedOn(slope: number, rules: Rules): Said | null {
  const bed: Work = {
    ...{ kind: "bed", id: "bed", name: "Bed", at: [0, 0], bearing: 0, length: 6, width: 2 },
    ...{ height: 0.6, wall: 0, base: 100, filling: [] },
  };
  return said("ground.steep", { works: [bed], height: (_, y) => 100 + slope * y, rules });
}

const lot = { id: "lot", kind: "lot-line", closed: true, path: box(-20, -20, 20, 20) };

export const LAND_RULES: readonly RuleCase[] = [
  {
    // 2,500 ways over 1,600 m²: what drains to a house is known to a few of them.
    ...{ id: "inflow-from", value: 200, source: PRACTICE, local: 120, speaks: "above", step: 4 },
    asks: (area, rules) => said("runoff.comes-in", { ...houseBelow(area), rules }),
  },
  {
    ...{ id: "hollow-from", value: 0.05, source: PRACTICE, local: 0.08 },
    ...{ speaks: "above", step: 0.001 },
    asks: (depth, rules) => {
      const height = (x: number, y: number): number => (x === 0 && y === 0 ? 100 - depth : 100);
      const works = [building(box(-3, -2, 3, 2), 100)];
      return said("runoff.hollow", { works, height, rules });
    },
  },
  {
    ...{ id: "ditch-fall", value: 0.01, source: PRACTICE, local: 0.02 },
    ...{ digits: 4, sets: ditchFall },
  },
  {
    ...{ id: "slope-stays-soil", value: 2, source: CLARK, local: 1.5 },
    ...{ speaks: "below", step: 0.001 },
    asks: (run, rules) => {
      const cut = { works: [plainPad({ top: 99, walls: { by: "run", run } })], rules };
      const fill = { works: [plainPad({ top: 101, fillRun: run })], rules };
      const [one, other] = [said("slope.cut-stays", cut), said("slope.fill-stays", fill)];
      if ((one === null) !== (other === null)) throw new Error("cut and fill are not told alike");
      return one;
    },
  },
  {
    ...{ id: "slope-stays-rock", value: 1, source: CLARK, local: 0.5 },
    ...{ speaks: "below", step: 0.001 },
    asks: (run, rules) => {
      const works = [plainPad({ top: 99, walls: { by: "run", run } })];
      return said("slope.cut-stays", { works, ground: allOf("shelf-rock"), rules });
    },
  },
  {
    ...{ id: "steep-from", value: 0.25, source: PRACTICE, local: 0.15 },
    ...{ speaks: "above", step: 0.001, asks: bedOn },
  },
  {
    ...{ id: "disturbed-from", value: 43_560 * FOOT ** 2, local: 1000, speaks: "above", step: 1 },
    ...{ source: "US Environmental Protection Agency, construction general permit" },
    asks: (area, rules) => {
      const side = Math.sqrt(area) / 2;
      const works = [building(box(-side, -side, side, side), 100)];
      return said("land.permit", { works, half: 40, rules });
    },
  },
  {
    ...{ id: "barrier-off", value: 5 * FOOT, source: PRACTICE, local: 3 },
    sets: (rules) => {
      // The lowest side of the hole lies at y = −1.5, and the line keeps its height below it.
      const { barriers } = estimated({ works: [holeOf(1)], height: falling, rules }).land;
      return -1.5 - Math.max(...barriers.flat().map(([, y]) => y));
    },
  },
  {
    ...{ id: "floor-gap", value: 1 * FOOT, source: PRACTICE, local: 0.6 },
    ...{ speaks: "above", step: 0.006 },
    asks: (gap, rules) =>
      said("building.gap", { works: [building(box(-3, -2, 3, 2), 100 + gap)], rules }),
  },
  {
    ...{ id: "drains-within", value: 10 * FOOT, source: PRACTICE, local: 5 },
    ...{ speaks: "below", step: 0.001 },
    asks: (beyond, rules) => {
      // The survey ends at y = −20, and the water leaves it there.
      const creek = { id: "c", kind: "watercourse", path: PATH_OF_CREEK(-20 - beyond) };
      return said("land.drains", { works: [holeOf(1)], height: falling, limits: [creek], rules });
    },
  },
  {
    ...{ id: "wells-within", value: 100 * FOOT, local: 50, speaks: "above", step: 0.001 },
    ...{ source: "union of ten published county and state checklists" },
    asks: (off, rules) => {
      const well = { id: "w", kind: "neighbour-well", at: [20 + off, 0] as [number, number] };
      const text = missingItem("wells", { limits: [lot, well], rules });
      return text === null ? null : { text };
    },
  },
  {
    ...{ id: "pit-at-tank", value: 10 * FOOT, source: PRACTICE, local: 6 },
    ...{ speaks: "above", step: 0.001 },
    asks: (off, rules) => {
      // The tank's body ends 1 m east of the origin.
      const probes = [{ id: "t", x: 1 + off, y: 0, thickness: [] }];
      const ground = { ...allOf("clay"), probes };
      const text = missingItem("pit-at-tank", { works: [holeOf(1)], ground, rules });
      return text === null ? null : { text };
    },
  },
];
