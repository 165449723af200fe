/** Findings of the survey, the dig, walls, limits and pipes. */
import type { Limit, Pipe, Site, Tank, Work } from "../../../src/site/index.js";
import {
  plainPad,
  plainSite,
  plainStrip,
  plainTank,
  plainTrench,
} from "../../../src/site/site.fixture.js";
import { allOf, box, building, holeOf, lineAt, type Job } from "../../fixtures/job.js";
import type { Pair } from "./pair.js";

const PLAIN = plainSite({});

function bed(change: Partial<Extract<Work, { kind: "bed" }>> = {}): Work {
  return {
    ...{ kind: "bed", id: "bed", name: "Bed", at: [0, 0], bearing: 0, length: 6, width: 2 },
    ...{ height: 0.6, wall: 0, base: 100, filling: [] },
    ...change,
  };
}

const withBed = (change: Parameters<typeof bed>[0]): Job => ({ works: [bed(change)] });
const house = (base: number): Job => ({ works: [building(box(-3, -2, 3, 2), base)] });

/** Survey points beside those of the level ground, at the place of one of them. */
const resurveyed = (...heights: number[]): Job => {
  const more = heights.map((z, i) => ({ id: `again${i}`, x: 0, y: 0, z }));
  return { site: { survey: { points: [...PLAIN.survey.points, ...more] } } };
};
const surveyed = (more: Partial<Site["survey"]>, works: Work[] = []): Job => ({
  works,
  site: { survey: { ...PLAIN.survey, ...more } },
});

const probed = (...thickness: number[]): Job => ({
  ground: {
    layers: [
      { id: "top", name: "Topsoil", material: "topsoil" },
      { id: "clay", name: "Clay", material: "clay" },
    ],
    probes: thickness.map((thick, i) => ({ id: `t${i}`, x: 0, y: 0, thickness: [thick] })),
  },
});
const stripped = (top: number, putBack?: number): Job => ({
  works: [plainStrip(putBack === undefined ? {} : { putBack: { depth: putBack } })],
  ...probed(top),
});

/** Water met so deep below the ground at a hole whose floor lies 1 m below it. */
const wet = (water: number): Job => ({
  works: [holeOf(1)],
  ground: { ...allOf("clay"), probes: [{ id: "t", x: 0, y: 0, thickness: [], water }] },
});
const season = (water: number): Job => ({ works: [holeOf(1)], flow: { flotation: { water } } });

const benches: Tank["walls"] = { by: "benches", rise: 1, tread: 1 };
const benchedIn = (material: string): Job => ({
  works: [holeOf(2, { walls: benches })],
  ground: allOf(material),
});
const rockTyped = (rock: "stable" | "fractured"): Job => ({
  works: [holeOf(2)],
  ground: allOf("shelf-rock", { ground: "rock", rock, water: "dry", dips: "no" }),
});

const near = (limit: Partial<Limit>, tank: Work = holeOf(1)): Job => ({
  works: [tank],
  limits: [{ id: "limit", kind: "easement", name: "Easement", ...limit }],
});
/** A number of one's own for the federal 5 ft, 1.524 m, from which walls are held. */
const localDepth = (value: number): Job => ({ rules: [{ id: "protect-from", value }] });
/** Walls at 1 : 1, so that the hole's edge lies a metre beyond the body, at x = 2. */
const sloped = holeOf(1, { walls: { by: "run", run: 1 } });
const lot = (west: number): Partial<Limit> => ({
  ...{ kind: "lot-line", closed: true, path: box(west, -15, 15, 15) },
});

function drain(start: number, end: number): Work {
  const pipe: Pipe = {
    ...{ id: "pipe", name: "Pipe", service: "gravity", inside: 0.1, outside: 0.11 },
    ...{ material: "PVC", grade: { by: "inverts", start, end } },
  };
  return plainTrench({ pipes: [pipe] });
}

const pipeOf = (service: Pipe["service"]): Work => {
  const pipe: Pipe = {
    ...{ id: "pipe", name: "Pipe", service, inside: 0.05, outside: 0.06 },
    ...{ material: "PVC", grade: { by: "inverts", start: 99, end: 99.2 } },
  };
  return plainTrench({ pipes: [pipe] });
};
const tankAt = (x: number): Work => plainTank({ id: `at${x}`, at: [x, 0], base: 98.5 });

/** All that is dug for a pad heaped no higher than this. */
const heapedTo = (height: number): Job => ({
  works: [
    plainPad({ top: 98 }),
    { kind: "pile", id: "pile", name: "Pile", at: [10, 0], material: "native", height },
  ],
});

