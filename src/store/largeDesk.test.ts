import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { estimate, makeGround, makePicture, stagePatch, takeGround } from "../estimate/index.js";
import { moveWork, startHistory, type Site } from "../site/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import type { DeskState, DeskStore } from "./deskState.js";
import type { Answer, Ask, GroundReady } from "./groundTalk.js";
import { LargeDesk, type Reading } from "./largeDesk.js";

/** A worker whose answers the test gives; it notes what it was asked. */
class FakeWorker extends EventTarget {
  static readonly made: FakeWorker[] = [];
  readonly asked: Ask[] = [];
  isStopped = false;

  constructor() {
    super();
    FakeWorker.made.push(this);
  }

  postMessage(ask: Ask): void {
    this.asked.push(ask);
  }

  terminate(): void {
    this.isStopped = true;
  }

  say(data: Answer): void {
    this.dispatchEvent(new MessageEvent("message", { data }));
  }

  /** As a worker that runs out of memory. */
  break(message: string): void {
    this.dispatchEvent(Object.assign(new Event("error"), { message }));
  }
}

function siteNamed(name: string, at: [number, number] = [0, 0]): Site {
  return { ...plainSite({ works: [plainTank({ at })] }), name };
}

/** What a worker answers when the ground of a site is made. */
function readyFor(site: Site): GroundReady {
  const ground = makeGround(site.survey, () => undefined);
  if ("fault" in ground) throw new Error(`expected ground, got ${ground.fault}`);
  const own = { ...site, survey: { ...site.survey } };
  takeGround(own, ground);
  return { ground, picture: makePicture(own) };
}

/** A desk with nothing of its own but the parts that large surveys use. */
function deskFor() {
  const start: Partial<DeskState> = {
    ...{ history: null, schemeId: "", stage: "dug", selected: null, estimate: null, figures: null },
    ...{ waiting: null, drawn: null, working: null, unopened: null, notice: "" },
  };
  let state = start as DeskStore;
  const large = new LargeDesk(
    () => state,
    (part) => (state = { ...state, ...part }),
  );
  const adopt = (site: Site): void =>
    large.adopt({ history: startHistory(site), schemeId: "plan", more: {} });
  return { large, adopt, now: () => state };
}

function newest(): FakeWorker {
  const worker = FakeWorker.made.at(-1);
  if (worker === undefined) throw new Error("expected a worker, got none");
  return worker;
}

/** Answers what the worker was asked last, for a site, as the real one does. */
function answerWork(worker: FakeWorker, site: Site): void {
  const ask = worker.asked.at(-1);
  if (ask?.ask !== "work") throw new Error(`expected work to be asked, got ${ask?.ask ?? "none"}`);
  const patch = stagePatch(site, ask.schemeId, ask.stage);
  const figures = ask.wantsEstimate ? estimate(site, ask.schemeId) : null;
  worker.say({ worked: { estimate: figures, fault: null, patch, picture: null } });
}

/** Puts a site on the desk, with its ground made and its figures worked out. */
function landed(desk: ReturnType<typeof deskFor>, site: Site): FakeWorker {
  desk.adopt(site);
  const worker = newest();
  worker.say({ ready: readyFor(site) });
  answerWork(worker, site);
  return worker;
}

const unheard: Reading = {
  onSite: () => undefined,
  onProblems: () => undefined,
  onFault: () => undefined,
};

beforeEach(() => vi.stubGlobal("Worker", FakeWorker));
afterEach(() => {
  vi.unstubAllGlobals();
  FakeWorker.made.length = 0;
});

