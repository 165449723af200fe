import type { PipeRun, PipeStation } from "../dig/index.js";
import type { Finding, Locality, Scheme } from "../site/index.js";
import { FIELD_FALL, fieldRises, isFieldPipe } from "./fieldPipes.js";
import { leastCoverFor, leastFallFor, mostFallFor } from "./fallRules.js";
import { mendsFor } from "./mends.js";
import { looseEnd, type LooseEnd } from "./pipeEnds.js";
import { coverAt, isOff, type Asked } from "./settle.js";
import { FLOW_SETTINGS } from "./settings.js";
import { flattestStretch, furthestStretch } from "./stretches.js";
import { placeOf } from "./tankJoints.js";
import type { Rule } from "./rule.js";
import type { Mend, OutletJoint, PipeCheck, PipeVerdict, TankJoint } from "./types.js";
import type { Wording } from "./wording.js";

/** What one check has to say about a pipe. */
interface Trouble {
  verdict: PipeVerdict;
  finding: Finding;
  /** What stands after the mends in the finding's text, such as where else to look. */
  after?: string;
}

/** A pipe's check but for what it carries and crosses. */
export type GradeCheck = Omit<PipeCheck, "carries" | "bends" | "crossings" | "rock">;

/** The rest of the scheme, as far as it bears on a pipe. */
export interface Surroundings {
  /** Every pipe of the scheme, and every joint at a tank and at an outlet of a building. */
  runs: readonly PipeRun[];
  joints: readonly TankJoint[];
  outlets: readonly OutletJoint[];
  scheme: Scheme;
  /** Whose local numbers hold. */
  site: Locality;
  words: Wording;
}

/**
 * Checks one pipe: least and most fall, its ends and joints (gravity only), and cover. The verdict
 * is the worst trouble's; every trouble is a finding, and the worst one's text ends with the mends,
 * which look at fall, cover and joints together.
 */
export function checkPipe(
  run: PipeRun,
  around: Surroundings,
): { check: GradeCheck; findings: Finding[] } {
  const { runs, joints, outlets, scheme, words } = around;
  const field = isFieldPipe(run, scheme);
  const drain = run.service === "gravity" && !field;
  const asked: Asked = {
    leastFall: drain ? leastFallFor(run.inside, scheme) : field ? FIELD_FALL : null,
    mostFall: drain ? mostFallFor(scheme) : null,
    leastCover: leastCoverFor(scheme, run, around.site),
    joints: [...joints, ...outlets].filter((joint) => joint.pipe === run.id),
  };
  const loose = looseEnd(run, runs, scheme);
  const grade = gradeTroubles(run, asked, scheme, words);
  const mends = mendsFor({ run, asked, runs, joints, scheme, words });
  const worst = grade[0];
  // A path without length (two clicks on one place) has no grade to mend.
  if (worst !== undefined && run.length > 0) sayMends(worst, mends);
  for (const { finding, after } of grade) finding.text += after ?? "";
  const troubles = [...grade, ...looseTroubles(run, loose, scheme, words)].sort(
    (a, b) => WORST_FIRST.indexOf(a.verdict) - WORST_FIRST.indexOf(b.verdict),
  );
  const check: GradeCheck = {
    id: run.id,
    name: run.name,
    trench: run.trench,
    service: run.service,
    inside: run.inside,
    length: run.length,
    fall: fallOf(run),
    drop: run.drop,
    flattest: flattestStretch(run),
    field,
    leastFall: field ? null : asked.leastFall,
    mostFall: asked.mostFall,
    leastCover: asked.leastCover,
    cover: run.cover,
    verdict: troubles[0]?.verdict ?? "runs",
    mends: [...mends, ...reachMend(loose, words)],
    stations: run.stations,
  };
  const findings = troubles.map((trouble) => trouble.finding);
  return { check, findings: [...findings, ...coverUnknown(run)] };
}

const WORST_FIRST: readonly PipeVerdict[] = [
  "uphill",
  "too flat",
  "ends at nothing",
  "starts at nothing",
  "misses its tank",
  "misses its outlet",
  "shallow",
  "too steep",
  "runs",
];

