/** Reads, joins and works on large surveys away from the page. It holds one survey at a time. */
import {
  estimate,
  makeGround,
  makePicture,
  stagePatch,
  takeGround,
  type GroundAhead,
} from "../estimate/index.js";
import { readSite, type Site } from "../site/index.js";
import { pointsOf, withoutPoints } from "./groundTalk.js";
import type { Answer, Ask, GroundReady, JobStep, WorkAsk, WorkDone } from "./groundTalk.js";

/** Points handed over at once: what the page takes up in about a fifth of a long task. */
const CHUNK = 4000;

/** Shares of a whole job at which its steps begin. */
const BEGINS: Readonly<Record<JobStep, number>> = { reading: 0, joining: 0.3, drawing: 0.7 };
const ENDS: Readonly<Record<JobStep, number>> = { reading: 0.3, joining: 0.7, drawing: 1 };

let held: Site | null = null;
let layersTold: Site["ground"] | null = null;

function post(answer: Answer, transfer: ArrayBuffer[] = []): void {
  self.postMessage(answer, { transfer });
}

function tell(step: JobStep, share: number, points?: number): void {
  const whole = BEGINS[step] + share * (ENDS[step] - BEGINS[step]);
  post({ step, share: whole, ...(points === undefined ? {} : { points }) });
}

self.addEventListener("message", ({ data: ask }: MessageEvent<Ask>) => {
  answer(ask).catch((fault: unknown) => {
    post({ fault: fault instanceof Error ? fault.message : String(fault) });
  });
});

async function answer(ask: Ask): Promise<void> {
  switch (ask.ask) {
    case "read":
      await read(ask.text, ask.points);
      return;
    case "hold":
      hold(
        { ...ask.site, survey: { ...ask.site.survey, points: pointsOf(ask.columns) } },
        ask.ahead,
      );
      return;
    case "work":
      work(ask);
  }
}

async function read(text: string, points: Blob | null): Promise<void> {
  tell("reading", 0);
  const checked = readSite(points === null ? text : await joined(text, points));
  if (!checked.ok) {
    post({ problems: checked.problems });
    return;
  }
  const site = checked.value;
  tell("reading", 0.7, site.survey.points.length);
  post({ read: withoutPoints(site), kept: new Blob([JSON.stringify(site.survey.points)]) });
  for (let from = 0; from < site.survey.points.length; from += CHUNK) {
    post({ points: site.survey.points.slice(from, from + CHUNK) });
  }
  tell("reading", 1);
  hold(site, null);
}

/** The whole text of a file that was kept in two parts. */
async function joined(text: string, points: Blob): Promise<string> {
  const whole = JSON.parse(text) as { survey?: { points?: unknown } };
  if (whole.survey) whole.survey.points = JSON.parse(await points.text());
  tell("reading", 0.3);
  return JSON.stringify(whole);
}

function hold(site: Site, ahead: GroundAhead | null): void {
  const ground = ahead ?? made(site);
  if (ground === null) return;
  takeGround(site, ground);
  held = site;
  layersTold = site.ground;
  tell("drawing", 0);
  const ready: GroundReady = { ground, picture: makePicture(site) };
  tell("drawing", 0.5);
  const { copy, transfer } = handedOver(ready);
  post({ ready: copy }, transfer);
}

function made(site: Site): GroundAhead | null {
  tell("joining", 0, site.survey.points.length);
  const ground = makeGround(site.survey, (share) => tell("joining", share));
  if (!("fault" in ground)) return ground;
  post(ground);
  return null;
}

function work(ask: WorkAsk): void {
  if (held === null) throw new Error("got work before a survey, expected the survey first");
  const ground = ask.sameLayers && layersTold !== null ? layersTold : ask.site.ground;
  const site: Site = { ...ask.site, survey: held.survey, ground };
  layersTold = ground;
  const done: WorkDone = { estimate: null, fault: null, patch: null, picture: null };
  try {
    if (!ask.sameLayers) done.picture = makePicture(site);
    done.patch = stagePatch(site, ask.schemeId, ask.stage);
    if (ask.wantsEstimate) done.estimate = estimate(site, ask.schemeId);
  } catch (fault) {
    done.fault = fault instanceof Error ? fault.message : String(fault);
  }
  const { copy, transfer } = handedOver({ picture: done.picture });
  const patch = done.patch;
  const buffers = patch === null ? [] : buffersOf(patch);
  post({ worked: { ...done, picture: copy.picture } }, [...transfer, ...buffers]);
}

/** A copy whose memory may be handed to the page, so that this worker keeps its own. */
function handedOver<T extends object>(given: T): { copy: T; transfer: ArrayBuffer[] } {
  const copy = structuredClone(given);
  return { copy, transfer: buffersOf(copy) };
}

/** All memory that flat arrays use anywhere within a plain object, each once. */
function buffersOf(value: unknown, found = new Set<ArrayBuffer>()): ArrayBuffer[] {
  if (ArrayBuffer.isView(value)) found.add(value.buffer as ArrayBuffer);
  else if (value instanceof ArrayBuffer) found.add(value);
  else if (typeof value === "object" && value !== null && !Array.isArray(value)) {
    for (const part of Object.values(value)) buffersOf(part, found);
  }
  return [...found];
}