describe("a large survey on the desk", () => {
  it("comes only when its ground and figures are there, and shows how far they are", () => {
    const desk = deskFor();
    const site = siteNamed("Hill");
    desk.adopt(site);
    newest().say({ step: "joining", share: 0.5, points: 25 });
    expect(desk.now().waiting).toEqual({ name: "Hill", points: 25, step: "joining", share: 0.5 });
    newest().say({ ready: readyFor(site) });
    expect(desk.now().history).toBeNull();
    answerWork(newest(), site);
    expect(desk.now().history?.present).toBe(site);
    expect(desk.now().waiting).toBeNull();
    expect(desk.now().drawn?.site).toBe(site);
    expect(desk.now().figures?.cut).toBeCloseTo(3 * 2 * 2.2, 9);
  });

  it("asks one thing at a time, and of several only the latest", () => {
    const desk = deskFor();
    const site = siteNamed("Hill");
    const worker = landed(desk, site);
    const asked = worker.asked.length;
    const moved = [1, 2, 3].map((by) => moveWork(site, "plan", "tank", [by, 0]));
    for (const one of moved) desk.adopt(one);
    expect(worker.asked).toHaveLength(asked + 1);
    answerWork(worker, moved[0]!);
    expect(desk.now().drawn?.site).toBe(moved[0]);
    expect(desk.now().working).toEqual({ fault: null });
    answerWork(worker, moved[2]!);
    expect(worker.asked).toHaveLength(asked + 2);
    expect(desk.now().drawn?.site).toBe(moved[2]);
    expect(desk.now().working).toBeNull();
  });

  it("sends no survey again for a work that moves", () => {
    const desk = deskFor();
    const site = siteNamed("Hill");
    const worker = landed(desk, site);
    desk.adopt(moveWork(site, "plan", "tank", [1, 0]));
    const ask = worker.asked.at(-1);
    expect(ask?.ask === "work" && ask.site.survey.points).toEqual([]);
    expect(ask?.ask === "work" && ask.sameLayers).toBe(true);
  });

  it("keeps ground and figures of before when the worker breaks, and can try again", () => {
    const desk = deskFor();
    const site = siteNamed("Hill");
    const worker = landed(desk, site);
    const before = desk.now().figures;
    const moved = moveWork(site, "plan", "tank", [1, 0]);
    desk.adopt(moved);
    worker.break("out of memory");
    expect(desk.now().working).toEqual({ fault: "out of memory" });
    expect(desk.now().drawn?.site).toBe(site);
    expect(desk.now().figures).toBe(before);
    expect(desk.now().history?.present).toBe(moved);
    desk.large.again();
    expect(newest()).not.toBe(worker);
    newest().say({ ready: readyFor(site) });
    answerWork(newest(), moved);
    expect(desk.now().working).toBeNull();
    expect(desk.now().drawn?.site).toBe(moved);
  });
});

describe("another large survey over one that is on the desk", () => {
  it("leaves that one as it is when it is given up, and tells so", () => {
    const desk = deskFor();
    const [site, other] = [siteNamed("Hill"), siteNamed("Dale", [2, 2])];
    landed(desk, site);
    const told: boolean[] = [];
    desk.adopt(other);
    desk.large.whenLanded((is) => told.push(is));
    const job = newest();
    expect(desk.large.now()?.present).toBe(other);
    desk.large.giveUp();
    expect(told).toEqual([false]);
    expect(job.isStopped).toBe(true);
    job.say({ ready: readyFor(other) });
    expect(desk.now().history?.present).toBe(site);
    expect(desk.large.now()?.present).toBe(site);
    expect(desk.now().waiting).toBeNull();
  });

  it("leaves it too when no ground can be made, and says why", () => {
    const desk = deskFor();
    const site = siteNamed("Hill");
    landed(desk, site);
    desk.adopt(siteNamed("Dale", [2, 2]));
    newest().say({ fault: "all points lie on one line" });
    expect(desk.now().history?.present).toBe(site);
    expect(desk.now().unopened?.file).toBe("Dale");
    expect(desk.now().unopened?.problems[0]?.text).toMatch(/all points lie on one line/);
  });

  it("that is a file with problems gives them, and the desk stays", () => {
    const desk = deskFor();
    const site = siteNamed("Hill");
    landed(desk, site);
    const problems = [{ code: "bad-survey" as const, path: "survey", text: "t", mend: "m" }];
    const got: unknown[] = [];
    const reading: Reading = { ...unheard, onProblems: (told) => got.push(told) };
    desk.large.read("{", null, "dale.json", reading, () => undefined);
    expect(desk.now().waiting?.name).toBe("dale.json");
    newest().say({ problems });
    expect(got).toEqual([problems]);
    expect(desk.now().waiting).toBeNull();
    expect(desk.now().drawn?.site).toBe(site);
  });
});

describe("a file read away from the page", () => {
  it("gets its points in parts, in their order", () => {
    const desk = deskFor();
    const site = siteNamed("Hill");
    const got: Site[] = [];
    const reading: Reading = { ...unheard, onSite: (read) => got.push(read) };
    desk.large.read("text", null, "hill.json", reading, () => undefined);
    const { points } = site.survey;
    newest().say({
      read: { ...site, survey: { ...site.survey, points: [] } },
      kept: new Blob(["[]"]),
    });
    newest().say({ points: points.slice(0, 20) });
    newest().say({ points: points.slice(20) });
    newest().say({ ready: readyFor(site) });
    expect(got).toEqual([site]);
  });

  it("is given up once, and what its worker says later is not heard", () => {
    const desk = deskFor();
    let givenUp = 0;
    const faults: string[] = [];
    const reading: Reading = { ...unheard, onFault: (text) => faults.push(text) };
    desk.large.read("text", null, "hill.json", reading, () => givenUp++);
    const job = newest();
    desk.large.giveUp();
    desk.large.giveUp();
    job.break("late");
    expect(givenUp).toBe(1);
    expect(faults).toEqual([]);
    expect(desk.now().waiting).toBeNull();
  });
});
