/** Pictures of the scene to be saved: one as it is seen, and short animations. */
import { create } from "zustand";
import { STAGE_NAMES, STAGES, type Stage } from "../../estimate/index.js";
import { fileName, type HandoverJob } from "../../handover/index.js";
import type { SceneShooter } from "../../scene/index.js";
import { GifDesk, useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { downloadBlob } from "../files.js";
import { drawTags } from "./drawTags.js";
import { withCaption } from "./caption.js";
import { useShooter } from "./shooter.js";

const says = words.pictures.page;

/** What of the job stands on a picture and in its file's name. */
export type Subject = Pick<HandoverJob, "site" | "schemeId" | "estimate" | "madeAt">;

/** Frames of a whole turn, and ms that each stands; ms of a stage. */
export const TURN_FRAMES = 30;
const TURN_MS = 110;
const STAGE_MS = 1200;

/** px across an animation, and bytes that it should stay below. */
const WIDEST = 800;
const NARROWEST = 320;
const MOST_BYTES = 4_000_000;
/** px of a CSS px on the still picture, and the most px that a side of it may have. */
const STILL_SCALE = 2;
const MOST_SIDE = 4096;

interface PicturesState {
  /** Share done of the animation that is being made; null while none is. */
  share: number | null;
  /** Cancels it. */
  stop: (() => void) | null;
}

export const usePictures = create<PicturesState>()(() => ({ share: null, stop: null }));

function captionOf({ site, schemeId, madeAt }: Subject, stage: Stage): string[] {
  const scheme = site.schemes.find(({ id }) => id === schemeId)?.name ?? schemeId;
  const { madeBy, estimateOnly } = words.handoverFiles;
  return [
    says.caption(site.name, scheme, STAGE_NAMES[stage], madeAt.slice(0, 10)),
    `${madeBy}. ${estimateOnly}`,
    words.sheets.reserve,
  ];
}

async function shot(
  shooter: SceneShooter,
  width: number,
  height: number,
  turn?: number,
): Promise<ImageData> {
  const picture = await shooter.shoot(Math.round(width), Math.round(height), turn);
  if (picture === null) throw new Error(says.noCamera);
  return picture;
}

/** ms that the scene may take to draw what is to be on a picture. */
const MOST_WAIT = 30_000;

const nextFrame = (): Promise<number> => new Promise(requestAnimationFrame);

/** Waits, frame by frame, until the scene has it; throws what is `late` when it does not come. */
async function until(has: () => boolean, late: string): Promise<void> {
  const start = performance.now();
  while (!has()) {
    if (performance.now() - start > MOST_WAIT) throw new Error(late);
    await nextFrame();
  }
}

/**
 * Does it while the scene is drawn by day, and by night again afterwards where it was: a picture is
 * for whoever it is handed to, not for the light that it was made in.
 */
async function byDay<T>(shooter: SceneShooter, take: () => Promise<T>): Promise<T> {
  useShooter.setState({ byDay: true });
  try {
    await until(() => shooter.theme() === "light", says.lateByDay);
    return await take();
  } finally {
    useShooter.setState({ byDay: false });
  }
}

/** Saves the scene as it is seen, tags and all, by day, with a caption. */
export function savePng(shooter: SceneShooter, subject: Subject): Promise<void> {
  return byDay(shooter, () => stillOf(shooter, subject));
}

async function stillOf(shooter: SceneShooter, subject: Subject): Promise<void> {
  const { width, height } = shooter.size();
  const scale = Math.min(STILL_SCALE, MOST_SIDE / width, MOST_SIDE / height);
  const stage = shooter.stage();
  const picture = await shot(shooter, width * scale, height * scale);
  const { canvas, pen } = withCaption(picture, captionOf(subject, stage), scale);
  drawTags(pen, scale);
  const file = await new Promise<Blob | null>((tell) => canvas.toBlob(tell, "image/png"));
  if (file === null) throw new Error(says.noFile);
  saved(fileName(subject, says.pngName(STAGE_NAMES[stage]), "png"), file);
}

function saved(name: string, file: Blob): void {
  downloadBlob(name, file);
  useDesk.getState().tell(says.saved(name, Math.max(1, Math.round(file.size / 1000))));
}

/** Takes frame `i` of an animation, so many px wide. */
type TakeFrame = (i: number, width: number) => Promise<{ picture: ImageData; stage: Stage }>;

interface Film {
  subject: Subject;
  frames: number;
  delay: number;
  take: TakeFrame;
  signal: AbortSignal;
}

async function addFrame(gif: GifDesk, film: Film, i: number, width: number): Promise<number> {
  film.signal.throwIfAborted();
  const { picture, stage } = await film.take(i, width);
  const scale = Math.max(0.8, width / WIDEST);
  const { canvas, pen } = withCaption(picture, captionOf(film.subject, stage), scale);
  const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
  const size = await gif.add({
    width: canvas.width,
    height: canvas.height,
    data,
    delay: film.delay,
  });
  film.signal.throwIfAborted();
  return size;
}

/** The width at which all frames should stay below the most bytes, from what the first one takes. */
async function fittingWidth(film: Film, widest: number): Promise<number> {
  const gif = new GifDesk();
  try {
    const all = (await addFrame(gif, film, 0, widest)) * film.frames;
    const width = widest * Math.min(1, Math.sqrt((0.85 * MOST_BYTES) / all));
    return Math.round(Math.max(Math.min(NARROWEST, widest), width));
  } finally {
    gif.close();
  }
}

async function filmed(film: Film, widest: number): Promise<Blob> {
  const width = await fittingWidth(film, widest);
  const gif = new GifDesk();
  try {
    for (let i = 0; i < film.frames; i++) {
      await addFrame(gif, film, i, width);
      usePictures.setState({ share: (i + 1) / film.frames });
    }
    return new Blob([await gif.finish()], { type: "image/gif" });
  } finally {
    gif.close();
  }
}

/** Makes an animation that can be cancelled; says what came of it. */
async function film(shooter: SceneShooter, what: Omit<Film, "signal">, name: string) {
  const cancel = new AbortController();
  usePictures.setState({ share: 0, stop: () => cancel.abort() });
  try {
    const widest = Math.min(WIDEST, Math.round(shooter.size().width * STILL_SCALE));
    const make = (): Promise<Blob> => filmed({ ...what, signal: cancel.signal }, widest);
    saved(name, await byDay(shooter, make));
  } catch (fault) {
    if (!cancel.signal.aborted) throw fault;
    useDesk.getState().tell(words.handing.files.cancelled);
  } finally {
    usePictures.setState({ share: null, stop: null });
  }
}

/** Saves the stage that is shown, turning once about its middle. */
export function saveTurning(shooter: SceneShooter, subject: Subject): Promise<void> {
  const stage = shooter.stage();
  const take: TakeFrame = async (i, width) => {
    const { width: wide, height } = shooter.size();
    const turn = (360 * i) / TURN_FRAMES;
    return { picture: await shot(shooter, width, (width * height) / wide, turn), stage };
  };
  return film(
    shooter,
    { subject, frames: TURN_FRAMES, delay: TURN_MS, take },
    fileName(subject, says.turningName(STAGE_NAMES[stage]), "gif"),
  );
}

/** Shows a stage and waits until the scene has it. */
async function showStage(shooter: SceneShooter, stage: Stage): Promise<void> {
  useDesk.getState().show({ stage });
  await until(() => shooter.stage() === stage, says.stageLate(STAGE_NAMES[stage]));
  await nextFrame();
}

/** Saves all stages one after the other, then shows again the one that was shown. */
export async function saveStages(shooter: SceneShooter, subject: Subject): Promise<void> {
  const before = useDesk.getState().stage;
  const take: TakeFrame = async (i, width) => {
    const stage = STAGES[i]!;
    await showStage(shooter, stage);
    const { width: wide, height } = shooter.size();
    return { picture: await shot(shooter, width, (width * height) / wide), stage };
  };
  try {
    const what = { subject, frames: STAGES.length, delay: STAGE_MS, take };
    await film(shooter, what, fileName(subject, says.stagesName, "gif"));
  } finally {
    useDesk.getState().show({ stage: before });
  }
}
