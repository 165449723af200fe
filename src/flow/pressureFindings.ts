import type { PipeRun } from "../dig/index.js";
import type { Finding, Scheme } from "../site/index.js";
import type { PressureParts } from "./pressureNetwork.js";
import type { DoseResult, PressureResult, PumpResult } from "./pressureTypes.js";
import { flowRule } from "./rules.js";
import type { Wording } from "./wording.js";

/** What a solved pressure system has to say, most telling first. */
export function pressureFindings(
  result: PressureResult,
  parts: PressureParts,
  scheme: Scheme,
  words: Wording,
): Finding[] {
  const pump = result.pumps.find((one) => one.id === result.pump);
  const say = (level: Finding["level"], code: string, text: string, source: string): Finding => ({
    level,
    code,
    where: result.tank,
    text,
    source,
  });
  return [
    ...pumpFindings(result, pump, words, say),
    ...speedFindings(result, scheme, words, say),
    ...evennessFindings(result, scheme, say),
    ...mainFindings(parts, result, scheme, words, say),
    ...(result.dose === null
      ? [
          say(
            "note",
            "dose.no-design-flow",
            `${result.name} has no design flow, so its doses and float levels are not known. Say how much comes in a day.`,
            "geometry",
          ),
        ]
      : doseFindings(result, result.dose, scheme, words, say)),
  ];
}

type Say = (level: Finding["level"], code: string, text: string, source: string) => Finding;

function pumpFindings(
  result: PressureResult,
  pump: PumpResult | undefined,
  words: Wording,
  say: Say,
): Finding[] {
  const wants = `${words.flow(result.wanted.flow.value)} at ${words.head(result.wanted.head.value)}`;
  if (pump === undefined || pump.outcome === "no-curve") {
    const why = pump === undefined ? "no pump is chosen" : `${pump.name}: ${pump.why}`;
    return [say("stop", "pump.no-curve", `${result.name}: ${why}.`, "geometry")];
  }
  const turn = betterPump(result, pump);
  if (pump.outcome === "no-flow") {
    const text = `${pump.name} cannot lift to the beds: its head at no flow is ${words.head(pump.curve[0]?.head ?? 0)}, and the lift alone is ${words.head(result.lift.value)}.${turn}`;
    return [say("stop", "pump.below-shut-off", text, pump.source)];
  }
  const findings: Finding[] = [];
  if (pump.outcome === "off-curve") {
    const text = `${pump.name} would run past the end of its curve, at ${words.flow(pump.flow)} or more. Throttle it, or use a pump whose curve reaches so far.${turn}`;
    findings.push(say("caution", "pump.off-curve", text, pump.source));
  }
  if (!pump.meets) {
    const text = `${pump.name} gives ${words.flow(pump.flow)} at ${words.head(pump.head)}; ${result.name} wants ${wants}, so the last holes get too little.${turn}`;
    findings.push(say("caution", "pump.too-weak", text, result.wanted.flow.source));
  }
  return findings;
}

function betterPump(result: PressureResult, pump: PumpResult): string {
  if (result.best === null || result.best === pump.id) return "";
  const best = result.pumps.find((one) => one.id === result.best);
  return best === undefined ? "" : ` Of the pumps listed ${best.name} would do.`;
}

function speedFindings(
  result: PressureResult,
  scheme: Scheme,
  words: Wording,
  say: Say,
): Finding[] {
  const speed = result.velocity.value;
  const slow = flowRule("main-slow", scheme);
  const fast = flowRule("main-fast", scheme);
  if (speed > 0 && speed < slow.value) {
    const text = `The water in the main of ${result.name} goes at ${words.velocity(speed)}; under ${words.velocity(slow.value)} solids may settle. A narrower main helps.`;
    return [say("note", "main.slow", text, slow.source)];
  }
  if (speed > fast.value) {
    const text = `The water in the main of ${result.name} goes at ${words.velocity(speed)}, over ${words.velocity(fast.value)}: stopped at once it adds ${words.head(result.surge.value)} of pressure. A wider main helps.`;
    return [say("caution", "main.fast", text, fast.source)];
  }
  return [];
}

function evennessFindings(result: PressureResult, scheme: Scheme, say: Say): Finding[] {
  const holes = flowRule("evenness", scheme);
  const beds = flowRule("evenness-beds", scheme);
  const percent = (share: number): string => `${(100 * share).toFixed(0)}%`;
  const uneven = result.branches
    .filter((branch) => branch.spread > holes.value + 1e-9)
    .map((branch) =>
      say(
        "caution",
        "laterals.uneven",
        `The holes of ${branch.name} differ by ${percent(branch.spread)}; ${percent(holes.value)} is the usual most. Wider laterals, smaller holes or more head make them even.`,
        holes.source,
      ),
    );
  if (result.branches.length > 1 && result.bedSpread > beds.value + 1e-9) {
    const text = `The beds of ${result.name} get their shares with a difference of ${percent(result.bedSpread)}; ${percent(beds.value)} is the usual most. The openings beside each valve would even them.`;
    uneven.push(say("caution", "beds.uneven", text, beds.source));
  }
  return uneven;
}

