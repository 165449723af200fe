/**
 * Run by tests/bench/tin.ts in a process of its own: `tinOnce.ts time|memory POINTS BREAKLINES`
 * prints one JSON object.
 */
import Delaunator from "delaunator";
import { buildTin } from "../../src/ground/tin.js";
import { randomSurvey } from "./tinSurvey.js";

const [what, points = "0", breaklines = "0", runs = "3"] = process.argv.slice(2);
const survey = randomSurvey(Number(points), Number(breaklines));

function build(): void {
  const built = buildTin(survey);
  if ("problem" in built) throw new Error(built.problem.text);
}

function timeOf(call: () => void): number {
  const start = performance.now();
  call();
  return performance.now() - start;
}

function median(times: number[]): number {
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
}

function compareTimes(): { ours_ms: number; vs_ms: number } {
  const coords = new Float64Array(2 * survey.points.length);
  survey.points.forEach(({ x, y }, i) => coords.set([x, y], 2 * i));
  const [ours, theirs]: [number[], number[]] = [[], []];
  // Turn and turn about, so that what else the machine does falls on both alike.
  for (let run = 0; run < Number(runs); run++) {
    theirs.push(timeOf(() => new Delaunator(coords)));
    ours.push(timeOf(build));
  }
  return { ours_ms: median(ours), vs_ms: median(theirs) };
}

const MB = 1024 * 1024;

function peakMemory(): { input_mb: number; peak_mb: number } {
  // What making up the survey has left behind is no part of it.
  globalThis.gc?.();
  const input_mb = process.memoryUsage().rss / MB;
  build();
  // The most that the process has ever held, the survey and Node itself included; maxRSS is kB.
  return { input_mb, peak_mb: process.resourceUsage().maxRSS / 1024 };
}

console.log(JSON.stringify(what === "memory" ? peakMemory() : compareTimes()));
