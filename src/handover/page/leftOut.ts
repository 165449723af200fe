/** What a copy that was made for somebody else does not show. */
import type { Estimate } from "../../estimate/index.js";
import type { Finding, Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import { LEFT_OUT, type LeftOut } from "../choices.js";

/** Whether the site is a copy that was made without this. */
export const isWithout = ({ leftOut = [] }: Site, what: LeftOut): boolean => leftOut.includes(what);

/** The findings, but those about prices where there are none. */
export function findingsShown(site: Site, { findings }: Estimate): readonly Finding[] {
  if (!isWithout(site, "costs")) return findings;
  return findings.filter(({ code }) => !code.startsWith("cost."));
}

/** A line for each thing that the copy was made without; none for a whole one. */
export function leftOutLines(site: Site): string[] {
  return LEFT_OUT.filter((what) => isWithout(site, what)).map((what) => words.viewer.leftOut[what]);
}
