/** Sites with a large survey on the desk: all that takes long is done by a worker that holds it. */
import { groundTaken } from "../estimate/index.js";
import type { History, Site } from "../site/index.js";
import type { DeskState, DeskStore, LongJob } from "./deskState.js";
import { fiveFigures } from "../estimate/index.js";
import type { WorkDone } from "./groundTalk.js";
import { GroundWorker, type JobEvents } from "./groundWorker.js";
import { nameOfPicked } from "./moved.js";

/** A document that comes on the desk when its ground is there. */
interface Coming {
  history: History;
  schemeId: string;
  more: Partial<DeskState>;
}

/** What one reading of a file leads to. */
export interface Reading {
  onSite: (site: Site) => void;
  onProblems: JobEvents["onProblems"];
  onFault: JobEvents["onFault"];
}

type Get = () => DeskStore;
type Set = (part: Partial<DeskState>) => void;

export class LargeDesk {
  /** Holds the survey that is drawn, or that the coming document has. */
  private holder: GroundWorker | null = null;
  /** Makes the ground of a survey that is not there yet, or reads a file. */
  private job: GroundWorker | null = null;
  /** Told when the file that is read is given up. */
  private onGivenUp: (() => void) | null = null;
  /** Told whether the coming document has come. */
  private onLanded: ((landed: boolean) => void) | null = null;
  private coming: Coming | null = null;
  /** Told apart from what an earlier holder still answers. */
  private asked: { site: Site; schemeId: string; stage: DeskState["stage"] } | null = null;
  private isMore = false;

  constructor(
    private readonly get: Get,
    private readonly set: Set,
  ) {}

  /** The newest document, though its ground may not be there yet. */
  now(): History | null {
    return this.coming?.history ?? this.get().history;
  }

  /** True while an edit of a survey, or another site, waits for its ground. */
  get isComing(): boolean {
    return this.coming !== null;
  }

  /** Another site with a small survey is shown. A file that is being read may still come. */
  leave(): void {
    this.dropComing();
    this.letGo();
  }

  /** Tells, once, whether the document that is coming has come; at once when there is none. */
  whenLanded(tell: (landed: boolean) => void): void {
    if (this.coming === null) tell(true);
    else this.onLanded = tell;
  }

  /** Reads a file away from the page. The site on the desk stays until the new one comes. */
  read(
    text: string,
    points: Blob | null,
    name: string,
    reading: Reading,
    givenUp: () => void,
  ): void {
    this.giveUp();
    const job = new GroundWorker();
    this.job = job;
    this.onGivenUp = givenUp;
    // What was told before is not of this file.
    this.set({ notice: "" });
    this.tellWaiting({ name, points: null, step: "reading", share: 0 });
    job.read(text, points, {
      ...this.eventsOf(name),
      onReady: (site) => {
        this.takeOver(job);
        reading.onSite(site);
      },
      onProblems: (problems) => {
        this.endJob();
        reading.onProblems(problems);
      },
      onFault: (text) => {
        this.endJob();
        reading.onFault(text);
      },
    });
  }

  /** Puts a document on the desk: at once when its ground is drawn, else when it is there. */
  adopt(coming: Coming): void {
    const { survey } = coming.history.present;
    const isDrawn = this.get().drawn?.site.survey === survey;
    const waitsForSame = this.coming?.history.present.survey === survey;
    if (waitsForSame && !isDrawn) {
      this.coming = { ...coming, more: { ...this.coming?.more, ...coming.more } };
      if (this.job === null) this.workOut();
      return;
    }
    this.dropComing();
    if (isDrawn) {
      this.set({ ...this.shown(coming), working: { fault: null } });
      this.workOut();
      return;
    }
    this.coming = coming;
    if (groundTaken(survey) === null) this.makeGround(coming.history.present);
    else {
      const { name } = coming.history.present;
      const points = survey.points.length;
      if (this.get().waiting === null)
        this.tellWaiting({ name, points, step: "drawing", share: 0.7 });
      this.workOut();
    }
  }

  /** Works out another stage, or again what could not be. */
  again(): void {
    if (this.get().drawn !== null) this.workOut();
  }

  /** Gives up what is waited for; what is on the desk stays. */
  giveUp(): void {
    const givenUp = this.onGivenUp;
    this.endJob();
    this.dropComing();
    givenUp?.();
  }

  /** A document that was to come does not. */
  private dropComing(): void {
    if (this.coming === null) return;
    const tell = this.onLanded;
    this.onLanded = null;
    this.coming = null;
    this.endJob();
    if (this.get().drawn === null) this.letGo();
    tell?.(false);
  }

  private makeGround(site: Site): void {
    const job = new GroundWorker();
    this.job = job;
    this.tellWaiting({ name: site.name, points: null, step: "joining", share: 0 });
    job.hold(site, {
      ...this.eventsOf(site.name),
      onReady: () => {
        this.takeOver(job);
        this.workOut();
      },
      onProblems: () => undefined,
      onFault: (text) => {
        this.dropComing();
        this.refuse(site.name, text);
      },
    });
  }

