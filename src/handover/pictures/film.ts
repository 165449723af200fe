/** Views one after the other as pages of one size: the ground turns or changes, the paper does not. */
import type { Stage } from "../../estimate/index.js";
import type { Page } from "../../sheets/index.js";
import type { HandoverJob } from "../job.js";
import { drawView, type LegendRow } from "./drawView.js";
import { extentOf, fitTo, jointExtent, withSpare, type Extent } from "./fit.js";
import { lensOf } from "./lens.js";
import type { Place } from "./normals.js";
import type { ParallelLook } from "./usualCamera.js";
import { pageOfView } from "./viewPage.js";
import type { NameSeats } from "./viewNames.js";
import type { ViewScene } from "./viewScene.js";

export interface Shot {
  stage: Stage;
  scene: ViewScene;
  look: ParallelLook;
}

export interface FilmOptions {
  /** mm across the page. */
  page: number;
  /** Called before each picture is drawn; may throw to stop. */
  before: () => Promise<void>;
}

/** A page for each shot, all of one size and scale, about the middle of the ground. */
export async function filmOf(
  job: HandoverJob,
  shots: readonly Shot[],
  { page, before }: FilmOptions,
): Promise<Page[]> {
  const pivot = middleOf(shots.map(({ scene }) => scene));
  const lenses = shots.map(({ look, scene }) => lensOf(look, scene.origin));
  const extent = withSpare(
    shots.map(({ scene }, i) => extentOf(scene, lenses[i]!, pivot)).reduce(jointExtent),
  );
  const seats: NameSeats = new Map();
  const drawn = [];
  for (const [i, { scene }] of shots.entries()) {
    await before();
    const lens = lenses[i]!;
    const fit = fitTo(movedTo(extent, lens.show(pivot)), page);
    drawn.push({ fit, view: drawView(scene, lens, fit, seats) });
  }
  const legend = jointLegend(drawn.map(({ view }) => view.legend));
  return drawn.map(({ fit, view }, i) =>
    pageOfView(job, shots[i]!.stage, { drawn: view, fit, legend }),
  );
}

/** The middle of all that is there, from the scenes' origin, which is the ground's and so one. */
function middleOf(scenes: readonly ViewScene[]): Place {
  const [low, high] = [
    [Infinity, Infinity, Infinity],
    [-Infinity, -Infinity, -Infinity],
  ];
  for (const { faces } of scenes) {
    for (const { corners } of faces) {
      for (const corner of corners) {
        corner.forEach((part, k) => {
          low[k] = Math.min(low[k]!, part);
          high[k] = Math.max(high[k]!, part);
        });
      }
    }
  }
  return [(low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2];
}

function movedTo(extent: Extent, { x, y }: { x: number; y: number }): Extent {
  return {
    west: extent.west + x,
    east: extent.east + x,
    north: extent.north + y,
    south: extent.south + y,
  };
}

/** Every row once, areas before lines, in the order in which they first come. */
function jointLegend(legends: readonly (readonly LegendRow[])[]): LegendRow[] {
  const rows = new Map<string, LegendRow>();
  for (const row of legends.flat()) if (!rows.has(row.name)) rows.set(row.name, row);
  const all = [...rows.values()];
  return [...all.filter((row) => "color" in row), ...all.filter((row) => "pen" in row)];
}
