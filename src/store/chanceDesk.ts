import { create } from "zustand";
import { summarise, type Chance, type ChanceRuns, type ChanceShape } from "../chance/index.js";
import type { Site } from "../site/index.js";
import type { ChanceAnswer, ChanceAsk } from "./chanceTalk.js";
import { columnsOf, withoutPoints } from "./groundTalk.js";

/** Runs of one simulation. */
export const CHANCE_RUNS = 5000;
/** Runs for the range in the strip, made at rest on every leaf. */
export const REST_RUNS = 400;
/** Workers that share them. */
const WORKERS = 2;

/** The last simulation of a scheme, and the site that it is of. */
export interface Simulated {
  site: Site;
  chance: Chance;
  /** How many runs it is of. */
  runs: number;
  /** ms from asking to the answer. */
  took: number;
}

/** How the simulations stand. */
export interface ChanceState {
  /** By scheme id; one of an older site is kept until a newer one is there. */
  latest: ReadonlyMap<string, Simulated>;
  /** What is being simulated, 0 to 1 of it done; null when nothing is. */
  running: { site: Site; schemeId: string; share: number; runs: number } | null;
  fault: string | null;
}

/** Simulations of the schemes of the site on the desk. */
export const useChance = create<ChanceState>()(() => ({
  latest: new Map(),
  running: null,
  fault: null,
}));

let stopRunning: (() => void) | null = null;
/** Schemes of one site that wait for their turn. */
let waiting: { site: Site; schemeIds: readonly string[] } | null = null;

/**
 * Simulates schemes one after the other, those excepted whose simulation is of this very site; gives
 * up whatever else is being simulated. Call it when the site is at rest.
 */
export function simulate(site: Site, schemeIds: readonly string[]): void {
  const { running, latest, fault } = useChance.getState();
  const wanted = schemeIds.filter((id) => !isWhole(latest.get(id), site));
  const isRunning =
    running?.site === site && running.runs === CHANCE_RUNS && wanted.includes(running.schemeId);
  waiting = { site, schemeIds: wanted.filter((id) => !isRunning || id !== running.schemeId) };
  if (isRunning) return;
  stopRunning?.();
  if (running !== null || fault !== null) useChance.setState({ running: null, fault: null });
  beginNext();
}

const isWhole = (made: Simulated | undefined, site: Site): boolean =>
  made?.site === site && made.runs === CHANCE_RUNS;

/** A few runs of one scheme for its range, unless it has some or anything of this site is running. */
export function simulateAtRest(site: Site, schemeId: string): void {
  const { running, latest } = useChance.getState();
  if (latest.get(schemeId)?.site === site || running?.site === site) return;
  stopRunning?.();
  waiting = null;
  begin(site, schemeId, REST_RUNS);
}

/** Gives up the few runs that an edit has overtaken; whole simulations go their own way. */
export function giveUpAtRest(): void {
  if (useChance.getState().running?.runs !== REST_RUNS) return;
  stopRunning?.();
  useChance.setState({ running: null });
}

function beginNext(): void {
  const [next, ...rest] = waiting?.schemeIds ?? [];
  if (waiting === null || next === undefined) return;
  const { site } = waiting;
  waiting = { site, schemeIds: rest };
  begin(site, next, CHANCE_RUNS);
}

function begin(site: Site, schemeId: string, runs: number): void {
  const began = performance.now();
  const workers = Array.from(
    { length: WORKERS },
    () => new Worker(new URL("./chance.worker.ts", import.meta.url), { type: "module" }),
  );
  const pieces: ChanceRuns[] = [];
  let shape: ChanceShape | null = null;
  let left = WORKERS;
  const stop = (): void => {
    for (const worker of workers) worker.terminate();
    stopRunning = null;
  };
  stopRunning = stop;
  const fail = (fault: string): void => {
    stop();
    useChance.setState({ running: null, fault });
  };
  const take = (answer: ChanceAnswer): void => {
    if ("fault" in answer) fail(answer.fault);
    else if ("shape" in answer) ({ shape } = answer);
    else if ("runs" in answer) {
      pieces.push(answer.runs);
      const made = pieces.reduce((sum, { count }) => sum + count, 0);
      useChance.setState({ running: { site, schemeId, share: made / runs, runs } });
    } else if (--left === 0 && shape !== null) {
      stop();
      const chance = summarise(shape, pieces);
      const made: Simulated = { site, chance, runs, took: performance.now() - began };
      const latest = new Map(useChance.getState().latest).set(schemeId, made);
      useChance.setState({ latest, running: null, fault: null });
      beginNext();
    }
  };
  useChance.setState({ running: { site, schemeId, share: 0, runs }, fault: null });
  workers.forEach((worker, i) => {
    worker.addEventListener("message", ({ data }: MessageEvent<ChanceAnswer>) => take(data));
    worker.addEventListener("error", ({ message }) => {
      fail(message === "" ? "its worker did not start" : message);
    });
    const first = Math.round((i * runs) / WORKERS);
    const count = Math.round(((i + 1) * runs) / WORKERS) - first;
    const columns = columnsOf(site.survey.points);
    const ask: ChanceAsk = { site: withoutPoints(site), columns, schemeId, first, count };
    worker.postMessage(ask, [columns.x.buffer, columns.y.buffer, columns.z.buffer]);
  });
}
