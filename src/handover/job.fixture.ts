/** The example sites as jobs to hand over. */
import { readFileSync } from "node:fs";
import { estimate } from "../estimate/index.js";
import { readSite } from "../site/index.js";
import type { Scheme, Site } from "../site/index.js";
import type { HandoverJob } from "./job.js";

/** When every test's file says that it was made. */
export const MADE_AT = "2026-11-27T14:05:00Z";

/** "alder-flat" or "quarry-lane", as it is or changed; the first scheme unless another is named. */
export function exampleJob(
  name: string,
  change: (site: Site) => Site = (site) => site,
  schemeId?: string,
): HandoverJob {
  const file = new URL(`../../shared/sites/${name}.site.json`, import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error(`${name}: cannot be read`);
  const site = change(read.value);
  const scheme = schemeId ?? site.schemes[0]!.id;
  return { site, schemeId: scheme, estimate: estimate(site, scheme), madeAt: MADE_AT };
}

/** The site with its first scheme changed. */
export function withScheme(site: Site, change: Partial<Scheme>): Site {
  return {
    ...site,
    schemes: site.schemes.map((scheme, i) => (i === 0 ? { ...scheme, ...change } : scheme)),
  };
}
