import type { Estimate, Stage } from "../estimate/index.js";
import type { Site, Work } from "../site/index.js";
import { earthVolume, elevation, length, pipeSlope } from "../units/index.js";
import { words } from "../words/index.js";

/**
 * The one figure that a work's label carries, in the site's units; null before there is one. A pile
 * is what the whole job leaves over, so before the last stage its figure says "at the end".
 */
export function workFigure(
  site: Site,
  work: Work,
  estimate: Estimate | null,
  stage: Stage,
): string | null {
  switch (work.kind) {
    case "tank":
    case "pad":
    case "strip":
      return cutFigure(site, work, estimate);
    case "trench":
      return trenchFigure(site, work, estimate);
    case "bed":
      return words.scene.base(elevation.print(work.base, site.units));
    case "building":
      return words.scene.floorLevel(elevation.print(work.base, site.units));
    case "pile":
      return estimate === null
        ? null
        : words.scene.loose(
            earthVolume.print(estimate.earth.surplusLoose, site.units),
            stage === "backfilled" ? words.scene.leftOver : words.scene.atTheEnd,
          );
  }
}

function cutFigure(site: Site, work: Work, estimate: Estimate | null): string | null {
  const found = estimate?.works.find((w) => w.id === work.id);
  if (found === undefined) return null;
  const cut = Object.values(found.cut).reduce((sum, v) => sum + v, 0);
  const fill = Object.values(found.fill).reduce((sum, v) => sum + v, 0);
  if (cut === 0 && fill > 0) return words.scene.fill(earthVolume.print(fill, site.units));
  return words.scene.cut(earthVolume.print(cut, site.units));
}

function trenchFigure(
  site: Site,
  work: Extract<Work, { kind: "trench" }>,
  estimate: Estimate | null,
): string | null {
  const main =
    work.pipes.find((p) => p.service === "gravity") ??
    work.pipes.find((p) => p.service === "pressure") ??
    work.pipes[0];
  const run = estimate?.pipes.find((p) => p.id === main?.id);
  if (main === undefined || run === undefined) return null;
  if (main.service === "gravity") {
    return words.scene.fall(pipeSlope.print(run.fall, site.units));
  }
  if (main.service === "pressure" && run.drop < 0) {
    return words.scene.rise(length.print(-run.drop, site.units, { digits: 1 }));
  }
  return words.scene.long(length.print(run.length, site.units, { digits: 1 }));
}

/** Metres that places snap to: 0.1 m, or a quarter foot. */
export function snapStep(units: Site["units"]): number {
  return units === "us" ? 0.25 * 0.3048 : 0.1;
}

/** A scale bar: its length in m, about a fifth of the view wide, and how it reads. */
export function scaleBar(
  units: Site["units"],
  metresPerPixel: number,
  mostPixels: number,
): { metres: number; pixels: number; text: string } {
  const unit = units === "us" ? 0.3048 : 1;
  const most = (metresPerPixel * mostPixels) / unit;
  const decade = 10 ** Math.floor(Math.log10(most));
  const round = [5, 2, 1].find((n) => n * decade <= most) ?? 1;
  const metres = round * decade * unit;
  const count = Number((round * decade).toPrecision(3));
  return {
    metres,
    pixels: metres / metresPerPixel,
    text: `${count} ${units === "us" ? "ft" : "m"}`,
  };
}
