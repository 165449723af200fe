import { groundTaken, takeGround, takePicture } from "../estimate/index.js";
import type { Site, SiteProblem, SurveyPoint } from "../site/index.js";
import { columnsOf, withoutPoints } from "./groundTalk.js";
import type { Answer, Ask, JobStep, WorkAsk, WorkDone } from "./groundTalk.js";
import { surveyTextMade } from "./surveyText.js";

/** How far a long job is. */
export interface JobProgress {
  step: JobStep;
  /** 0 to 1. */
  share: number;
  /** How many points there are, once that is known. */
  points?: number;
}

/** What the one who waits for a large survey is told; one of the last three ends it. */
export interface JobEvents {
  onProgress: (progress: JobProgress) => void;
  /** Its ground is made: an estimate of the site no longer triangulates. */
  onReady: (site: Site) => void;
  onProblems: (problems: readonly SiteProblem[]) => void;
  onFault: (text: string) => void;
}

/** A worker that holds, or comes to hold, the ground of one large survey. */
export class GroundWorker {
  private readonly worker = new Worker(new URL("./ground.worker.ts", import.meta.url), {
    type: "module",
  });
  private onAnswer: (answer: Answer) => void = () => undefined;
  private onFault: (text: string) => void = () => undefined;
  /** The survey that it holds, as the page has it. */
  survey: Site["survey"] | null = null;
  /** Layers and probes as the worker was last told. */
  private layers: Site["ground"] | null = null;

  constructor() {
    this.worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      this.onAnswer(data);
    });
    this.worker.addEventListener("error", (event) => {
      this.fail(event.message === "" ? "its worker did not start" : event.message);
    });
    this.worker.addEventListener("messageerror", () => {
      this.fail("what its worker answered could not be read");
    });
  }

  /** Ends it; after that nothing is told. */
  stop(): void {
    this.onAnswer = () => undefined;
    this.onFault = () => undefined;
    this.worker.terminate();
  }

  private fail(text: string): void {
    const { onFault } = this;
    this.stop();
    onFault(text);
  }

  /** Reads a site file; `points` is the text of its points when they were kept apart. */
  read(text: string, points: Blob | null, events: JobEvents): void {
    this.begin(events, null);
    this.ask({ ask: "read", text, points });
  }

  /** Makes the ground of a site, or takes it over when the page has it. */
  hold(site: Site, events: JobEvents): void {
    this.begin(events, site);
    const ahead = groundTaken(site.survey);
    const columns = columnsOf(site.survey.points);
    const { x, y, z } = columns;
    const ask: Ask = { ask: "hold", site: withoutPoints(site), columns, ahead };
    this.ask(ask, [x.buffer, y.buffer, z.buffer]);
  }

  /** Works on a site whose survey is the one held. One at a time. */
  work(
    { site, ...wanted }: Omit<WorkAsk, "sameLayers">,
    onDone: (done: WorkDone) => void,
    onFault: (text: string) => void,
  ): void {
    const sameLayers = site.ground === this.layers;
    this.layers = site.ground;
    this.onFault = onFault;
    this.onAnswer = (answer) => {
      if ("fault" in answer) this.fail(answer.fault);
      if (!("worked" in answer)) return;
      if (answer.worked.picture !== null) takePicture(site, answer.worked.picture);
      onDone(answer.worked);
    };
    this.ask({ ask: "work", site: withoutPoints(site), sameLayers, ...wanted });
  }

  private ask(ask: Ask, transfer: ArrayBuffer[] = []): void {
    this.worker.postMessage(ask, transfer);
  }

  private begin(events: JobEvents, given: Site | null): void {
    this.onFault = events.onFault;
    let site = given;
    let kept: Blob | null = null;
    const points: SurveyPoint[] = [];
    this.onAnswer = (answer) => {
      if ("step" in answer) events.onProgress(answer);
      else if ("problems" in answer) {
        this.stop();
        events.onProblems(answer.problems);
      } else if ("fault" in answer) this.fail(answer.fault);
      else if ("points" in answer) points.push(...answer.points);
      else if ("read" in answer) {
        site = { ...answer.read, survey: { ...answer.read.survey, points } };
        kept = answer.kept;
      } else if ("ready" in answer && site !== null) {
        if (kept !== null) surveyTextMade(site.survey.points, kept);
        takeGround(site, answer.ready.ground);
        takePicture(site, answer.ready.picture);
        this.survey = site.survey;
        this.layers = site.ground;
        events.onReady(site);
      }
    };
  }
}
