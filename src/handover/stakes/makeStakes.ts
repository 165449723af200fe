import { csvOf, CSV_TYPE } from "../csv.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverJob, HandoverMaker } from "../job.js";
import type { StakeChoices } from "../choices.js";
import { words } from "../../words/index.js";
import { gpxOf, GPX_TYPE } from "./gpx.js";
import { markPair } from "./marks.js";
import { stakeGroups, USUAL_STAKES } from "./points.js";
import { stakeRows, stationRows } from "./stakeTable.js";
import type { StakeOut } from "./stakeTable.js";

/** What is set out, from which marks. Throws where a mark that was picked cannot be used. */
export function stakeOut(job: HandoverJob, choices: StakeChoices = {}): StakeOut {
  const groups = stakeGroups(job, choices);
  const places = groups.flatMap(({ stakes }) => stakes.map(({ at }) => at));
  return {
    job,
    groups,
    marks: markPair(job.site, places, choices.marks),
    offset: choices.offset ?? USUAL_STAKES[job.site.units].offset,
  };
}

/** Stakes and pipe stations as CSV, and as GPX where the site is placed on the earth. */
export const makeStakes: HandoverMaker = (job, { choices, signal } = {}) => {
  signal?.throwIfAborted();
  const out = stakeOut(job, choices?.stakes);
  const { file } = words.stakes;
  const csv = (what: string, data: string): HandoverFile => ({
    name: fileName(job, what, "csv"),
    type: CSV_TYPE,
    data,
  });
  const gpx = gpxOf(out);
  return Promise.resolve([
    csv(file.stakes, csvOf(job, stakeRows(out))),
    csv(file.stations, csvOf(job, stationRows(out))),
    ...(gpx === null ? [] : [{ name: fileName(job, file.gpx, "gpx"), type: GPX_TYPE, data: gpx }]),
  ]);
};
