/** Views of stages as SVG files. */
import { STAGE_NAMES, type Stage } from "../../estimate/index.js";
import { svgOf, type FontBytes } from "../../sheets/index.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverJob, MakeOptions } from "../job.js";
import { standingLines } from "../standing.js";
import { viewPage, type ViewOptions } from "./viewPage.js";

/** Stages that tell most: the open holes, and the ground when all is done. */
const USUAL_STAGES: readonly Stage[] = ["dug", "backfilled"];

/** A view of a stage as the text of an SVG file. Pure; throws like `estimate`. */
export function viewSvg(
  job: HandoverJob,
  stage: Stage,
  options: ViewOptions = {},
  fonts?: FontBytes,
): string {
  const about = standingLines(job).map(([label, text]) =>
    label === "" ? text : `${label}: ${text}`,
  );
  return svgOf(viewPage(job, stage, options), {
    about: about.join("\n"),
    ...(fonts !== undefined && { fonts }),
  });
}

/** A file for each stage that is asked for. */
export async function makeViews(
  job: HandoverJob,
  options: MakeOptions = {},
): Promise<readonly HandoverFile[]> {
  const { stages = USUAL_STAGES, ...view } = options.choices?.views ?? {};
  const fonts = await options.fonts?.();
  const files: HandoverFile[] = [];
  for (const stage of stages) {
    options.signal?.throwIfAborted();
    files.push({
      name: fileName(job, `view ${STAGE_NAMES[stage]}`, "svg"),
      type: "image/svg+xml",
      data: viewSvg(job, stage, view, fonts),
    });
    options.progress?.(files.length, stages.length);
    // Lets a message that cancels come in between.
    await Promise.resolve();
  }
  return files;
}
