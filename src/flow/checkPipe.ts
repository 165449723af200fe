import type { PipeRun, PipeStation } from "../dig/index.js";
import type { Finding, Scheme } from "../site/index.js";
import { leastCoverFor, leastFallFor, mostFallFor } from "./fallRules.js";
import { FLOW_SETTINGS } from "./settings.js";
import { tankAt } from "./tankAt.js";
import type { Mend, PipeCheck, PipeVerdict, Rule } from "./types.js";
import { flattestStretch, furthestStretch } from "./stretches.js";
import type { Wording } from "./wording.js";

/** What one check has to say about a pipe: how bad, in words, and what would mend it. */
interface Trouble {
  verdict: PipeVerdict;
  finding: Finding;
  mends: Mend[];
}

/**
 * Checks one pipe: least and most fall (gravity only) and cover. `words` prints in the site's
 * units. The verdict is the worst trouble's; every trouble is a finding.
 */
export function checkPipe(
  run: PipeRun,
  scheme: Scheme,
  words: Wording,
): { check: PipeCheck; findings: Finding[] } {
  const gravity = run.service === "gravity";
  const leastFall = gravity ? leastFallFor(run.inside, scheme) : null;
  const mostFall = gravity ? mostFallFor(scheme) : null;
  const leastCover = leastCoverFor(scheme, run.service);
  const troubles: Trouble[] = [];
  if (leastFall !== null) {
    const whole = tooLittleFall(run, leastFall, leastCover, scheme, words);
    troubles.push(...(whole.length > 0 ? whole : unevenFall(run, leastFall, words)));
  }
  troubles.push(...tooLittleCover(run, leastCover, words));
  if (mostFall !== null) troubles.push(...tooMuchFall(run, mostFall, words));
  const worst = troubles[0];
  const check: PipeCheck = {
    id: run.id,
    name: run.name,
    trench: run.trench,
    service: run.service,
    inside: run.inside,
    length: run.length,
    fall: fallOf(run),
    drop: run.drop,
    flattest: flattestStretch(run),
    leastFall,
    mostFall,
    leastCover,
    cover: run.cover,
    verdict: worst?.verdict ?? "runs",
    mends: worst?.mends ?? [],
    stations: run.stations,
  };
  const findings = troubles.map((trouble) => trouble.finding);
  return { check, findings: [...findings, ...coverUnknown(run)] };
}

/** drop ÷ length (NaN where the dig could not find the inverts), and level for a path without length (two clicks on one place). */
function fallOf(run: PipeRun): number {
  return run.length > 0 ? run.drop / run.length : 0;
}

function tooLittleFall(
  run: PipeRun,
  least: Rule,
  leastCover: Rule,
  scheme: Scheme,
  words: Wording,
): Trouble[] {
  if (!Number.isFinite(run.drop)) return [];
  const uphill = run.drop <= 0;
  const short = least.value * run.length - run.drop;
  if (!uphill && short <= FLOW_SETTINGS.dropTolerance) return [];
  const mends = fallMends(run, least, short, leastCover, scheme, words);
  const size = words.pipeSize(run.inside);
  const needs = `${size} pipe usually needs at least ${words.share(least.value)}`;
  const how = uphill ? uphillPhrase(run, words) : `falls ${words.share(fallOf(run))}`;
  const otherwise = uphill ? " If there is no room for that, plan a pump." : "";
  return [
    {
      verdict: uphill ? "uphill" : "too flat",
      mends,
      finding: {
        level: uphill ? "stop" : "caution",
        code: uphill ? "pipe.uphill" : "pipe.fall-too-small",
        where: run.id,
        text: `${run.name} ${how}; ${needs}.${mendSentence(mends)}${otherwise} Check your local code.`,
        source: least.source,
      },
    },
  ];
}

/** The pipe as a whole falls enough, but it is laid by cover and a stretch of it does not. */
function unevenFall(run: PipeRun, least: Rule, words: Wording): Trouble[] {
  const flat = furthestStretch(run, least.value, 1);
  if (!(flat.off > FLOW_SETTINGS.dropTolerance)) return [];
  const by = run.stations.reduce((most, { station, invert }) => {
    const straight = (run.stations[0]?.invert ?? Number.NaN) - fallOf(run) * station;
    return Math.max(most, Math.abs(invert - straight));
  }, 0);
  const mend: Mend = {
    kind: "even-grade",
    by,
    text: `give it one even grade of ${words.share(fallOf(run))} from end to end, which moves it by up to ${words.atLeast(by)}`,
  };
  const stretch = `between ${words.distance(flat.from)} and ${words.distance(flat.to)} from its start`;
  const how = flat.fall <= 0 ? "does not fall" : `falls only ${words.share(flat.fall)}`;
  return [
    {
      verdict: "too flat",
      mends: [mend],
      finding: {
        level: "caution",
        code: "pipe.stretch-too-flat",
        where: run.id,
        text: `${run.name} ${how} ${stretch}; ${words.pipeSize(run.inside)} pipe usually needs at least ${words.share(least.value)} all the way.${mendSentence([mend])} Check your local code.`,
        source: least.source,
      },
    },
  ];
}

