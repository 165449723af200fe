/** How points were last set out, kept on the device over a reload. */
import { usablePair } from "../handover/index.js";
import type { MarkChoice, StakeChoices } from "../handover/index.js";
import { findLimit, limitCorners } from "../site/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { deviceStore } from "./looks.js";

const STAKES_KEY = "bankyard-stakes";

/** Pairs that are kept at most: those picked longest ago are let go. */
const MOST_PAIRS = 40;

/** m: how far a mark may have moved and still be the one that was picked. */
const SAME = 0.001;

/** A pair as it was picked, with where its marks stood: ids alone are alike on many sites. */
interface KeptPair {
  marks: readonly [MarkChoice, MarkChoice];
  at: readonly [PlanPoint, PlanPoint];
}

/** What is kept: spacings for every site, and each site's pair of marks. */
export interface StakesKept {
  spacings: Omit<StakeChoices, "marks">;
  pairs: readonly KeptPair[];
}

export const NO_STAKES: StakesKept = { spacings: {}, pairs: [] };

const isPlace = (value: unknown): value is PlanPoint =>
  Array.isArray(value) && value.length === 2 && value.every(Number.isFinite);

function isMark(value: unknown): value is MarkChoice {
  if (typeof value !== "object" || value === null) return false;
  if ("point" in value) return typeof value.point === "string";
  return (
    "limit" in value &&
    typeof value.limit === "string" &&
    "corner" in value &&
    Number.isInteger(value.corner)
  );
}

function isPair(value: unknown): value is KeptPair {
  if (typeof value !== "object" || value === null) return false;
  const { marks, at } = value as Partial<Record<keyof KeptPair, unknown>>;
  const both = (list: unknown, holds: (one: unknown) => boolean): boolean =>
    Array.isArray(list) && list.length === 2 && list.every(holds);
  return both(marks, isMark) && both(at, isPlace);
}

/** What was kept, as text; all that is not a choice of ours is passed over. */
export function readStakes(text: string | null): StakesKept {
  if (text === null) return NO_STAKES;
  let kept: unknown;
  try {
    kept = JSON.parse(text);
  } catch {
    // Not our writing: as on a new device, and the fields show it.
    return NO_STAKES;
  }
  const { offset, interval, pairs } = (kept ?? {}) as Record<string, unknown>;
  const isLength = (value: unknown): value is number =>
    typeof value === "number" && value > 0 && Number.isFinite(value);
  return {
    spacings: { ...(isLength(offset) && { offset }), ...(isLength(interval) && { interval }) },
    pairs: Array.isArray(pairs) ? pairs.filter(isPair).slice(0, MOST_PAIRS) : [],
  };
}

/** What was kept on this device. */
export const stakesOnDevice = (): StakesKept =>
  readStakes(deviceStore()?.getItem(STAKES_KEY) ?? null);

/** Keeps it on the device; false if the browser would not. */
export function keepStakes({ spacings, pairs }: StakesKept): boolean {
  try {
    const store = deviceStore();
    store?.setItem(STAKES_KEY, JSON.stringify({ ...spacings, pairs }));
    return store !== null;
  } catch {
    return false;
  }
}

/** Where a mark stands; null where the site has none such. Asked often, of large surveys too. */
function placeOf(site: Site, choice: MarkChoice): PlanPoint | null {
  if ("point" in choice) {
    const point = site.survey.points.find(({ id }) => id === choice.point);
    return point === undefined ? null : [point.x, point.y];
  }
  const limit = findLimit(site, choice.limit);
  return limit === null ? null : (limitCorners(limit)?.places[choice.corner] ?? null);
}

/** Whether a site has both marks where they stood when they were picked. */
function isOf(site: Site, { marks, at }: KeptPair): boolean {
  return marks.every((choice, i) => {
    const now = placeOf(site, choice);
    return now !== null && Math.hypot(now[0] - at[i]![0], now[1] - at[i]![1]) < SAME;
  });
}

/** How the points of a site are set out: the spacings, and the pair that was picked on it. */
export function stakesOf({ spacings, pairs }: StakesKept, site: Site): StakeChoices {
  const marks = usablePair(site, pairs.find((pair) => isOf(site, pair))?.marks);
  return { ...spacings, ...(marks && { marks }) };
}

/** The same with another choice for a site; without marks the pair is left to the program there. */
export function withStakes(kept: StakesKept, site: Site, choice: StakeChoices): StakesKept {
  const { marks, ...spacings } = choice;
  const others = kept.pairs.filter((pair) => !isOf(site, pair));
  const [a, b] = marks?.map((mark) => placeOf(site, mark)) ?? [];
  if (marks === undefined || !a || !b) return { spacings, pairs: others };
  return { spacings, pairs: [{ marks, at: [a, b] as const }, ...others].slice(0, MOST_PAIRS) };
}
