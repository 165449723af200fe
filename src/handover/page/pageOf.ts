import { estimate } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { LeftOut } from "../choices.js";
import { copyWithout } from "../copy/copyWithout.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverJob, HandoverMaker } from "../job.js";
import { inHtml, inScript } from "./escaped.js";
import { plainPart } from "./plainPart.js";
import { PLACES } from "./template.js";

/**
 * One HTML file that shows the site in any browser, from the disk and without a network. `template`
 * is what `templateOf` made; one in which a place is missing or doubled throws. What is left out is
 * nowhere in it: not in what is shown, nor in the site file inside.
 */
export function pageOf(
  template: string,
  whole: HandoverJob,
  leftOut: readonly LeftOut[] = [],
): HandoverFile {
  const job = jobWithout(whole, leftOut);
  const { site, schemeId, madeAt } = job;
  const data = `<script type="application/json" id="site" data-scheme="${inHtml(schemeId)}" data-made="${inHtml(madeAt)}">${inScript(JSON.stringify(site))}</script>`;
  const put: Readonly<Record<keyof typeof PLACES, string>> = {
    title: inHtml(`${site.name} · Bankyard`),
    plain: plainPart(job),
    site: data,
  };
  return {
    name: fileName(job, words.viewer.making.file(leftOut), "html"),
    type: "text/html",
    data: filled(template, put),
  };
}

/** The job as somebody else gets it: its figures are those of the copy. */
function jobWithout(job: HandoverJob, leftOut: readonly LeftOut[]): HandoverJob {
  const site = copyWithout(job.site, leftOut);
  if (leftOut.length === 0) return { ...job, site };
  return { ...job, site, estimate: estimate(site, job.schemeId) };
}

/** The page's maker: it asks its caller for the template, which the app and the command line have. */
export const makePage: HandoverMaker = async (job, options = {}) => {
  if (options.pageTemplate === undefined) throw new Error("expected a template of the page");
  const template = await options.pageTemplate();
  options.signal?.throwIfAborted();
  return [pageOf(template, job, options.choices?.page?.without)];
};

/** The template with every place filled. What is put in is never searched for places. */
function filled(template: string, put: Readonly<Record<keyof typeof PLACES, string>>): string {
  const places = Object.entries(PLACES) as [keyof typeof PLACES, string][];
  for (const [name, place] of places) {
    const count = template.split(place).length - 1;
    if (count !== 1)
      throw new Error(`expected one place for the ${name} in the page, got ${count}`);
  }
  const nameOf = new Map(places.map(([name, place]) => [place, name]));
  const found = new RegExp([...nameOf.keys()].join("|"), "g");
  return template.replace(found, (place) => put[nameOf.get(place)!]);
}
