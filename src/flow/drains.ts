import type { PipeRun, WorkQuantities } from "../dig/index.js";
import { fullFlow, partFull } from "../hydraulics/index.js";
import { materialsOf, type Finding, type Quantity, type Scheme, type Site } from "../site/index.js";
import { isFieldPipe } from "./fieldPipes.js";
import { flowRule } from "./rules.js";
import type { Wording } from "./wording.js";

/** What a gravity pipe carries, and how it does so at the design peak. */
export interface Carries {
  /** Running full at its flattest stretch: m³/s and m/s. */
  full: Quantity;
  velocity: Quantity;
  /** At the peak of the design flow; null where no design flow is given. */
  peak: { flow: number; depth: number; depthRatio: number; velocity: number; over: boolean } | null;
}

/** Where two pipes' paths cross in plan. */
export interface Crossing {
  /** Id of the other pipe, and its name. */
  pipe: string;
  name: string;
  /** m along this pipe. */
  station: number;
  /** m between the upper one's underside and the lower one's top; negative when they meet. */
  clear: number;
  /** Whether this pipe is the upper one. */
  above: boolean;
}

/** Capacity of a drain (not of a field's pipe, which is not asked to carry) by Manning's formula on the least fall that it has anywhere. */
export function carriesOf(
  run: PipeRun,
  flattest: number,
  scheme: Scheme,
  daily: number | null,
): Carries | null {
  if (run.service !== "gravity" || isFieldPipe(run, scheme) || !(flattest > 0)) return null;
  const n = flowRule("manning", scheme);
  const full = fullFlow(run.inside, flattest, n.value);
  const inputs = [
    { name: "bore", value: run.inside, unit: "m" },
    { name: "least fall on the way", value: flattest, unit: "" },
    { name: "n", value: n.value, unit: "" },
  ];
  const formula =
    "R^(2/3) √S ÷ n in metres and seconds (× 1.486 in feet), with R a quarter of the bore and S the fall";
  const peakFlow =
    daily === null ? null : daily * (scheme.flow?.peak ?? flowRule("peak", scheme).value);
  return {
    full: {
      value: full.flow,
      unit: "m³/s",
      formula: `${formula}, × area`,
      inputs,
      source: `Manning (1891); n: ${n.source}`,
    },
    velocity: {
      value: full.velocity,
      unit: "m/s",
      formula,
      inputs,
      source: `Manning (1891); n: ${n.source}`,
    },
    peak:
      peakFlow === null
        ? null
        : { flow: peakFlow, ...partOf(peakFlow, run.inside, flattest, n.value) },
  };
}

function partOf(
  flow: number,
  inside: number,
  fall: number,
  n: number,
): Omit<NonNullable<Carries["peak"]>, "flow"> {
  const { depth, depthRatio, velocity, over } = partFull(flow, inside, fall, n);
  return { depth, depthRatio, velocity, over };
}

/** What capacity, speed, depth in the ground and cleanouts have to say about a drain. */
export function drainFindings(
  run: PipeRun,
  carries: Carries | null,
  scheme: Scheme,
  words: Wording,
): Finding[] {
  if (run.service !== "gravity") return [];
  const findings: Finding[] = [];
  const say = (code: string, level: Finding["level"], text: string, source: string): void => {
    findings.push({ level, code, where: run.id, text, source });
  };
  const slow = flowRule("least-velocity", scheme);
  // The code's least falls give small pipes less than this speed: said only to who sizes by flow.
  if (carries !== null && carries.peak !== null && carries.velocity.value < slow.value) {
    say(
      "drain.slow",
      "note",
      `${run.name} full would run at ${words.velocity(carries.velocity.value)}, and ${words.velocity(slow.value)} is wanted so that solids move. More fall helps.`,
      slow.source,
    );
  }
  const fast = flowRule("most-velocity", scheme);
  if (carries !== null && carries.velocity.value > fast.value) {
    say(
      "drain.fast",
      "note",
      `${run.name} full would run at ${words.velocity(carries.velocity.value)} even where it is flattest; many people stay below ${words.velocity(fast.value)}.`,
      fast.source,
    );
  }
  if (carries?.peak?.over === true) {
    say(
      "drain.too-small",
      "caution",
      `${run.name} carries ${words.flow(carries.full.value)} full; the design peak is ${words.flow(carries.peak.flow)}. A larger pipe or more fall is wanted.`,
      carries.full.source,
    );
  }
  const most = flowRule("most-cover", scheme);
  if (run.cover.most > most.value) {
    say(
      "drain.deep",
      "caution",
      `${run.name} lies under ${words.length(run.cover.most)} of ground at its deepest; over ${words.length(most.value)} ask the pipe's maker and mind the trench's depth.`,
      most.source,
    );
  }
  findings.push(...cleanoutFindings(run, scheme, words));
  return findings;
}

