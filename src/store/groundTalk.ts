/** What the page and the worker of a large survey say to each other. */
import type { Estimate, GroundAhead, PictureAhead, Stage, StagePatch } from "../estimate/index.js";
import type { Site, SiteProblem, SurveyPoint } from "../site/index.js";

/** Surveys of more points than this are read, joined and worked on away from the page. */
const MOST_AT_ONCE = 5000;
/** Letters of a file that may hold such a survey. */
const MOST_LETTERS = 400_000;

/** Whether a site's survey is too large to be worked on between two frames. */
export function isLarge(site: Site): boolean {
  return site.survey.points.length > MOST_AT_ONCE;
}

/** Whether a text is too long to be read between two frames. */
export function isLong(text: string): boolean {
  return text.length > MOST_LETTERS;
}

/** A survey's points in columns, quick to make and to hand over; the ids are JSON. */
export interface PointColumns {
  ids: string;
  x: Float64Array<ArrayBuffer>;
  y: Float64Array<ArrayBuffer>;
  z: Float64Array<ArrayBuffer>;
}

/** What is worked out of a site: its estimate, what a stage changes of the ground, or both. */
export interface WorkAsk {
  /** The site without its points; without its layers and probes too when they are as last told. */
  site: Site;
  sameLayers: boolean;
  schemeId: string;
  stage: Stage;
  wantsEstimate: boolean;
}

export type Ask =
  /** A site file's text to read; the points may be a text of their own. */
  | { ask: "read"; text: string; points: Blob | null }
  /** A survey to make ground of, unless `ahead` is that ground. The site's points are in columns. */
  | { ask: "hold"; site: Site; columns: PointColumns; ahead: GroundAhead | null }
  | ({ ask: "work" } & WorkAsk);

/** What of a long job is being done. */
export type JobStep = "reading" | "joining" | "drawing";

export interface GroundReady {
  ground: GroundAhead;
  picture: PictureAhead;
}

export type Answer =
  | { step: JobStep; share: number; points?: number }
  | { problems: readonly SiteProblem[] }
  /** Why there is no ground, or what went wrong. */
  | { fault: string }
  /** The site that was read, without its points, and their text to be kept. */
  | { read: Site; kept: Blob }
  /** The next of its points. */
  | { points: SurveyPoint[] }
  | { ready: GroundReady }
  | { worked: WorkDone };

export interface WorkDone {
  estimate: Estimate | null;
  /** Why the engine failed on this site. */
  fault: string | null;
  patch: StagePatch | null;
  /** The ground as found drawn anew, when layers or probes have changed. */
  picture: PictureAhead | null;
}

/** A site with no points: these go another way. */
export function withoutPoints(site: Site): Site {
  return { ...site, survey: { ...site.survey, points: [] } };
}

/** The points of a survey in columns. */
export function columnsOf(points: readonly SurveyPoint[]): PointColumns {
  const x = new Float64Array(points.length);
  const y = new Float64Array(points.length);
  const z = new Float64Array(points.length);
  const ids = points.map((point, i) => {
    x[i] = point.x;
    y[i] = point.y;
    z[i] = point.z;
    return point.id;
  });
  return { ids: JSON.stringify(ids), x, y, z };
}

/** The points of columns; notes are left behind. */
export function pointsOf({ ids, x, y, z }: PointColumns): SurveyPoint[] {
  return (JSON.parse(ids) as string[]).map((id, i) => ({ id, x: x[i]!, y: y[i]!, z: z[i]! }));
}
