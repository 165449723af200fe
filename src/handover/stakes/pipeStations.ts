import type { PipeCheck } from "../../estimate/index.js";
import type { Trench } from "../../site/index.js";
import type { HandoverJob } from "../job.js";
import type { Stake, StakeGroup } from "./stake.js";

/** A pipe at one stake of its trench's centre line. m. */
export interface PipeAtStake {
  pipe: PipeCheck;
  stake: Stake;
  invert: number;
}

/** Every pipe at every stake of its trench, in the order of the pipes and then of the stations. */
export function pipesAtStakes(
  { estimate }: HandoverJob,
  groups: readonly StakeGroup[],
): PipeAtStake[] {
  return estimate.flow.pipes.flatMap((pipe) => {
    const centre = groups.find(({ work, kind }) => work === pipe.trench && kind === "centre");
    return (centre?.stakes ?? []).map((stake) => ({
      ...{ pipe, stake },
      invert: invertAt(pipe, stake.station ?? 0),
    }));
  });
}

/** Invert at a station: a pipe is straight between the places that the estimate gives. */
export function invertAt({ stations }: Pick<PipeCheck, "stations">, at: number): number {
  const after = Math.max(
    1,
    stations.findIndex(({ station }, i) => i > 0 && at <= station),
  );
  const [from, to] = [stations[after - 1], stations[after]];
  if (from === undefined || to === undefined) return stations[0]?.invert ?? NaN;
  const last = stations[stations.length - 1]!;
  if (at >= last.station) return last.invert;
  const share = (at - from.station) / (to.station - from.station);
  return from.invert + share * (to.invert - from.invert);
}

/**
 * Floor of a trench at a station, m: the bedding under the lowest pipe's underside there. As it is
 * dug for these pipes, though another dig may go deeper at its ends. NaN where no pipe is laid.
 */
export function trenchFloor({ estimate }: HandoverJob, trench: Trench, at: number): number {
  const undersides = trench.pipes.flatMap(({ id, inside, outside }) => {
    const pipe = estimate.flow.pipes.find((each) => each.id === id && each.trench === trench.id);
    return pipe === undefined ? [] : [invertAt(pipe, at) - (outside - inside) / 2];
  });
  return undersides.length === 0 ? NaN : Math.min(...undersides) - trench.bedding.depth;
}
