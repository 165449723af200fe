/** A view of a stage as a page of marks. It is slanted, so nothing can be measured on it. */
import { STAGE_NAMES } from "../../estimate/index.js";
import type { Stage } from "../../estimate/index.js";
import type { Page } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import type { HandoverJob } from "../job.js";
import { drawView, type DrawnView, type LegendRow } from "./drawView.js";
import { fitOf, MARGIN, WIDTH, type Fit } from "./fit.js";
import { footMarks } from "./footMarks.js";
import { lensOf, type ViewCamera } from "./lens.js";
import { usualCamera } from "./usualCamera.js";
import { viewScene, type ViewScene } from "./viewScene.js";

export interface ViewOptions {
  camera?: ViewCamera;
  /** Width over height of the picture; as it fits for a parallel view of everything. */
  aspect?: number;
  /** mm across the page: on a smaller one letters are larger beside the picture. */
  page?: number;
}

/** The view as a page. Throws like `estimate`, and when nothing at all is seen. */
export function viewPage(job: HandoverJob, stage: Stage, options: ViewOptions = {}): Page {
  return drawnPage(job, stage, viewScene(job, stage), options);
}

/** The same of a scene that is there already. */
export function drawnPage(
  job: HandoverJob,
  stage: Stage,
  scene: ViewScene,
  options: ViewOptions,
): Page {
  const camera = options.camera ?? usualCamera(job.site);
  const lens = lensOf(camera, scene.origin);
  const fit = fitOf(scene, lens, camera, options.aspect ?? 1.6, options.page ?? WIDTH);
  const drawn = drawView(scene, lens, fit);
  return pageOfView(job, stage, { drawn, fit, legend: drawn.legend });
}

/** What a page is put together from; a legend of several pictures makes their pages of one size. */
export interface PageParts {
  drawn: DrawnView;
  fit: Fit;
  legend: readonly LegendRow[];
}

/** A drawn view with its legend and title below it. */
export function pageOfView(
  job: HandoverJob,
  stage: Stage,
  { drawn, fit, legend }: PageParts,
): Page {
  const foot = footMarks(job, stage, legend, {
    ...{ top: MARGIN + fit.height, page: fit.page, note: drawn.note },
  });
  return {
    id: `view:${stage}`,
    title: words.pictures.view.heading(job.site.name, STAGE_NAMES[stage]),
    number: 1,
    scale: null,
    window: null,
    width: fit.page,
    height: Math.round(foot.bottom * 100) / 100,
    marks: [...drawn.marks, ...foot.marks],
  };
}
