import { fiveFigures, schemeOf } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { HandoverJob } from "../job.js";
import { inHtml } from "./escaped.js";
import { figureRows } from "./figureRows.js";
import { findingsShown, leftOutLines } from "./leftOut.js";
import { madeDay } from "./madeDay.js";

/**
 * What the page says before its script has run, and where none ever does: what it is of, when it was
 * made, the five figures, what was found and every caution.
 */
export function plainPart({ site, schemeId, estimate, madeAt }: HandoverJob): string {
  const said = words.viewer;
  const figures = figureRows(fiveFigures(estimate, site), site).map(
    ({ title, figure, unit, more }) =>
      `<li><b>${inHtml(title)}</b> ${inHtml([`${figure} ${unit}`.trim(), more].filter(Boolean).join(", "))}</li>`,
  );
  const open = findingsShown(site, estimate).filter(({ accepted }) => accepted === undefined);
  const findings = open.map(
    ({ level, text, source }) =>
      `<li><b>${inHtml(words.book.findings.levels[level])}:</b> ${inHtml(text)} (${inHtml(source)})</li>`,
  );
  const cautions = estimate.cautions.map((caution) => `<li>${inHtml(caution)}</li>`);
  const list = (title: string, items: readonly string[]): string =>
    items.length === 0 ? "" : `<h2>${inHtml(title)}</h2>\n<ul>\n${items.join("\n")}\n</ul>\n`;
  return `<main class="plain">
<h1>${inHtml(site.name)}</h1>
<p>${inHtml(said.plain.what(schemeOf(site, schemeId).name))}</p>
<p>${inHtml(said.made(madeDay(madeAt)))}</p>
<noscript><p><b>${inHtml(said.noScript)}</b></p></noscript>
<p>${inHtml(said.estimateOnly)}</p>
${leftOutLines(site)
  .map((line) => `<p>${inHtml(line)}</p>\n`)
  .join(
    "",
  )}${list(said.plain.figures, figures)}${list(said.findings, findings)}${list(words.leaf.beforeYouDig, cautions)}</main>`;
}
