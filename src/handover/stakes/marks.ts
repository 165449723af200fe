/** The two marks that distances are taped from. */
import { limitCorners, staysInGround } from "../../site/index.js";
import type { PlanPoint, Site } from "../../site/index.js";
import type { MarkChoice } from "../choices.js";
import { words } from "../../words/index.js";

export interface Mark {
  choice: MarkChoice;
  name: string;
  at: PlanPoint;
}

/** Arcs that cross at less than this, degrees, fix a place badly: common practice, no source. */
export const FLATTEST = 20;

/** Degrees: here an error of a tape moves the crossing by √2 of it, at a right angle by 1 (geometry). */
const GOOD = 45;
/** m: nearer than this, a limit's corner and a survey point are one mark. */
const SAME = 0.05;
/** Marks that are tried, those nearest to the stakes. */
const MOST_TRIED = 120;

/** Every place that a person may pick, with the name that is read out. */
export function marksOf(site: Site): Mark[] {
  const points = site.survey.points.map(({ id, x, y, note }): Mark => ({
    choice: { point: id },
    name: words.stakes.surveyPoint(id, note ?? ""),
    at: [x, y],
  }));
  const corners = (site.limits ?? []).flatMap((limit) => {
    const places = limitCorners(limit)?.places ?? [];
    return places.map((at, corner): Mark => ({
      choice: { limit: limit.id, corner },
      name: words.stakes.limitCorner(limit.name ?? limit.id, corner + 1),
      at,
    }));
  });
  return [...points, ...corners];
}

/** Whether a choice names a mark of the site. */
export const hasMark = (site: Site, choice: MarkChoice): boolean =>
  marksOf(site).some((mark) => JSON.stringify(mark.choice) === JSON.stringify(choice));

/** The mark that a choice names. Throws, for a person to read, where the site has none such. */
export function markOf(site: Site, choice: MarkChoice): Mark {
  const wanted = JSON.stringify(choice);
  const found = marksOf(site).find((mark) => JSON.stringify(mark.choice) === wanted);
  if (found === undefined) throw new Error(words.stakes.noMark(wanted));
  return found;
}

/**
 * The pair picked, or the best by geometry: of what is marked in the ground (else of all survey
 * points), the two from which the arcs of the worst stake cross nearest to a right angle; of several
 * where they cross well, the two whose longest tape is shortest. Null where there are no two. Throws where the pair picked is one place.
 */
export function markPair(
  site: Site,
  stakes: readonly PlanPoint[],
  picked?: readonly [MarkChoice, MarkChoice],
): readonly [Mark, Mark] | null {
  if (picked === undefined) return bestPair(candidates(site, stakes), stakes);
  const pair = [markOf(site, picked[0]), markOf(site, picked[1])] as const;
  if (isOnePlace(...pair)) throw new Error(words.stakes.sameMark);
  return pair;
}

export const isOnePlace = (a: Mark, b: Mark): boolean => apart(a.at, b.at) < SAME;

const apart = ([ax, ay]: PlanPoint, [bx, by]: PlanPoint): number => Math.hypot(bx - ax, by - ay);

function candidates(site: Site, stakes: readonly PlanPoint[]): Mark[] {
  const lots = new Set(
    (site.limits ?? []).flatMap(({ id, kind }) => (kind === "lot-line" ? [id] : [])),
  );
  const staying = new Set(site.survey.points.filter(staysInGround).map(({ id }) => id));
  const all = marksOf(site);
  const marked = all.filter(({ choice }) =>
    "point" in choice ? staying.has(choice.point) : lots.has(choice.limit),
  );
  const usable = marked.length >= 2 ? marked : all.filter(({ choice }) => "point" in choice);
  // Few enough of a large survey that each can be held against the others.
  const near = nearest(usable, stakes).slice(0, 4 * MOST_TRIED);
  return unlike(near).slice(0, MOST_TRIED);
}

/** Marks by how near they are to the middle of the stakes. */
function nearest(marks: readonly Mark[], stakes: readonly PlanPoint[]): Mark[] {
  const middle = (axis: 0 | 1): number =>
    stakes.reduce((sum, at) => sum + at[axis], 0) / Math.max(1, stakes.length);
  const centre: PlanPoint = [middle(0), middle(1)];
  return marks.toSorted((a, b) => apart(a.at, centre) - apart(b.at, centre));
}

