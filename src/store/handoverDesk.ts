/** Making files to hand over, and looking at the sheets, in a worker of their own. */
import { create } from "zustand";
import { LEFT_OUT } from "../handover/index.js";
import type { HandoverChoices, HandoverFile, LeftOut, StakeChoices } from "../handover/index.js";
import type { Site } from "../site/index.js";
import { columnsOf, withoutPoints } from "./groundTalk.js";
import type { HandoverAnswer, HandoverAsk, SheetsAsk, SheetSeen } from "./handoverTalk.js";
import { deviceStore } from "./looks.js";
import { keepStakes, stakesOnDevice, withStakes, type StakesKept } from "./stakesKept.js";

export interface HandoverState {
  /** What is being made: the kind at work, and 0 to 1 of it done; null when nothing is. */
  making: { ids: readonly string[]; kind: string; share: number } | null;
  /** The sheets as last drawn, and the site that they are of. */
  sheets: { site: Site; schemeId: string; seen: readonly SheetSeen[] } | null;
  /** Of which site the sheets are being drawn; null when none are. */
  drawing: Site | null;
  fault: string | null;
  /** What the page and the link are made without, as last chosen on this device. */
  leftOut: readonly LeftOut[];
  /** False once this browser would not keep that choice: it then holds until the page is left. */
  isLeftOutKept: boolean;
  /** How points are set out, as last chosen on this device. */
  stakes: StakesKept;
  /** False once this browser would not keep that choice: it then holds until the page is left. */
  areStakesKept: boolean;
}

const LEFT_OUT_KEY = "bankyard-left-out";

/** What was kept as left out, a JSON list; all that is not a choice of ours is passed over. */
export function readLeftOut(text: string | null): LeftOut[] {
  if (text === null) return [];
  try {
    const kept: unknown = JSON.parse(text);
    return Array.isArray(kept) ? LEFT_OUT.filter((what) => kept.includes(what)) : [];
  } catch {
    // Not our writing: as on a new device, and the ticks show it.
    return [];
  }
}

/** Keeps on the device what is left out, so that a reload puts no name back; false if it would not. */
function keepLeftOut(leftOut: readonly LeftOut[]): boolean {
  try {
    const store = deviceStore();
    store?.setItem(LEFT_OUT_KEY, JSON.stringify(leftOut));
    return store !== null;
  } catch {
    return false;
  }
}

export const useHandover = create<HandoverState>()(() => ({
  making: null,
  sheets: null,
  drawing: null,
  fault: null,
  leftOut: readLeftOut(deviceStore()?.getItem(LEFT_OUT_KEY) ?? null),
  isLeftOutKept: true,
  stakes: stakesOnDevice(),
  areStakesKept: true,
}));

/** Chooses how points of a site are set out, now and after a reload. */
export function setOut(site: Site, choice: StakeChoices): void {
  useHandover.setState(({ stakes }) => {
    const next = withStakes(stakes, site, choice);
    return { stakes: next, areStakesKept: keepStakes(next) };
  });
}

/** Chooses whether the page and the link are made without something, now and after a reload. */
export function leaveOut(what: LeftOut, isLeftOut: boolean): void {
  useHandover.setState(({ leftOut }) => {
    const others = leftOut.filter((one) => one !== what);
    const next = isLeftOut ? [...others, what] : others;
    return { leftOut: next, isLeftOutKept: keepLeftOut(next) };
  });
}

let maker: Worker | null = null;

