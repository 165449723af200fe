/** What is to be minded at a stand though it alone rules no lift out: short, for tables. */
import { ruleOf } from "../site/index.js";
import type { PlanPoint } from "../site/index.js";
import { length, pipeSlope } from "../units/index.js";
import { liftRules } from "./cranes.js";
import type { LiftJob, LiftWarning, StandLift } from "./liftTypes.js";
import { crossesLine, insideRings, slopeAt } from "./standing.js";
import type { Ring } from "./standing.js";

/** m over which a stand's slope is read where the crane's outriggers are not entered. */
const USUAL_SPREAD = 5;

/** Slope of the ground as found under a stand, where it is more than the rule takes as it is. */
export function standSlope({ site, crane, groundAt }: LiftJob, at: PlanPoint): number | null {
  const slope = slopeAt(groundAt, at, (crane.outriggers ?? USUAL_SPREAD) / 2);
  return slope > ruleOf(site, "stand-slope").value ? slope : null;
}

/** Every warning that speaks of one stand, worst first; the findings say the same at length. */
export function standWarnings(
  job: LiftJob,
  at: PlanPoint,
  { share, line }: Pick<StandLift, "share" | "line">,
): LiftWarning[] {
  const { units } = job.site;
  const slope = standSlope(job, at);
  const warnings: (LiftWarning | null)[] = [
    line?.isAskFirst === true
      ? {
          code: "line-ask",
          text: `boom or load could come within ${length.print(ruleOf(job.site, "line-ask").value, units)} of ${line.name}: ask its owner first`,
        }
      : null,
    share !== null && share.value > liftRules().nearRating.value && share.value <= 1
      ? {
          code: "near-rating",
          text: `${pipeSlope.print(share.value, units, { digits: 0 })} of the rating leaves little for a wrong weight or a longer radius`,
        }
      : null,
    slope === null
      ? null
      : {
          code: "slope",
          text: `the ground slopes ${pipeSlope.print(slope, units)}: level a place first`,
        },
    isOnBarrier(job, at)
      ? { code: "barrier", text: "it stands on the line of the erosion barrier" }
      : null,
    chartWarning(job),
  ];
  return warnings.filter((warning) => warning !== null);
}

/** What is not known of the crane itself counts at every stand. */
function chartWarning({ lift, crane }: LiftJob): LiftWarning | null {
  if (lift.crane.by === "catalogue") {
    return { code: "typical-crane", text: "the chart is not that of the crane on offer" };
  }
  return crane.block === undefined
    ? { code: "no-block", text: "no weight of the hook block is entered" }
    : null;
}

/** Whether a barrier runs through the square of the outriggers, or ends in it. */
function isOnBarrier({ crane, barriers }: LiftJob, [x, y]: PlanPoint): boolean {
  const half = (crane.outriggers ?? 0) / 2;
  if (!(half > 0)) return false;
  const square: Ring = [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];
  return barriers.some((line) =>
    line.some((place, i) => {
      const next = line[i + 1];
      if (insideRings([place[0], place[1]], [square])) return true;
      return (
        next !== undefined && crossesLine([place[0], place[1]], [next[0], next[1]], square, true)
      );
    }),
  );
}
