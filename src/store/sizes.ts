/** Typical sizes that things are placed with; every one can be typed over. No source. */
import type { Site } from "../site/index.js";
import { FOOT } from "../units/index.js";

const INCH = FOOT / 12;

/** Typical sizes in m (slopes as said), round in the site's own units. Common practice, no source. */
export function sizesToPlace(site: Site) {
  const us = site.units === "us";
  return {
    overdig: us ? FOOT : 0.3,
    bedding: us ? 6 * INCH : 0.15,
    underTop: us ? FOOT : 0.3,
    pipeBedding: us ? 4 * INCH : 0.1,
    zone: us ? 6 * INCH : 0.15,
    trench: us ? 2 * FOOT : 0.6,
    invert: us ? 2 * FOOT : 0.6,
    // A field's trench: width, gravel under the pipe and over its top, and ground over the pipe.
    fieldTrench: us ? 3 * FOOT : 0.9,
    fieldUnder: us ? 6 * INCH : 0.15,
    fieldOver: us ? 2 * INCH : 0.05,
    fieldCover: us ? FOOT : 0.3,
    cover: us ? 1.5 * FOOT : 0.45,
    bed: us
      ? { length: 20 * FOOT, width: 10 * FOOT, height: 2.5 * FOOT, wall: 4 * INCH }
      : { length: 6, width: 3, height: 0.75, wall: 0.1 },
    sand: us ? 1.5 * FOOT : 0.45,
    gravel: us ? 8 * INCH : 0.2,
    storey: us ? 9 * FOOT : 2.7,
    topLayer: us ? 8 * INCH : 0.2,
    layer: us ? 3 * FOOT : 1,
    bench: us ? 4 * FOOT : 1.2,
    beyond: us ? 3 * FOOT : 1,
    putBack: us ? 6 * INCH : 0.15,
    step: us ? 0.5 * FOOT : 0.1,
    // Run per 1 of rise. None of them says that a wall will stand: the soil and the depth do.
    holeWall: 1,
    trenchWall: 0,
    fillRun: 2,
    // Drop per run.
    drainFall: 0.02,
  };
}

/** Cover that a pumped pipe is laid with until the person says otherwise, m. */
export const coverToPlace = (site: Site): number => sizesToPlace(site).cover;

/** Rise and tread of a bench until the person says otherwise, m. */
export const benchToPlace = (site: Site): number => sizesToPlace(site).bench;
