/** The rules of the group "trench", and the crane's distance from an edge. */
import type { Pad, Tank, Trench, Work } from "../../../src/site/index.js";
import { plainPad, plainTrench } from "../../../src/site/site.fixture.js";
import type { RuleCase, Said } from "./case.js";
import {
  allOf,
  box,
  building,
  estimated,
  FOOT,
  holeOf,
  lineAt,
  said,
  type Job,
  type Rules,
} from "../../fixtures/job.js";

const TYPE_A = allOf("clay", {
  ...{ ground: "soil", grain: "cohesive", strength: "high", water: "dry", dips: "no" },
  ...{ fissured: false, shaken: false, disturbed: false },
});

/** What is said of a hole of this depth. */
const deep =
  (code: string, more: Job = {}) =>
  (face: number, rules: Rules): Said | null =>
    said(code, { works: [holeOf(face)], ...more, rules: [...(more.rules ?? []), ...rules] });

/** What is said of benches in type A soil; the lowest and those above it, m. */
function benched(first: number, rise: number, rules: Rules): Said | null {
  const walls: Tank["walls"] = { by: "benches", first, rise, tread: rise };
  return said("walls.bench-high", { works: [holeOf(3, { walls })], ground: TYPE_A, rules });
}

/** m from the toe of the heap to the hole's edge is the figure; the heap's size comes of the hole. */
function heapAt(away: number, rules: Rules): Said | null {
  const heaped = (x: number): Job => ({
    works: [
      holeOf(1),
      { kind: "pile", id: "pile", name: "Pile", at: [x, 0], material: "native" } satisfies Work,
    ],
    rules,
  });
  const toe = estimated(heaped(12)).works.flatMap(({ heap }) => heap?.toe ?? []);
  const radius = 12 - Math.min(...toe.flat().map(([x]) => x));
  return said("pile.near-edge", heaped(1 + away + radius));
}

/** A tank set by a crane whose axis stands so many depths of its hole from the edge, 2 m deep. */
function craneAt(depths: number, rules: Rules): Said | null {
  const tank = holeOf(2, { body: { length: 3, width: 2, height: 0.5, emptyMass: 1000 } });
  const crane = { by: "table", name: "Crane", table: [{ radius: 30, load: 50_000 }] } as const;
  const stands = [{ id: "a", name: "Stand", at: [1 + 2 * depths, 0] as [number, number] }];
  const lift = { crane: { ...crane, table: [...crane.table] }, rigging: 0, stands };
  const job: Job = { works: [tank], rules, machines: { lift } };
  const asked = said("lift.edge", job);
  // Without a crane the same distance is told as a figure.
  const note = said("lifting.weight", { works: [tank], rules });
  if (asked !== null && note === null) throw new Error("got no note on lifting, expected it");
  return asked;
}

/** Gravel laid and dug again by the tank's hole of 3 × 2 m, m³. */
function dugAgain(volume: number, rules: Rules): Said | null {
  const course: Pad["course"] = { depth: volume / 6, material: "pea-gravel" };
  const pad = plainPad({ course });
  return said("dig.digs-earlier-work", { works: [pad, holeOf(1)], rules });
}

/** A hole in 1.8 m of fill that nobody has typed, its walls at this run. */
function inFill(run: number, rules: Rules): Said | null {
  const fill = plainPad({ outline: box(-10, -10, 10, 10), top: 102 });
  const tank = holeOf(-0.2, { walls: { by: "run", run } });
  return said("walls.too-steep", { works: [fill, tank], rules });
}

/** What is said of the way out of a trench of this half length, 1.5 m deep, if it has two ladders. */
function twoLadders(halfLength: number, rules: Rules): Said | null {
  const path: [number, number][] = [
    [-halfLength, 0],
    [halfLength, 0],
  ];
  const pipe: Trench["pipes"][number] = {
    ...{ id: "pipe", name: "Pipe", service: "gravity", material: "PVC" },
    ...{ inside: 0.1, outside: 0.1, grade: { by: "inverts", start: 98.6, end: 98.6 } },
  };
  const trench = plainTrench({ path, pipes: [pipe] });
  const { holes, findings } = estimated({ works: [trench], rules });
  if ((holes[0]?.ladders.length ?? 0) < 2) return null;
  return findings.find(({ code }) => code === "walls.way-out") ?? null;
}

