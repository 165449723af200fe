/** What limits the site that a ditch which is offered would cross, end at or come too near to. */
import { insideOutline } from "../ground/index.js";
import { distanceBetween, limitShapes, setbacksOf } from "../safety/index.js";
import {
  isBuriedLine,
  limitKind,
  ruleOf,
  type Limit,
  type PlanPoint,
  type Site,
} from "../site/index.js";

/** A limit that a ditch, or the water that it lets go, meets; m in plan. */
export interface LimitMeeting {
  /** Id of the limit, and its name or its kind's. */
  limit: string;
  name: string;
  /**
   * `off-lot`: a part of it lies beyond every lot line that closes; `ends`: its lower end lies nearer
   * than is asked; `near`: another part does; `lets-go`: the water that it lets go runs there.
   */
  how: "off-lot" | "crosses" | "ends" | "near" | "lets-go";
  /** Between the nearest edges, of the lower end alone for `ends`; 0 where they touch or cross. */
  distance: number;
  /** What is asked there, and who asks it; 0 and "" where only crossing counts. */
  wanted: number;
  source: string;
}

type Locality = Pick<Site, "limits" | "setbacks" | "rules">;

/** Kinds where water that is let go does harm. */
const HARMED = ["building", "drive"];
/** Kinds that people drink from: the least that the table asks of anything there is looked at. */
const DRUNK = ["well", "neighbour-well", "spring"];

/**
 * Every limit that a ditch meets, in the file's order, each once: the worst of what can be said of it.
 * `line` is its middle, the higher end first, `letGo` the way of its water from its lower end on; both
 * in site coordinates, m.
 */
export function limitsMet(
  site: Locality,
  line: readonly PlanPoint[],
  letGo: readonly PlanPoint[],
): LimitMeeting[] {
  const limits = site.limits ?? [];
  const beyond = lotsLeft(limits, line);
  const last = line.at(-1);
  if (last === undefined) return [];
  return limits.flatMap((limit): LimitMeeting[] => {
    const met = { limit: limit.id, name: limit.name ?? limitKind(limit.kind)?.name ?? limit.kind };
    if (limit === beyond) return [{ ...met, how: "off-lot", distance: 0, wanted: 0, source: "" }];
    const shapes = limitShapes(limit);
    if (shapes.length === 0) return [];
    const keep = keptFrom(site, limit);
    const far = (points: readonly PlanPoint[]): number =>
      distanceBetween([{ points, closed: false }], shapes);
    const places = shapes.flatMap(({ points }) => points);
    const whole = apart(line, places) > keep.wanted ? Infinity : far(line);
    const end = whole === Infinity ? Infinity : far([last]);
    if (end === 0) return [{ ...met, how: "ends", distance: 0, ...keep }];
    if (whole === 0) return [{ ...met, how: "crosses", distance: 0, ...keep }];
    if (end < keep.wanted) return [{ ...met, how: "ends", distance: end, ...keep }];
    if (whole < keep.wanted) return [{ ...met, how: "near", distance: whole, ...keep }];
    const runsTo = HARMED.includes(limit.kind) && apart(letGo, places) === 0 && far(letGo) === 0;
    return runsTo ? [{ ...met, how: "lets-go", distance: 0, ...keep }] : [];
  });
}

/** The first lot line that closes, where a part of the line lies in none of them; null for none. */
function lotsLeft(limits: readonly Limit[], line: readonly PlanPoint[]): Limit | null {
  const lots = limits.filter(({ kind, path = [], closed }) => {
    const [first, last] = [path[0], path.at(-1)];
    if (kind !== "lot-line" || path.length < 3 || !first || !last) return false;
    return closed === true || Math.hypot(first[0] - last[0], first[1] - last[1]) < 0.01;
  });
  const out = line.some(([x, y]) => lots.every(({ path = [] }) => !insideOutline(path, x, y)));
  return out ? (lots[0] ?? null) : null;
}

/** How far a ditch is asked to keep from a limit, m, and by whom. */
function keptFrom(site: Locality, limit: Limit): Pick<LimitMeeting, "wanted" | "source"> {
  const asked: Pick<LimitMeeting, "wanted" | "source">[] = [
    { wanted: limit.setback ?? 0, source: `setback as entered for ${limit.name ?? limit.kind}` },
  ];
  const byRule = (id: string): void => {
    const { value, source } = ruleOf(site, id);
    asked.push({ wanted: value, source });
  };
  if (limit.kind === "overhead-line") byRule("line-ask");
  else if (isBuriedLine(limit.kind)) byRule("hand-within");
  // No table speaks of ditches: at a well the least that it asks of a tank or field is looked at.
  else if (DRUNK.includes(limit.kind) && limit.setback === undefined) {
    const rows = setbacksOf(site).filter(({ to }) => to === limit.kind);
    const least = rows.reduce<(typeof rows)[number] | null>(
      (best, row) => (best === null || row.distance < best.distance ? row : best),
      null,
    );
    if (least !== null) {
      asked.push({ wanted: least.distance, source: `${least.source}, of a ${least.from}` });
    }
  }
  const most = asked.reduce((best, one) => (one.wanted > best.wanted ? one : best));
  return most.wanted > 0 ? most : { wanted: 0, source: "" };
}

/** The distance between two boxes about places, m: never more than between what lies in them. */
function apart(some: readonly PlanPoint[], others: readonly PlanPoint[]): number {
  const gap = (axis: 0 | 1): number => {
    const [a, b] = [rangeOf(some, axis), rangeOf(others, axis)];
    return Math.max(0, a.least - b.most, b.least - a.most);
  };
  return Math.hypot(gap(0), gap(1));
}

function rangeOf(places: readonly PlanPoint[], axis: 0 | 1): { least: number; most: number } {
  let [least, most] = [Infinity, -Infinity];
  for (const place of places) {
    least = Math.min(least, place[axis]);
    most = Math.max(most, place[axis]);
  }
  return { least, most };
}
