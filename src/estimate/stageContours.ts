import { groundContours, placeLabels } from "../ground/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { groundOf, schemeOf } from "./estimate.js";
import { groundAtStage } from "./section.js";
import type { ContourLine, Stage } from "./types.js";

/** A place for a contour's figure, which is written centred on it. */
export interface ContourLabel {
  /** On the line, site coordinates, m. */
  at: PlanPoint;
  /** Degrees counter-clockwise from east, more than −90 and at most 90: never upside down. */
  angle: number;
}

/** A contour line with the places for its figure. */
export interface LabelledContour extends ContourLine {
  labels: readonly ContourLabel[];
}

/** The contours of a stage: what `--contours` prints. */
export interface StageContours {
  format: "bankyard-contours";
  version: 1;
  /** The site's name, and the scheme's id. */
  site: string;
  scheme: string;
  stage: Stage;
  /** m between levels. */
  step: number;
  /** From the lowest up. Closed lines repeat their first place; higher ground is on the left. */
  lines: readonly LabelledContour[];
}

/**
 * Contours of the ground of a scheme at a stage, at every multiple of `step` m; every fifth is
 * heavy and has first choice of places for its figure. Along a vertical wall lines run on the wall,
 * so that each is closed or ends at the survey's edge. Throws on a step that is not more than zero,
 * and like `estimate`.
 */
export function stageContours(
  site: Site,
  schemeId: string,
  stage: Stage,
  step: number,
): StageContours {
  const scheme = schemeOf(site, schemeId);
  const base = groundOf(site);
  const { ground } = groundAtStage(site, scheme, base, stage);
  const isHeavy = (elevation: number): boolean => Math.round(elevation / step) % 5 === 0;
  const lines = groundContours(ground, step);
  const first = lines.map((_, i) => i).sort((a, b) => rank(a) - rank(b));
  function rank(i: number): number {
    return isHeavy(lines[i]!.elevation) ? 0 : 1;
  }
  const { x, y, hull, origin } = base.tin;
  const width = span(Array.from(hull, (v) => x[v]!));
  const height = span(Array.from(hull, (v) => y[v]!));
  const reach = Math.max(width, height);
  const labels = lines.map((): ContourLabel[] => []);
  const room = { length: reach / LENGTH, spacing: reach / SPACING, apart: reach / APART };
  for (const { line, at, angle } of placeLabels(
    first.map((i) => lines[i]!),
    room,
  )) {
    labels[first[line]!]!.push({ at: [at[0] + origin[0], at[1] + origin[1]], angle });
  }
  return {
    format: "bankyard-contours",
    version: 1,
    site: site.name,
    scheme: scheme.id,
    stage,
    step,
    lines: lines.map(({ elevation, closed, line }, i) => ({
      elevation,
      heavy: isHeavy(elevation),
      closed,
      line: line.map(([px, py]) => [px + origin[0], py + origin[1]] as const),
      labels: labels[i]!,
    })),
  };
}

/** Shares of the survey's width: a figure's length, the way to the next one, and their distance. */
const LENGTH = 30;
const SPACING = 2.5;
const APART = 18;

function span(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