export const HOLE_RULES: readonly RuleCase[] = [
  {
    ...{ id: "protect-from", value: 5 * FOOT, source: "29 CFR 1926.652(a)(1)" },
    ...{ local: 4 * FOOT, speaks: "above", step: 0.001, asks: deep("walls.protect") },
  },
  {
    ...{ id: "stricter-states", value: 4 * FOOT, source: "state rules on excavation" },
    ...{ local: 3.5 * FOOT, speaks: "above", step: 0.001 },
    asks: (face, rules) => {
      const found = deep("walls.way-out", { rules: [{ id: "way-out-from", value: 0.5 }] });
      const note = found(face, rules);
      return note?.text.includes("Some states ask") === true ? note : null;
    },
  },
  {
    ...{ id: "way-out-from", value: 4 * FOOT, source: "29 CFR 1926.651(c)(2)" },
    ...{ local: 3 * FOOT, speaks: "above", step: 0.001, asks: deep("walls.way-out") },
  },
  {
    ...{ id: "way-out-within", value: 25 * FOOT, source: "29 CFR 1926.651(c)(2)" },
    ...{ local: 20 * FOOT, speaks: "above", step: 0.001, asks: twoLadders },
  },
  {
    ...{ id: "engineer-over", value: 20 * FOOT, local: 15 * FOOT },
    ...{ source: "29 CFR 1926 Subpart P, Appendix B, Table B-1 note", speaks: "above" },
    ...{ step: 0.001, asks: deep("walls.engineer") },
  },
  {
    ...{ id: "spoil-back", value: 2 * FOOT, source: "29 CFR 1926.651(j)(2)" },
    ...{ local: 3 * FOOT, speaks: "below", step: 0.001, asks: heapAt },
  },
  {
    ...{ id: "untyped-run", value: 1.5, source: "29 CFR 1926.652(b)(1)" },
    ...{ local: 2, speaks: "below", step: 0.001, asks: inFill },
  },
  {
    ...{ id: "ladder-above", value: 3 * FOOT, source: "29 CFR 1926.1053", local: 4 * FOOT },
    sets: (rules) => {
      const hole = estimated({ works: [holeOf(2)], rules }).holes[0];
      return (hole?.ladders[0]?.length ?? NaN) - (hole?.face ?? NaN);
    },
  },
  {
    ...{ id: "short-open-depth", value: 12 * FOOT, local: 10 * FOOT, speaks: "above" },
    ...{ source: "29 CFR 1926 Subpart P, Appendix B, Table B-1 note", step: 0.001 },
    asks: (face, rules) => {
      const tank = holeOf(face, { openDay: true, walls: { by: "run", run: 0.5 } });
      return said("walls.too-steep", { works: [tank], ground: TYPE_A, rules });
    },
  },
  {
    ...{ id: "bench-first", value: 4 * FOOT, local: 3.5 * FOOT, speaks: "above", step: 0.001 },
    ...{ source: "29 CFR 1926 Subpart P, Appendix B, Figures B-1.1 and B-1.2" },
    asks: (first, rules) => benched(first, 1, rules),
  },
  {
    ...{ id: "bench-next", value: 5 * FOOT, local: 3.5 * FOOT, speaks: "above", step: 0.001 },
    ...{ source: "29 CFR 1926 Subpart P, Appendix B, Figure B-1.1" },
    asks: (rise, rules) => benched(1, rise, rules),
  },
  {
    ...{ id: "surcharge-within", value: 1, source: "common practice, no source", local: 1.5 },
    ...{ speaks: "below", step: 0.001 },
    asks: (depths, rules) => {
      const drive = { id: "d", kind: "drive", path: lineAt(1 + 2 * depths) };
      return said("edge.load", { works: [holeOf(2)], limits: [drive], rules });
    },
  },
  {
    ...{ id: "undermine-run", value: 1, source: "29 CFR 1926.651(i)(2)", local: 1.5 },
    ...{ speaks: "below", step: 0.001 },
    asks: (run, rules) => {
      const house = building(box(1 + 2 * run, -3, 8, 3), 100);
      return said("edge.undermines", { works: [house, holeOf(2)], rules });
    },
  },
  {
    ...{ id: "crane-back", value: 1.5, source: "common practice, no source", local: 2 },
    ...{ speaks: "below", step: 0.001, asks: craneAt },
  },
  {
    ...{ id: "dug-again-from", value: 0.3, source: "common practice, no source", local: 0.5 },
    ...{ speaks: "above", step: 0.001, asks: dugAgain },
  },
];