/** High places, low places, siphons, and freezing. */
function mainFindings(
  { main, system, branches }: PressureParts,
  result: PressureResult,
  scheme: Scheme,
  words: Wording,
  say: Say,
): Finding[] {
  const findings: Finding[] = [];
  const held = system.checkValve === true;
  const lowest = Math.min(...branches.map(({ elevation }) => elevation));
  const highWater = result.water.high ?? result.water.low;
  const along = main.flatMap((run) => run.stations.map((station) => ({ run, ...station })));
  const highest = along.reduce((a, b) => (b.invert > a.invert ? b : a));
  const end = along.at(-1)?.invert ?? highest.invert;
  if (highest.invert > Math.max(end, lowest) + NOTICED) {
    const text = `${highest.run.name} has a high place ${words.distance(highest.station)} from its start, ${words.length(highest.invert - end)} above its end: air gathers there. Fit an air release, or lay it to rise all the way.`;
    findings.push(say("caution", "main.air", text, "common practice, no source"));
  }
  if (lowest < highWater && highest.invert < highWater + NOTICED) {
    const text = `The beds of ${result.name} lie below the water in the tank, so it can go on draining by siphon after the pump stops. A vent at the top of the main or an anti-siphon hole stops that.`;
    findings.push(say("caution", "main.siphon", text, "common practice, no source"));
  }
  const low = held ? undefined : lowPlace(along);
  if (low !== undefined) {
    const text = `${low.run.name} has a low place ${words.distance(low.station)} from its start that stays full after each dose. A pressure pipe above frost has to drain: lay it to fall back to the tank all the way.${system.drainValve === true ? " Its drain valve empties it only when somebody opens it." : ""}`;
    findings.push(say("caution", "main.sags", text, "N.J.A.C. 7:9A-9.3"));
  }
  const frost = flowRule("frost", scheme);
  const stays = held || low !== undefined;
  const shallow = Math.min(...main.map((run) => run.cover.least));
  if (stays && shallow < frost.value) {
    const text = `The main of ${result.name} stands full under ${words.length(shallow)} of ground, and frost reaches ${words.length(frost.value)}. Lay it deeper, insulate it, or let it drain.`;
    findings.push(say("caution", "main.freezes", text, frost.source));
  }
  return findings;
}

/** m of height along a main that no one would notice. */
const NOTICED = 0.02;

function lowPlace(
  along: readonly (PipeRun["stations"][number] & { run: PipeRun })[],
): (typeof along)[number] | undefined {
  let [top, deepest] = [-Infinity, NOTICED];
  let found: (typeof along)[number] | undefined;
  for (const place of along) {
    top = Math.max(top, place.invert);
    if (top - place.invert <= deepest) continue;
    // Water stays only where the pipe rises again behind it.
    const after = along.slice(along.indexOf(place) + 1);
    if (!after.some((later) => later.invert > place.invert + NOTICED)) continue;
    [deepest, found] = [top - place.invert, place];
  }
  return found;
}

function doseFindings(
  result: PressureResult,
  { plan, volume }: DoseResult,
  scheme: Scheme,
  words: Wording,
  say: Say,
): Finding[] {
  const pipes = flowRule("dose-pipes", scheme);
  const fixed = flowRule("dose-least", scheme);
  const most = flowRule("dose-most", scheme);
  const findings: Finding[] = [];
  const least = Math.max(pipes.value * result.pipeVolume.value, fixed.value);
  const caution = (code: string, text: string, source: string): void => {
    findings.push(say("caution", code, text, source));
  };
  if (volume.value < least - 1e-9) {
    const text = `A dose of ${words.volume(volume.value)} is less than ${words.volume(least)} (${pipes.value} × the volume of the pipes, or ${words.volume(fixed.value)}), so the laterals do not fill evenly. Fewer, larger doses help.`;
    caution("dose.small", text, pipes.source);
  }
  if (plan.perDay < 1 / most.value - 1e-9) {
    const text = `${plan.perDay.toFixed(1)} doses a day are few: at most ${(100 * most.value).toFixed(0)}% of a day's flow in one is usual.`;
    caution("dose.large", text, most.source);
  }
  if (plan.on === null) {
    const text = `The chamber of ${result.name} is too small for one dose of ${words.volume(plan.drawn)} over the level where the pump stops.`;
    findings.push(say("stop", "chamber.no-room", text, "geometry"));
    return findings;
  }
  const doses = flowRule("chamber-doses", scheme);
  if (plan.holds < doses.value * volume.value - 1e-9) {
    const text = `The chamber of ${result.name} holds ${words.volume(plan.holds)} from floor to cover, less than ${doses.value} doses of ${words.volume(volume.value)}. A larger chamber or smaller doses help.`;
    caution("chamber.few-doses", text, doses.source);
  }
  if (plan.alarm === null || plan.full === null) {
    const text = `The chamber of ${result.name} has ${words.volume(plan.reserve)} free over its alarm, less than the reserve asked for. It holds ${plan.hoursWithoutPower.toFixed(0)} h of flow without power.`;
    caution("chamber.little-reserve", text, "common practice, no source");
  }
  if (plan.runTime === null) {
    const text = `The pump of ${result.name} gives no more than runs in, so it would never stop.`;
    findings.push(say("stop", "pump.outrun", text, "geometry"));
  }
  const intake = flowRule("intake", scheme);
  if (plan.off < intake.value - 1e-9) {
    const text = `The pump of ${result.name} stops with ${words.length(plan.off)} of water over the floor; its intake is wanted ${words.length(intake.value)} off the floor.`;
    caution("chamber.intake-low", text, intake.source);
  }
  return findings;
}
