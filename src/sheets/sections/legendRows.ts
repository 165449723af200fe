/** Legends of profiles and sections: only what is drawn, in the order of the materials. */
import type { Section } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import { fillSample } from "../earthFills.js";
import { nameOfMaterial } from "../earthNames.js";
import type { Fill, LegendRow, Pen } from "../paper.js";
import { line } from "../strokes.js";
import { PENS } from "./pens.js";

/** What a legend asks of a drawing. */
export interface Shown {
  finished: Section;
  rockTops: readonly unknown[];
  /** Elevations of its lower and upper edge, m: what lies wholly beyond is not seen. */
  low: number;
  high: number;
}

const lineSample = (pen: Pen): LegendRow["sample"] => [
  line(
    [
      [0, 2],
      [10, 2],
    ],
    pen,
  ),
];

function isSeen(
  outline: readonly (readonly [number, number])[],
  low: number,
  high: number,
): boolean {
  const heights = outline.map(([, z]) => z);
  return Math.max(...heights) > low + 0.01 && Math.min(...heights) < high - 0.01;
}

export function sectionLegend(
  site: Site,
  fills: ReadonlyMap<string, Fill>,
  shown: readonly Shown[],
): LegendRow[] {
  const { lines } = words.sheetsSections;
  const there = new Set(
    shown.flatMap(({ finished, low, high }) =>
      [...finished.areas, ...finished.standing]
        .filter(({ outline }) => isSeen(outline, low, high))
        .map(({ material }) => material),
    ),
  );
  const earth = [...fills]
    .filter(([material]) => there.has(material))
    .map(([material, fill]) => ({
      sample: fillSample(fill),
      name: nameOfMaterial(site, material),
    }));
  const rock = shown.some(({ rockTops }) => rockTops.length > 0);
  return [
    { sample: lineSample(PENS.ground), name: lines.finished },
    { sample: lineSample(PENS.found), name: lines.found },
    { sample: lineSample(PENS.dug), name: lines.dug },
    ...(rock ? [{ sample: lineSample(PENS.rockTop), name: lines.rock }] : []),
    ...earth,
  ];
}