export const DUG: readonly Pair[] = [
  ["bed.hangs", withBed({ base: 100.11 }), withBed({ base: 100.09 })],
  ["bed.below-ground", withBed({ base: 99.89 }), withBed({ base: 99.91 })],
  ["building.below-ground", house(99.89), house(99.91)],
  [
    "bed.overfull",
    withBed({ filling: [{ material: "drain-sand", depth: 0.61 }] }),
    withBed({ filling: [{ material: "drain-sand", depth: 0.6 }] }),
  ],
  ["dig.above-ground", { works: [holeOf(-0.01)] }, { works: [holeOf(0.01)] }],
  [
    "dig.meets-structure",
    { works: [plainTank(), plainTank({ id: "second", at: [1.9, 0] })] },
    { works: [plainTank(), plainTank({ id: "second", at: [2.1, 0] })] },
  ],
  ["pile.off-survey", heapedTo(0.01), heapedTo(2)],
  ["strip.nothing", stripped(0), stripped(0.2)],
  ["strip.thin", stripped(0.2, 0.3), stripped(0.2, 0.1)],
  ["probe.two-logs", probed(0.2, 0.3), probed(0.2, 0.2)],
  ["survey.two-heights", resurveyed(100.03), resurveyed(100.01)],
  ["survey.welded", resurveyed(100.01), resurveyed()],
  [
    "survey.breaklines-cross",
    surveyed({
      breaklines: [
        ["p00", "p11"],
        ["p01", "p10"],
      ],
    }),
    surveyed({ breaklines: [["p00", "p11"]] }),
  ],
  [
    "survey.outside-boundary",
    surveyed({ boundary: box(-0.9, -5, 5, 5) }, [holeOf(1)]),
    surveyed({ boundary: box(-1.1, -5, 5, 5) }, [holeOf(1)]),
  ],
  [
    "survey.too-small",
    { works: [holeOf(1, { at: [19.1, 0] })] },
    { works: [holeOf(1, { at: [18.9, 0] })] },
  ],
  [
    "tank.out-of-ground",
    { works: [holeOf(1, { base: 99.51 })] },
    { works: [holeOf(1, { base: 99.5 })] },
  ],
  ["walls.no-benches", benchedIn("sand"), benchedIn("clay")],
  ["walls.stable-rock", rockTyped("stable"), rockTyped("fractured")],
  ["water.in-hole", wet(0.99), wet(1.01)],
  ["water.season", season(0.99), season(1.01)],
  ["limit.crossed", near({ path: lineAt(0.99) }), near({ path: lineAt(1.01) })],
  [
    "limit.too-near",
    near({ path: lineAt(3.98), setback: 3 }),
    near({ path: lineAt(4), setback: 3 }),
  ],
  [
    "limit.less-than-table",
    near({ at: [80, 0], kind: "well", setback: 14, setbackReplaces: true }),
    near({ at: [80, 0], kind: "well", setback: 16, setbackReplaces: true }),
  ],
  ["rule.asks-less", localDepth(1.6), localDepth(1.5)],
  ["limit.outside-lot", near(lot(1.01)), near(lot(0.99))],
  ["limit.hole-over", near({ path: lineAt(1.99) }, sloped), near({ path: lineAt(2.01) }, sloped)],
  [
    "limit.roots",
    near({ kind: "tree", at: [4, 0], radius: 3.01 }),
    near({ kind: "tree", at: [4, 0], radius: 2.99 }),
  ],
  [
    "land.flood",
    near({ kind: "flood-path", path: lineAt(1.99), width: 2 }),
    near({ kind: "flood-path", path: lineAt(2.01), width: 2 }),
  ],
  ["pipe.uphill", { works: [drain(98.9, 99)] }, { works: [drain(99, 98.8)] }],
  ["pipe.fall-too-small", { works: [drain(99, 98.9)] }, { works: [drain(99, 98.8)] }],
  ["pipe.fall-too-great", { works: [drain(99, 98.5)] }, { works: [drain(99, 98.6)] }],
  ["pipe.out-of-ground", { works: [drain(100.2, 100)] }, { works: [drain(99.2, 99)] }],
  ["lift.no-tank", { works: [pipeOf("pressure")] }, { works: [tankAt(-5.5), pipeOf("pressure")] }],
  ["power.pump", { works: [pipeOf("pressure")] }, { works: [pipeOf("gravity")] }],
];
