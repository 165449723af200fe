/** Pictures that need no screen: stills as PNG, and as GIF the ground turning and stage by stage. */
import { STAGE_NAMES, STAGES, type Stage } from "../../estimate/index.js";
import { svgOf } from "../../sheets/index.js";
import type { Page } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import type { PictureKind } from "../choices.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverJob, HandoverMaker } from "../job.js";
import { filmOf, type Shot } from "./film.js";
import { GifWriter } from "./gif.js";
import type { Raster } from "./raster.js";
import { usualCamera, type ParallelLook } from "./usualCamera.js";
import { drawnPage } from "./viewPage.js";
import { viewScene, type ViewScene } from "./viewScene.js";

const ALL: readonly PictureKind[] = ["still", "turning", "stages"];
const STILLS: readonly Stage[] = ["dug", "backfilled"];
const TURNED: Stage = "dug";

/** mm across a picture's page, which says how large its letters are; px across the files. */
const PAGE = 180;
const STILL_WIDTH = 1800;
const FILM_WIDTH = 800;

/** Frames of a whole turn, and ms that each stands; ms of a stage, and of the last one. */
const TURN = { frames: 30, delay: 110 };
const STAGE = { delay: 1200, last: 2400 };

const says = words.pictures.page;

/** Throws without a rasteriser to draw with: where its files are read from is the caller's to say. */
export const makePictures: HandoverMaker = async (job, options = {}) => {
  if (options.raster === undefined)
    throw new Error("expected a rasteriser to draw the pictures with, got none");
  const { what = ALL, stages = STILLS, turned = TURNED } = options.choices?.pictures ?? {};
  const counts = { still: stages.length, turning: 2 * TURN.frames, stages: 2 * STAGES.length };
  const of = ALL.reduce((sum, kind) => sum + (what.includes(kind) ? counts[kind] : 0), 0);
  let done = 0;
  const before = async (): Promise<void> => {
    options.signal?.throwIfAborted();
    options.progress?.(done++, of);
    // Lets a message that cancels come in between.
    await new Promise((go) => setTimeout(go));
  };
  const maker = new PictureMaker(job, await options.raster(), before);
  const files: HandoverFile[] = [];
  for (const stage of what.includes("still") ? stages : []) files.push(await maker.still(stage));
  if (what.includes("turning")) files.push(await maker.turning(turned));
  if (what.includes("stages")) files.push(await maker.stages());
  options.progress?.(of, of);
  return files;
};

class PictureMaker {
  readonly #scenes = new Map<Stage, ViewScene>();
  readonly #look: ParallelLook;

  constructor(
    private readonly job: HandoverJob,
    private readonly raster: Raster,
    private readonly before: () => Promise<void>,
  ) {
    this.#look = usualCamera(job.site);
  }

  async still(stage: Stage): Promise<HandoverFile> {
    await this.before();
    const options = { camera: this.#look, page: PAGE };
    const page = drawnPage(this.job, stage, this.#scene(stage), options);
    return {
      name: fileName(this.job, says.pngName(STAGE_NAMES[stage]), "png"),
      type: "image/png",
      data: this.raster.png(svgOf(page), STILL_WIDTH),
    };
  }

  turning(stage: Stage): Promise<HandoverFile> {
    const scene = this.#scene(stage);
    const shots = Array.from({ length: TURN.frames }, (_, i): Shot => {
      const bearing = this.#look.bearing + (360 * i) / TURN.frames;
      return { stage, scene, look: { ...this.#look, bearing } };
    });
    return this.#gif(shots, says.turningName(STAGE_NAMES[stage]), () => TURN.delay);
  }

  stages(): Promise<HandoverFile> {
    const shots = STAGES.map((stage): Shot => ({
      ...{ stage, scene: this.#scene(stage), look: this.#look },
    }));
    const delay = (i: number): number => (i === STAGES.length - 1 ? STAGE.last : STAGE.delay);
    return this.#gif(shots, says.stagesName, delay);
  }

  async #gif(
    shots: readonly Shot[],
    what: string,
    delay: (frame: number) => number,
  ): Promise<HandoverFile> {
    const pages = await filmOf(this.job, shots, { page: PAGE, before: this.before });
    const gif = new GifWriter();
    for (const [i, page] of pages.entries()) {
      await this.before();
      gif.add({ ...this.#px(page), delay: delay(i) });
    }
    return { name: fileName(this.job, what, "gif"), type: "image/gif", data: gif.finish() };
  }

  #px(page: Page): ReturnType<Raster["data"]> {
    return this.raster.data(svgOf(page), FILM_WIDTH);
  }

  /** Each stage is dug once for all its pictures. */
  #scene(stage: Stage): ViewScene {
    const known = this.#scenes.get(stage);
    if (known !== undefined) return known;
    const scene = viewScene(this.job, stage);
    this.#scenes.set(stage, scene);
    return scene;
  }
}
