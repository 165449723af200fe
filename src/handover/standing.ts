import { schemeOf } from "../estimate/index.js";
import { words } from "../words/index.js";
import type { HandoverJob } from "./job.js";

/** A label and what it says. */
export type StandingLine = readonly [label: string, text: string];

/** What stands in every file that is handed over: whose, when made, what it is not, every caution. */
export function standingLines(job: HandoverJob): StandingLine[] {
  const said = words.handoverFiles;
  return [
    ...headLines(job),
    ...job.estimate.cautions.map((caution): StandingLine => [said.caution, caution]),
  ];
}

/** The same without the cautions. */
export function headLines({ site, schemeId, madeAt }: HandoverJob): StandingLine[] {
  const said = words.handoverFiles;
  return [
    [said.site, site.name],
    [said.scheme, schemeOf(site, schemeId).name],
    [said.made, `${madeAt} · ${said.madeBy}`],
    ["", said.estimateOnly],
  ];
}