/** Cleanouts are asked of drains that start at a building; places count from the path's start. */
function cleanoutFindings(run: PipeRun, scheme: Scheme, words: Wording): Finding[] {
  const pipe = scheme.works
    .flatMap((work) => (work.kind === "trench" ? work.pipes : []))
    .find((each) => each.id === run.id);
  const given = pipe?.cleanouts;
  if (given === undefined) return [];
  const apart = flowRule("cleanout-apart", scheme);
  const bend = flowRule("cleanout-bend", scheme);
  const places = [0, ...[...given].sort((a, b) => a - b), run.length];
  const findings: Finding[] = [];
  const gap = Math.max(...places.slice(1).map((place, i) => place - places[i]!));
  if (gap > apart.value + 1e-9) {
    findings.push({
      level: "caution",
      code: "drain.cleanouts-apart",
      where: run.id,
      text: `${run.name} has ${words.distance(gap)} without a cleanout; at most ${words.distance(apart.value)} is usual.`,
      source: apart.source,
    });
  }
  for (const { station, angle } of bendsOf(run)) {
    const near = given.some((place) => Math.abs(place - station) <= 1);
    if (angle <= bend.value + 1e-6 || near) continue;
    findings.push({
      level: "note",
      code: "drain.bend-without-cleanout",
      where: run.id,
      text: `${run.name} turns ${Math.round(angle)}° at ${words.distance(station)} with no cleanout by it.`,
      source: bend.source,
    });
  }
  return findings;
}

/** Turns of a path in plan, degrees, with their stations. */
export function bendsOf(run: PipeRun): { station: number; angle: number }[] {
  const places = run.stations;
  return places.flatMap((here, i) => {
    const before = places[i - 1];
    const after = places[i + 1];
    if (before === undefined || after === undefined) return [];
    const [ax, ay] = [here.at[0] - before.at[0], here.at[1] - before.at[1]];
    const [bx, by] = [after.at[0] - here.at[0], after.at[1] - here.at[1]];
    const angle = (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
    return angle > 0.5 ? [{ station: here.station, angle }] : [];
  });
}

/** Every place where a pipe's path crosses another's, from a different trench, in plan. */
export function crossingsOf(run: PipeRun, runs: readonly PipeRun[]): Crossing[] {
  return runs
    .filter((other) => other.trench !== run.trench)
    .flatMap((other) => pairs(run, other))
    .sort((a, b) => a.station - b.station);
}

function pairs(run: PipeRun, other: PipeRun): Crossing[] {
  const found: Crossing[] = [];
  for (let i = 1; i < run.stations.length; i += 1) {
    for (let k = 1; k < other.stations.length; k += 1) {
      const [p, q] = [run.stations[i - 1]!, run.stations[i]!];
      const [r, s] = [other.stations[k - 1]!, other.stations[k]!];
      const meet = meeting(p.at, q.at, r.at, s.at);
      if (meet === null) continue;
      const mine = p.invert + meet.t * (q.invert - p.invert);
      const theirs = r.invert + meet.u * (s.invert - r.invert);
      const above = mine >= theirs;
      const [upper, lower] = above ? [run, other] : [other, run];
      const clear = Math.abs(mine - theirs) - wallOf(upper) - lower.inside - wallOf(lower);
      const station = p.station + meet.t * (q.station - p.station);
      found.push({ pipe: other.id, name: other.name, station, clear, above });
    }
  }
  return found;
}

const wallOf = (run: PipeRun): number => (run.outside - run.inside) / 2;

type Place = readonly [number, number];

/** Where pq and rs cross inside both, as shares along each; null when they do not. */
function meeting(p: Place, q: Place, r: Place, s: Place): { t: number; u: number } | null {
  const [ax, ay] = [q[0] - p[0], q[1] - p[1]];
  const [bx, by] = [s[0] - r[0], s[1] - r[1]];
  const turn = ax * by - ay * bx;
  if (turn === 0) return null;
  const [cx, cy] = [r[0] - p[0], r[1] - p[1]];
  const t = (cx * by - cy * bx) / turn;
  const u = (cx * ay - cy * ax) / turn;
  return t > 0 && t < 1 && u > 0 && u < 1 ? { t, u } : null;
}

/** Pipes that would run through each other; said once, at the lower of a pair. */
export function crossingFindings(
  run: PipeRun,
  crossings: readonly Crossing[],
  words: Wording,
): Finding[] {
  return crossings
    .filter((one) => !one.above && one.clear < 0)
    .map((one) => ({
      level: "caution",
      code: "pipe.crosses",
      where: run.id,
      text: `${run.name} and ${one.name} cross ${words.distance(one.station)} from the start of ${run.name} and would run through each other by ${words.length(-one.clear)}. Lay one deeper.`,
      source: "geometry",
    }));
}

/** Share of what a pipe's trench cuts that is rock, 0 to 1; null where its trench cuts nothing. */
export function rockShare(
  run: PipeRun,
  works: readonly WorkQuantities[],
  site: Site,
): number | null {
  const cut = works.find((work) => work.id === run.trench)?.cut;
  if (cut === undefined) return null;
  const materials = materialsOf(site);
  let [all, rock] = [0, 0];
  for (const [id, volume] of Object.entries(cut)) {
    all += volume;
    const kind = materials.get(id)?.kind;
    if (kind === "rock" || kind === "rippable") rock += volume;
  }
  return all > 0 ? rock / all : null;
}