/** All that the inverts decide, worst first. */
function gradeTroubles(run: PipeRun, asked: Asked, scheme: Scheme, words: Wording): Trouble[] {
  const { leastFall, mostFall, leastCover } = asked;
  const troubles: Trouble[] = [];
  const rises = isFieldPipe(run, scheme) ? fieldRises(run, words) : undefined;
  if (rises !== undefined) troubles.push({ verdict: "uphill", finding: rises });
  if (leastFall !== null && !isFieldPipe(run, scheme)) {
    const whole = tooLittleFall(run, leastFall, words);
    troubles.push(...(whole.length > 0 ? whole : unevenFall(run, leastFall, words)));
  }
  troubles.push(...asked.joints.flatMap((joint) => misfit(run, joint, scheme, words)));
  troubles.push(...tooLittleCover(run, leastCover, words));
  if (mostFall !== null) troubles.push(...tooMuchFall(run, mostFall, words));
  return troubles;
}

/** Adds to the worst finding what mends the pipe, or says that no single change does. */
function sayMends({ finding, verdict }: Trouble, mends: readonly Mend[]): void {
  if (mends.length === 0) {
    // Too much fall is only a note: no rule forbids it.
    if (verdict === "too steep") return;
    finding.text += " No change of its inverts alone mends this without breaking another check.";
  } else if (mends.every((mend) => needsBoth(mend))) {
    finding.text += ` No single change mends this: ${alternatives(mends)}.`;
  } else finding.text += ` ${capital(alternatives(mends))}.`;
}

/** Whether a mend moves the two ends each by its own amount. */
function needsBoth({ move }: Mend): boolean {
  if (move === undefined || move.start === 0 || move.end === 0) return false;
  return Math.abs(move.start - move.end) > FLOW_SETTINGS.dropTolerance;
}