function uphillPhrase(run: PipeRun, words: Wording): string {
  if (-run.drop < FLOW_SETTINGS.dropTolerance) return "is level";
  return `rises ${words.length(-run.drop)} towards its far end`;
}

/**
 * Lower the far end or raise the near end by the drop that is missing (both the same, exactly), or
 * shorten to the length at which the present drop is enough: drop ÷ least fall. Raising comes last
 * when it would leave too little ground over the near end.
 */
function fallMends(
  run: PipeRun,
  least: Rule,
  short: number,
  leastCover: Rule,
  scheme: Scheme,
  words: Wording,
): Mend[] {
  if (!(short > 0)) return [];
  const amount = words.atLeast(short);
  const first = run.stations[0];
  const last = run.stations.at(-1);
  const lower: Mend = {
    kind: "lower-end",
    by: short,
    text: `lower ${endName(last, scheme, "inlet", "far")} ${amount}`,
  };
  const raised = first === undefined ? Number.NaN : coverAt(first, run) - short;
  const thin = raised < leastCover.value;
  const over =
    raised > 0
      ? `, which leaves ${words.length(raised)} of ground over it`
      : ", which brings it out of the ground";
  const raise: Mend = {
    kind: "raise-start",
    by: short,
    text: `raise ${endName(first, scheme, "outlet", "near")} ${amount}${thin ? over : ""}`,
  };
  const shorten = shortenMend(run, least, words);
  return thin ? [lower, ...shorten, raise] : [lower, raise, ...shorten];
}

function shortenMend(run: PipeRun, least: Rule, words: Wording): Mend[] {
  if (!(run.drop > 0 && least.value > 0)) return [];
  const enough = run.drop / least.value;
  return [
    {
      kind: "shorten",
      by: run.length - enough,
      text: `shorten the run from ${words.distance(run.length)} to ${words.atMost(enough)}`,
    },
  ];
}

function endName(
  station: PipeStation | undefined,
  scheme: Scheme,
  side: "inlet" | "outlet",
  which: "near" | "far",
): string {
  const tank = station === undefined ? undefined : tankAt(station.at, scheme);
  return tank === undefined ? `the ${which} end` : `the ${side} of ${tank.name}`;
}

function tooLittleCover(run: PipeRun, least: Rule, words: Wording): Trouble[] {
  const short = least.value - run.cover.least;
  if (!Number.isFinite(short) || short <= FLOW_SETTINGS.coverTolerance) return [];
  const amount = words.atLeast(short);
  const place = thinnest(run);
  const where = place === undefined ? "" : `, ${words.distance(place.station)} from its start`;
  const ground =
    run.cover.least > 0
      ? `has only ${words.length(run.cover.least)} of ground over it`
      : `stands ${words.length(-run.cover.least)} out of the ground`;
  const lay: Mend = { kind: "lay-deeper", by: short, text: `lay it ${amount} deeper` };
  return [
    {
      verdict: "shallow",
      mends: [lay],
      finding: {
        level: "caution",
        code: run.cover.least > 0 ? "pipe.cover-too-small" : "pipe.out-of-ground",
        where: run.id,
        text:
          `${run.name} ${ground}${where}; ${words.length(least.value)} is wanted. ` +
          `Lay it ${amount} deeper or bring in fill over it. ` +
          "Frost and wheels may ask for more: check your local code.",
        source: least.source,
      },
    },
  ];
}

/** Ground above the pipe's top outside, m: the top is the invert plus bore and one wall. */
function coverAt(station: PipeStation, run: PipeRun): number {
  return station.ground - station.invert - (run.outside + run.inside) / 2;
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
  const whole = run.drop - most.value * run.length;
  const mends: Mend[] =
    whole > FLOW_SETTINGS.dropTolerance
      ? [{ kind: "raise-end", by: whole, text: `raise the far end ${words.atLeast(whole)}` }]
      : [];
  return [
    {
      verdict: "too steep",
      mends,
      finding: {
        level: "note",
        code: "pipe.fall-too-great",
        where: run.id,
        text:
          `${run.name} falls ${words.share(steep.fall)} at its steepest; many people stay below ${words.share(most.value)}, or go to 45° or steeper. ` +
          "No rule was found for this: check your local code.",
        source: most.source,
      },
    },
  ];
}

/** " Lower the far end 0.21 m, raise …, or shorten …." with a capital; empty for no mends. */
function mendSentence(mends: readonly Mend[]): string {
  const texts = mends.map((mend) => mend.text);
  const last = texts.pop();
  if (last === undefined) return "";
  const all = texts.length === 0 ? last : `${texts.join(", ")}, or ${last}`;
  return ` ${all.charAt(0).toUpperCase()}${all.slice(1)}.`;
}
