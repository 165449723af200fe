/** The marks that a person chooses from, and what comes of the choice. */
import type { Site } from "../../site/index.js";
import type { MarkChoice, StakeChoices } from "../choices.js";
import type { HandoverJob } from "../job.js";
import { hasMark, isOnePlace, judgedPair, markOf, markPair, offeredMarks } from "./marks.js";
import type { Mark, PairJudged } from "./marks.js";
import { stakeGroups } from "./points.js";

export interface MarkOffer {
  offered: readonly Mark[];
  /** Stakes that are set out. */
  stakes: number;
  /** The pair in use; null where there are no two marks. */
  used: PairJudged | null;
  /** The pair that crosses best, where it is better than the one in use; else null. */
  better: PairJudged | null;
}

/**
 * Marks to offer for a job, the ones asked for among them, and how well those in use fix its stakes.
 * A pair of which the site has not both, or which is one place, counts as none picked.
 */
export function markOffer(
  job: HandoverJob,
  choices: StakeChoices,
  beside: readonly MarkChoice[] = [],
): MarkOffer {
  const { site } = job;
  const places = stakeGroups(job, choices).flatMap(({ stakes }) => stakes.map(({ at }) => at));
  const picked = usablePair(site, choices.marks);
  const best = markPair(site, places);
  const pair = picked === undefined ? best : markPair(site, places, picked);
  const used = pair && judgedPair(pair, places);
  const judged = best && judgedPair(best, places);
  const isBetter = used !== null && judged !== null && judged.worst > used.worst + 0.5;
  return {
    offered: offeredMarks(site, places, [
      ...beside.filter((choice) => hasMark(site, choice)),
      ...(pair ?? []).map(({ choice }) => choice),
    ]),
    stakes: places.length,
    used,
    better: isBetter ? judged : null,
  };
}

/** The pair picked, where the site has both and they are two places. */
export function usablePair(site: Site, pair: StakeChoices["marks"]): StakeChoices["marks"] {
  if (pair === undefined || !pair.every((choice) => hasMark(site, choice))) return undefined;
  return isOnePlace(markOf(site, pair[0]), markOf(site, pair[1])) ? undefined : pair;
}