function begin(
  site: Site,
  schemeId: string,
  want: HandoverAsk["want"],
  take: (answer: HandoverAnswer) => void,
): Worker {
  const worker = new Worker(new URL("./handover.worker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", ({ data }: MessageEvent<HandoverAnswer>) => take(data));
  worker.addEventListener("error", ({ message }) => {
    take({ fault: message === "" ? "its worker did not start" : message });
  });
  const columns = columnsOf(site.survey.points);
  const madeAt = `${new Date().toISOString().slice(0, 19)}Z`;
  const base = document.baseURI;
  const ask: HandoverAsk = { site: withoutPoints(site), columns, schemeId, madeAt, base, want };
  worker.postMessage(ask, [columns.x.buffer, columns.y.buffer, columns.z.buffer]);
  return worker;
}

/**
 * Makes files of the kinds named, one after the other, and zips them when there are more of them
 * than may stay apart; null when it was cancelled, overtaken by
 * another or has failed (the fault is then in the state).
 */
export function makeFiles(
  site: Site,
  schemeId: string,
  ids: readonly string[],
  choices: HandoverChoices,
  mostApart = Infinity,
): Promise<readonly HandoverFile[] | null> {
  cancelMaking();
  useHandover.setState({ making: { ids, kind: ids[0] ?? "", share: 0 }, fault: null });
  return new Promise((resolve) => {
    stopMaking = () => resolve(null);
    maker = begin(site, schemeId, { files: ids, choices, mostApart }, (answer) => {
      if ("kind" in answer) {
        useHandover.setState({ making: { ids, kind: answer.kind, share: answer.share } });
        return;
      }
      if ("files" in answer) resolve(answer.files);
      if ("fault" in answer) useHandover.setState({ fault: answer.fault });
      cancelMaking();
    });
  });
}

let stopMaking: (() => void) | null = null;

/** Gives up the files that are being made; what was made before stays. */
export function cancelMaking(): void {
  maker?.terminate();
  maker = null;
  stopMaking?.();
  stopMaking = null;
  if (useHandover.getState().making !== null) useHandover.setState({ making: null });
}

/** The worker that draws sheets, the site it was given, and the last one that it was asked for. */
let drawing: { worker: Worker; given: Site; schemeId: string; asked: Site[] } | null = null;

/**
 * Draws the sheets to be looked at, unless those of this very site are there or on their way. Where
 * only the choice among them has changed, the worker goes on from what it has drawn; what was drawn
 * before stays in sight meanwhile.
 */
export function drawSheets(site: Site, schemeId: string): void {
  const { sheets, drawing: asked } = useHandover.getState();
  if (asked === site || (sheets?.site === site && sheets.schemeId === schemeId)) return;
  useHandover.setState({ drawing: site, fault: null });
  if (drawing?.schemeId === schemeId && isSameButChoice(drawing.given, site)) {
    drawing.asked.push(site);
    drawing.worker.postMessage({ chosen: site.sheets ?? null } satisfies SheetsAsk);
    return;
  }
  restSheets();
  useHandover.setState({ drawing: site });
  const worker = begin(site, schemeId, "sheets", (answer) => {
    if (drawing?.worker !== worker) return;
    if ("fault" in answer) {
      restSheets();
      useHandover.setState({ fault: answer.fault });
    } else if ("sheets" in answer) takeSheets(drawing, answer.sheets);
  });
  drawing = { worker, given: site, schemeId, asked: [site] };
}

/** Answers come in the order of the asking; only the last one ends the drawing. */
function takeSheets(now: NonNullable<typeof drawing>, seen: readonly SheetSeen[]): void {
  const site = now.asked.shift();
  if (site === undefined) return;
  useHandover.setState({
    sheets: { site, schemeId: now.schemeId, seen },
    drawing: now.asked.at(-1) ?? null,
  });
}

/** Lets the worker that draws sheets go; what it has drawn stays. */
export function restSheets(): void {
  drawing?.worker.terminate();
  drawing = null;
  if (useHandover.getState().drawing !== null) useHandover.setState({ drawing: null });
}

/** Whether two sites differ in nothing but the sheets left out and what the plans show. */
function isSameButChoice(before: Site, after: Site): boolean {
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]) as Set<keyof Site>;
  keys.delete("sheets");
  return (
    [...keys].every((key) => before[key] === after[key]) &&
    before.sheets?.paper === after.sheets?.paper
  );
}
