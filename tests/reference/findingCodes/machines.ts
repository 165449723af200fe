/** Findings of machines, lifts, lines and cost. */
import type { Lift, Limit, Scheme, Tank } from "../../../src/site/index.js";
import { plainPad } from "../../../src/site/site.fixture.js";
import { allOf, box, building, holeOf, lineAt, type Job } from "../../fixtures/job.js";
import type { Pair } from "./pair.js";

type Machines = NonNullable<Scheme["machines"]>;

const tank = holeOf(1);
const with_ = (machines: Machines, more: Job = {}): Job => ({ works: [tank], machines, ...more });

interface Lifted {
  /** kg of the tank; 1,000 unless said, null for none. */
  weight?: number | null;
  /** kg rated, and m of radius to which the chart goes. */
  load?: number;
  radius?: number;
  crane?: Partial<Extract<Lift["crane"], { by: "table" }>>;
  lift?: Partial<Lift>;
  limits?: Limit[];
}

/** A tank lifted from 8 m east of its centre, with nothing on the hook but itself. */
function lifted({ weight = 1000, load = 50_000, radius = 30, crane, lift, limits }: Lifted): Job {
  const body: Tank["body"] = { length: 3, width: 2, height: 0.5 };
  if (weight !== null) body.emptyMass = weight;
  return {
    works: [holeOf(1, { body })],
    ...(limits && { limits }),
    machines: {
      lift: {
        crane: { by: "table", name: "Crane", table: [{ radius, load }], ...crane },
        rigging: 0,
        stands: [{ id: "a", name: "Stand", at: [8, 0] }],
        ...lift,
      },
    },
  };
}

/** An overhead line that boom and load can come this near to. */
const lineOff = (room: number): Lifted => ({
  limits: [
    {
      ...{ id: "line", kind: "overhead-line", voltage: 1000 },
      path: lineAt(8 + 8 + Math.hypot(3, 2) / 2 + room),
    },
  ],
});

/** 65% of 11,000 kg on a pad of 1 m² presses with 70,118 Pa. */
const pressed = (groundBearing: number): Lifted => ({
  crane: { mass: 10_000, padArea: 1 },
  lift: { groundBearing },
});

const driven = (away: number): Job => ({
  limits: [
    { id: "drive", kind: "drive", path: lineAt(10) },
    { id: "line", kind: "overhead-line", path: lineAt(10 + away), voltage: 1000 },
  ],
});

const called = { ticket: "A 12", date: "2027-04-01", days: 2 };
const starts = (start: string): Job => with_({ days: { start } }, { site: { locate: called } });
const own = (...diggers: { id: string; like: string }[]): Job => with_({ diggers });
const LIKE = "digger-3-5t";
/** What is dug with a digger that digs 3.1 m deep. */
const deepFor = (face: number): Job => ({ works: [holeOf(face)], machines: { digger: LIKE } });

const weighed = (emptyMass?: number): Job => {
  const body = { length: 3, width: 2, height: 0.5, ...(emptyMass !== undefined && { emptyMass }) };
  return { works: [holeOf(1, { body })] };
};

export const MACHINES: readonly Pair[] = [
  ["line.locate", { works: [tank] }, { works: [tank], site: { locate: called } }],
  // Thursday's call and two working days to wait: Tuesday is the first.
  ["line.locate-early", starts("2027-04-05"), starts("2027-04-06")],
  // Fourteen days on is the fifteenth, ten business days after Thursday the first.
  ["line.locate-old", starts("2027-04-16"), starts("2027-04-15")],
  // 29 CFR 1926.1408 Table A (second): 10 ft up to 50 kV.
  ["line.overhead", driven(3.04), driven(3.06)],
  ["lifting.no-weight", weighed(), weighed(1000)],
  ["lifting.weight", weighed(1000), weighed()],
  ["lift.no-weight", lifted({ weight: null }), lifted({})],
  ["lift.no-block", lifted({}), lifted({ crane: { block: 50 } })],
  [
    "lift.typical-crane",
    lifted({ lift: { crane: { by: "catalogue", id: "boom-truck-15t" } } }),
    lifted({}),
  ],
  [
    "lift.unknown-crane",
    lifted({ lift: { crane: { by: "catalogue", id: "no-such" } } }),
    lifted({ lift: { crane: { by: "catalogue", id: "boom-truck-15t" } } }),
  ],
  ["lift.no-stand", lifted({ load: 999 }), lifted({ load: 1000 })],
  ["lift.over-rating", lifted({ load: 999 }), lifted({ load: 1000 })],
  ["lift.near-rating", lifted({ load: 1333 }), lifted({ load: 1334 })],
  ["lift.stand", lifted({ load: 1334 }), lifted({ load: 1333 })],
  ["lift.beyond-table", lifted({ radius: 7.9 }), lifted({ radius: 8 })],
  ["lift.line", lifted(lineOff(3.04)), lifted(lineOff(3.06))],
  ["lift.line-ask", lifted(lineOff(6.09)), lifted(lineOff(6.1))],
  ["lift.pad", lifted(pressed(70_100)), lifted(pressed(70_200))],
  ["machine.unknown", with_({ digger: "no-such" }), with_({ digger: LIKE })],
  ["machine.cannot", with_({ access: { width: 0.5 } }), with_({ access: { width: 5 } })],
  ["machine.near-limit", deepFor(0.91 * 3.1), deepFor(0.89 * 3.1)],
  [
    "machine.hammer",
    { works: [tank], ground: allOf("granite") },
    { works: [tank], ground: allOf("clay") },
  ],
  ["machine.unknown-like", own({ id: "mine", like: "no-such" }), own({ id: "mine", like: LIKE })],
  [
    "machine.twice",
    own({ id: "mine", like: LIKE }, { id: "mine", like: LIKE }),
    own({ id: "mine", like: LIKE }, { id: "other", like: LIKE }),
  ],
  ["cost.demo-prices", { works: [tank] }, { works: [] }],
  ["cost.not-priced", { works: [tank, building(box(6, -2, 9, 2), 100)] }, { works: [tank] }],
  [
    "cost.surplus-kept",
    {
      works: [tank, { kind: "pile", id: "pile", name: "Pile", at: [10, 0], material: "native" }],
    },
    { works: [tank] },
  ],
  [
    "earth.fill-beside-left",
    { works: [tank, plainPad({ top: 101, fill: "native" })], ground: allOf("clay") },
    { works: [tank], ground: allOf("clay") },
  ],
  [
    "earth.own-would-do",
    { works: [tank, plainPad({ top: 101, fill: "imported-fill" })], ground: allOf("clay") },
    { works: [tank, plainPad({ top: 101, fill: "native" })], ground: allOf("clay") },
  ],
  [
    "cost.unknown-price",
    { works: [tank], scheme: { prices: [{ id: "no-such", price: 1 }] } },
    { works: [tank], scheme: { prices: [] } },
  ],
];