  /** Says that no ground could be made; the document as it was stays. */
  private refuse(name: string, text: string): void {
    const problem = {
      code: "bad-survey" as const,
      path: "survey.points",
      text: `no ground could be made of the survey: ${text}`,
      mend: "mend the survey and try again",
    };
    this.set({ unopened: { file: name, problems: [problem] } });
  }

  private eventsOf(name: string): Pick<JobEvents, "onProgress"> {
    let points: number | null = null;
    return {
      onProgress: ({ step, share, points: counted }) => {
        points = counted ?? points;
        this.tellWaiting({ name, points, step, share });
      },
    };
  }

  private tellWaiting(waiting: LongJob): void {
    this.set({ waiting });
  }

  private endJob(): void {
    this.job?.stop();
    this.job = null;
    this.onGivenUp = null;
    if (this.get().waiting !== null) this.set({ waiting: null });
  }

  /** The worker of a job that is done becomes the one that works. */
  private takeOver(job: GroundWorker): void {
    this.letGo();
    this.job = null;
    this.onGivenUp = null;
    this.holder = job;
  }

  private letGo(): void {
    this.holder?.stop();
    this.holder = null;
    this.asked = null;
    this.isMore = false;
  }

  /** What is wanted now: the coming document, or the one on the desk. */
  private wanted(): NonNullable<LargeDesk["asked"]> | null {
    const { history, schemeId, stage } = this.get();
    if (this.coming !== null) {
      const { more, history: next, schemeId: scheme } = this.coming;
      return { site: next.present, schemeId: scheme, stage: more.stage ?? stage };
    }
    return history === null ? null : { site: history.present, schemeId, stage };
  }

  /** Asks for what is wanted; one at a time, and of several only the latest. */
  private workOut(): void {
    const wanted = this.wanted();
    if (wanted === null) return;
    if (this.holder?.survey !== wanted.site.survey) {
      this.holdAgain(wanted.site);
      return;
    }
    if (this.asked !== null) {
      this.isMore = true;
      return;
    }
    this.asked = wanted;
    const { drawn } = this.get();
    const known = drawn?.site === wanted.site && drawn.schemeId === wanted.schemeId;
    this.holder.work(
      { ...wanted, wantsEstimate: !known },
      (done) => this.land(wanted, done, known),
      (text) => this.failed(text),
    );
  }

  /** A worker takes over ground that the page has from before (undo to another large site). */
  private holdAgain(site: Site): void {
    this.letGo();
    const holder = new GroundWorker();
    this.holder = holder;
    holder.hold(site, {
      onProgress: () => undefined,
      onReady: () => this.workOut(),
      onProblems: () => undefined,
      onFault: (text) => this.failed(text),
    });
    // Answers come in order, so what is wanted then is asked for when it holds the survey.
    this.asked = null;
  }

  private land(wanted: NonNullable<LargeDesk["asked"]>, done: WorkDone, known: boolean): void {
    this.asked = null;
    const isMore = this.isMore;
    this.isMore = false;
    const { coming } = this;
    // It may have been given up since.
    if (this.wanted()?.site.survey !== wanted.site.survey) return;
    const part = this.workedPart(wanted, done, known);
    const tell = coming === null ? null : this.onLanded;
    this.coming = null;
    this.onLanded = null;
    this.set({
      ...(coming === null ? {} : { ...this.shown(coming), waiting: null }),
      ...part,
      working: isMore ? { fault: null } : part.working,
    });
    tell?.(true);
    if (isMore) this.workOut();
  }

  private workedPart(
    { site, schemeId, stage }: NonNullable<LargeDesk["asked"]>,
    { estimate, fault, patch }: WorkDone,
    known: boolean,
  ): Partial<DeskState> & Pick<DeskState, "working"> {
    if (patch === null) return { working: { fault: fault ?? "the engine gave no answer" }, fault };
    const drawn = { site, schemeId, stage, patch };
    if (known) return { drawn, working: null };
    const figures = estimate === null ? null : fiveFigures(estimate, site);
    return { drawn, estimate, fault, figures, working: null };
  }

  private failed(text: string): void {
    this.letGo();
    const { coming } = this;
    if (coming === null) {
      this.set({ working: { fault: text } });
      return;
    }
    this.dropComing();
    this.refuse(coming.history.present.name, text);
  }

  private shown({ history, schemeId, more }: Coming): Partial<DeskState> {
    const selected = more.selected === undefined ? this.get().selected : more.selected;
    const stays = selected !== null && nameOfPicked(history.present, schemeId, selected) !== null;
    return { ...more, status: "open", history, schemeId, selected: stays ? selected : null };
  }
}