function alternatives(mends: readonly Mend[]): string {
  const texts = mends.map((mend) => mend.text);
  const last = texts.pop() ?? "";
  return texts.length === 0 ? last : `${texts.join(", ")}, or ${last}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function looseTroubles(
  run: PipeRun,
  loose: LooseEnd | undefined,
  scheme: Scheme,
  words: Wording,
): Trouble[] {
  if (loose === undefined) return [];
  const { which, near } = loose;
  const away = near === undefined ? "" : `, ${words.distance(near.away)} from ${near.tank.name}`;
  const what = {
    end: `${run.name} ends at no tank, bed or other pipe${away}.`,
    start: `${run.name} starts at no building, tank or other pipe${away}.`,
    both: `${run.name} joins nothing: it neither starts nor ends at a building, tank, bed or other pipe.`,
  }[which];
  const side = which === "start" ? "Start" : "Carry";
  const turn =
    near === undefined
      ? "Carry its path to what it should join."
      : `${side} its path ${which === "start" ? "at" : "on to"} ${near.tank.name}, or bring the tank to it.`;
  return [
    {
      verdict: which === "start" ? "starts at nothing" : "ends at nothing",
      finding: {
        level: which === "both" ? "note" : "caution",
        code: which === "start" ? "pipe.starts-at-nothing" : "pipe.ends-at-nothing",
        where: run.id,
        text: `${what} ${turn}`,
        source: "geometry",
      },
    },
  ];
}

function reachMend(loose: LooseEnd | undefined, words: Wording): Mend[] {
  if (loose?.near === undefined) return [];
  const { tank, away } = loose.near;
  const text = `${loose.which === "start" ? "start its path at" : "carry its path on to"} ${tank.name}, ${words.distance(away)} away`;
  return [{ kind: "reach-tank", by: away, text }];
}

/** A pipe's end that is further above or below its tank's or outlet's invert than the tolerance. */
function misfit(
  run: PipeRun,
  joint: TankJoint | OutletJoint,
  scheme: Scheme,
  words: Wording,
): Trouble[] {
  if (!isOff(joint.off)) return [];
  const does = joint.side === "inlet" ? "ends" : "starts";
  const where = joint.off > 0 ? "above" : "below";
  const amount = words.length(Math.abs(joint.off));
  const says = `${run.name} ${does} ${amount} ${where} ${placeOf(joint, scheme)}`;
  const finding = { level: "caution", where: run.id, source: "geometry" } as const;
  if ("building" in joint) {
    const so = joint.off > 0 ? ", so water would stand there" : "";
    const code = `pipe.starts-${where}`;
    return [{ verdict: "misses its outlet", finding: { ...finding, code, text: `${says}${so}.` } }];
  }
  const code = `pipe.misses-${joint.side}`;
  return [{ verdict: "misses its tank", finding: { ...finding, code, text: `${says}.` } }];
}

/** drop ÷ length (NaN where the dig could not find the inverts), and level for a path without length (two clicks on one place). */
function fallOf(run: PipeRun): number {
  return run.length > 0 ? run.drop / run.length : 0;
}

function tooLittleFall(run: PipeRun, least: Rule, words: Wording): Trouble[] {
  if (!Number.isFinite(run.drop)) return [];
  const uphill = run.drop <= 0;
  const short = least.value * run.length - run.drop;
  if (!uphill && short <= FLOW_SETTINGS.dropTolerance) return [];
  const size = words.pipeSize(run.inside);
  const needs = `${size} pipe usually needs at least ${words.share(least.value)}`;
  const how = uphill ? uphillPhrase(run, words) : `falls ${words.share(fallOf(run))}`;
  return [
    {
      verdict: uphill ? "uphill" : "too flat",
      after: `${uphill ? " If there is no room for that, plan a pump." : ""} Check your local code.`,
      finding: {
        level: uphill ? "stop" : "caution",
        code: uphill ? "pipe.uphill" : "pipe.fall-too-small",
        where: run.id,
        text: `${run.name} ${how}; ${needs}.`,
        source: least.source,
      },
    },
  ];
}

/** The pipe as a whole falls enough, but it is laid by cover and a stretch of it does not. */
function unevenFall(run: PipeRun, least: Rule, words: Wording): Trouble[] {
  const flat = furthestStretch(run, least.value, 1);
  if (!(flat.off > FLOW_SETTINGS.dropTolerance)) return [];
  const stretch = `between ${words.distance(flat.from)} and ${words.distance(flat.to)} from its start`;
  const how = flat.fall <= 0 ? "does not fall" : `falls only ${words.share(flat.fall)}`;
  return [
    {
      verdict: "too flat",
      after: " Check your local code.",
      finding: {
        level: "caution",
        code: "pipe.stretch-too-flat",
        where: run.id,
        text: `${run.name} ${how} ${stretch}; ${words.pipeSize(run.inside)} pipe usually needs at least ${words.share(least.value)} all the way.`,
        source: least.source,
      },
    },
  ];
}

function uphillPhrase(run: PipeRun, words: Wording): string {
  if (-run.drop < FLOW_SETTINGS.dropTolerance) return "is level";
  return `rises ${words.length(-run.drop)} towards its far end`;
}

function tooLittleCover(run: PipeRun, least: Rule, words: Wording): Trouble[] {
  const short = least.value - run.cover.least;
  if (!Number.isFinite(short) || short <= FLOW_SETTINGS.coverTolerance) return [];
  const place = thinnest(run);
  const where = place === undefined ? "" : `, ${words.distance(place.station)} from its start`;
  const ground =
    run.cover.least > 0
      ? `has only ${words.length(run.cover.least)} of ground over it`
      : `stands ${words.length(-run.cover.least)} out of the ground`;
  return [
    {
      verdict: "shallow",
      after:
        " More fill over it helps too. Frost and wheels may ask for more: check your local code.",
      finding: {
        level: "caution",
        code: run.cover.least > 0 ? "pipe.cover-too-small" : "pipe.out-of-ground",
        where: run.id,
        ...(place !== undefined && { at: place.at }),
        text: `${run.name} ${ground}${where}; ${words.length(least.value)} is wanted.`,
        source: least.source,
      },
    },
  ];
}

function thinnest(run: PipeRun): PipeStation | undefined {
  let best: PipeStation | undefined;
  for (const station of run.stations) {
    if (Number.isNaN(station.ground)) continue;
    if (best === undefined || coverAt(station, run) < coverAt(best, run)) best = station;
  }
  return best;
}

/** Not for a part of the pipe (it may lie in a tank, and the dig speaks of the survey's edge). */
function coverUnknown(run: PipeRun): Finding[] {
  if (Number.isFinite(run.cover.least) && Number.isFinite(run.drop)) return [];
  return [
    {
      level: "caution",
      code: "pipe.cover-unknown",
      where: run.id,
      text: `No surveyed ground lies over ${run.name}, so its cover is not known. Survey more points along it or move it inside.`,
      source: "geometry",
    },
  ];
}

function tooMuchFall(run: PipeRun, most: Rule, words: Wording): Trouble[] {
  const steep = furthestStretch(run, most.value, -1);
  if (!(steep.off > FLOW_SETTINGS.dropTolerance)) return [];
  return [
    {
      verdict: "too steep",
      after: " No rule was found for this: check your local code.",
      finding: {
        level: "note",
        code: "pipe.fall-too-great",
        where: run.id,
        text: `${run.name} falls ${words.share(steep.fall)} at its steepest; many people stay below ${words.share(most.value)}, or go to 45° or steeper.`,
        source: most.source,
      },
    },
  ];
}
