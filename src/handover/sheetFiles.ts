/** The printed sheets as files: one PDF, and perhaps each sheet as a drawing of its own. */
import { pdfOf, sheetsOf, svgOf, usualPaper } from "../sheets/index.js";
import { schemeOf } from "../estimate/index.js";
import { words } from "../words/index.js";
import { fileName } from "./job.js";
import type { HandoverFile, HandoverMaker } from "./job.js";

/** Throws without fonts to write with: where they are read from is the caller's to say. */
export const makeSheetFiles: HandoverMaker = async (job, options = {}) => {
  const { progress, signal, choices } = options;
  if (options.fonts === undefined)
    throw new Error("expected fonts to write the sheets with, got none");
  const { site, schemeId, estimate, madeAt } = job;
  const date = madeAt.slice(0, 10);
  const paper = usualPaper(site);
  const pages = sheetsOf({ site, schemeId, estimate, date, paper });
  const fonts = await options.fonts();
  const drawings = choices?.sheets?.drawings ?? false;
  const parts = pages.length * (drawings ? 2 : 1);
  const pdf = await pdfOf(pages, {
    fonts,
    title: site.name,
    subject: words.sheets.subject(schemeOf(site, schemeId).name),
    date,
    ...(site.project?.preparer === undefined ? {} : { author: site.project.preparer }),
    progress: (done) => progress?.(done, parts),
    ...(signal === undefined ? {} : { signal }),
  });
  const files: HandoverFile[] = [
    { name: fileName(job, "sheets", "pdf"), type: "application/pdf", data: pdf },
  ];
  if (!drawings) return files;
  for (const page of pages) {
    signal?.throwIfAborted();
    const name = fileName(job, `sheet ${page.number} ${page.title}`, "svg");
    files.push({ name, type: "image/svg+xml", data: svgOf(page, { fonts }) });
    progress?.(pages.length + page.number, parts);
  }
  return files;
};