/** Marks in a list that is still read through. */
const MOST_OFFERED = 16;

/**
 * The marks to choose from: those that stay in the ground (else survey points), the nearest to the
 * stakes, and those that are chosen or asked for beside them. By name.
 */
export function offeredMarks(
  site: Site,
  stakes: readonly PlanPoint[],
  beside: readonly MarkChoice[],
): Mark[] {
  const near = candidates(site, stakes).slice(0, MOST_OFFERED);
  const known = new Set(near.map(({ choice }) => JSON.stringify(choice)));
  const wanted = new Set(beside.map((choice) => JSON.stringify(choice)));
  const more = marksOf(site).filter(({ choice }) => {
    const key = JSON.stringify(choice);
    return wanted.has(key) && !known.has(key);
  });
  return [...near, ...more].toSorted((a, b) =>
    a.name.localeCompare(b.name, "en", { numeric: true }),
  );
}

/** How well two marks fix the stakes. */
export interface PairJudged {
  pair: readonly [Mark, Mark];
  /** Degrees at which the arcs of the worst stake cross, at most 90. */
  worst: number;
  /** Stakes whose arcs cross at less than `FLATTEST`. */
  flat: number;
  /** m of the longest tape. */
  longest: number;
}

export function judgedPair(pair: readonly [Mark, Mark], stakes: readonly PlanPoint[]): PairJudged {
  const [a, b] = pair;
  const angles = stakes.map((at) => crossing(a.at, b.at, at));
  return {
    pair,
    worst: angles.reduce((least, angle) => Math.min(least, angle), 90),
    flat: angles.filter((angle) => angle < FLATTEST).length,
    longest: Math.max(farthest(a.at, stakes), farthest(b.at, stakes)),
  };
}

/** Of marks at one place the first. */
function unlike(marks: readonly Mark[]): Mark[] {
  return marks.filter(
    (mark, i) => !marks.slice(0, i).some((other) => apart(other.at, mark.at) < SAME),
  );
}

function bestPair(marks: readonly Mark[], stakes: readonly PlanPoint[]): [Mark, Mark] | null {
  let best: [Mark, Mark] | null = null;
  let [most, nearest] = [-1, Infinity];
  const reach = new Map(marks.map((mark) => [mark, farthest(mark.at, stakes)]));
  for (const [i, a] of marks.entries()) {
    for (const b of marks.slice(i + 1)) {
      const worst = worstAngle(a.at, b.at, stakes, most);
      const far = Math.max(reach.get(a) ?? 0, reach.get(b) ?? 0);
      if (worst < most || (worst === most && far >= nearest)) continue;
      [most, nearest, best] = [worst, far, [a, b]];
    }
  }
  return best;
}

const farthest = (mark: PlanPoint, stakes: readonly PlanPoint[]): number =>
  stakes.reduce((far, at) => Math.max(far, apart(mark, at)), 0);

/**
 * The flattest crossing of any stake, degrees, at most `GOOD`: beyond that shorter tapes count for
 * more. Stops at one that is flatter than `floor`.
 */
function worstAngle(
  a: PlanPoint,
  b: PlanPoint,
  stakes: readonly PlanPoint[],
  floor: number,
): number {
  let worst = GOOD;
  for (const at of stakes) {
    worst = Math.min(worst, crossing(a, b, at));
    if (worst < floor) return worst;
  }
  return worst;
}

/** Degrees, 0 to 90, at which the arcs about two marks cross at a place; 0 at a mark itself. */
export function crossing(a: PlanPoint, b: PlanPoint, [x, y]: PlanPoint): number {
  const [ax, ay, bx, by] = [a[0] - x, a[1] - y, b[0] - x, b[1] - y];
  const [cross, dot] = [Math.abs(ax * by - ay * bx), Math.abs(ax * bx + ay * by)];
  return (Math.atan2(cross, dot) * 180) / Math.PI;
}

/** Which side of the line from one mark to another a place is on: left above 0, m² of twice the area. */
export const sideOf = (a: PlanPoint, b: PlanPoint, [x, y]: PlanPoint): number =>
  (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
