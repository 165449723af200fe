import { moundFootprint, type MoundAsk } from "../hydraulics/index.js";
import {
  materialsOf,
  type Bed,
  type Finding,
  type PlanPoint,
  type Quantity,
  type Scheme,
  type Site,
} from "../site/index.js";
import { rectangleInPlan } from "./planDistance.js";
import { flowRule } from "./rules.js";

/** The mound that a bed of sand would need on its slope if it stood in earth sides and not in walls. */
export interface MoundSize {
  /** Id of the bed, and its name. */
  bed: string;
  name: string;
  /** Fall of the ground as found square to the bed's long side, drop per run. */
  slope: number;
  /** m, along the bed's long side and square to it; null where the ground is as steep as the sides. */
  size: { length: Quantity; width: Quantity } | null;
}

const MANUAL =
  "US EPA 625/1-80-012 (1980), Example 7-1; slope correction: Ohio State University Extension Bulletin 813, Tables 3 and 4";

/**
 * Mounds for the beds of a scheme that have sand (or other filling) under their gravel. A bed beyond
 * the survey, or without gravel over something, gives none. `ground` is the ground as found at a
 * place, m, NaN beyond the survey. `areaWanted` (m² of soil) is shared among the field by bottom
 * area (`field`, m²).
 */
export function moundSizes(
  site: Site,
  scheme: Scheme,
  ground: (place: PlanPoint) => number,
  field: { areaWanted: number | null; bottom: number },
): MoundSize[] {
  return scheme.works.flatMap((work) => {
    if (work.kind !== "bed") return [];
    const slope = slopeAcross(work, ground);
    const depths = sandAndGravel(work, site);
    if (slope === null || depths === null) return [];
    const [bedLength, bedWidth] = insideOf(work);
    if (!(bedLength > 0 && bedWidth > 0)) return [];
    const named = (scheme.flow?.field ?? []).includes(work.id) && field.bottom > 0;
    const ask: MoundAsk = {
      bedWidth,
      bedLength,
      slope,
      ...depths,
      capEdge: flowRule("mound-cap-edge", scheme).value,
      capMiddle: flowRule("mound-cap-middle", scheme).value,
      side: flowRule("mound-side", scheme).value,
      ...(named && field.areaWanted !== null
        ? { basalArea: (field.areaWanted * bedLength * bedWidth) / field.bottom }
        : {}),
    };
    return [{ bed: work.id, name: work.name, slope, size: sizeOf(ask) }];
  });
}

/** Says where no mound would close, since its side never meets the ground. */
export function moundFindings(mounds: readonly MoundSize[]): Finding[] {
  return mounds
    .filter((mound) => mound.size === null)
    .map((mound) => ({
      level: "note",
      code: "sizing.mound-too-steep",
      where: mound.bed,
      text: `The ground under ${mound.name} falls ${Math.round(100 * mound.slope)}%: earth sides of a mound would never meet it. Only a bed with walls, or steeper sides under Limits, fits there.`,
      source: MANUAL,
    }));
}

function sizeOf(ask: MoundAsk): MoundSize["size"] {
  const mound = moundFootprint(ask);
  if (mound === null) return null;
  const metres = (name: string, value: number): Quantity["inputs"][number] => ({
    name,
    value,
    unit: "m",
  });
  const heights = [
    metres("D, sand under the upslope edge", ask.sand),
    metres("E = D + fall × A, downslope", mound.sandDownslope),
    metres("F, gravel", ask.bed),
  ];
  const side = { name: "sides, run per 1 of rise", value: ask.side, unit: "" };
  return {
    length: {
      value: mound.length,
      unit: "m",
      formula: "B + 2K, K = side × ((D + E) ÷ 2 + F + H)",
      inputs: [
        metres("B, bed inside", ask.bedLength),
        metres("K, at either end", mound.ends),
        ...heights,
        metres("H, cover over the middle", ask.capMiddle),
        side,
      ],
      source: MANUAL,
    },
    width: {
      value: mound.width,
      unit: "m",
      formula: `J + A + I, J = side × (D + F + G) ÷ (1 + side × fall), ${
        mound.setByBasalArea
          ? "I = soil wanted ÷ B − A"
          : "I = side × (E + F + G) ÷ (1 − side × fall)"
      }`,
      inputs: [
        metres("A, bed inside", ask.bedWidth),
        metres("J, upslope", mound.upslope),
        metres("I, downslope", mound.downslope),
        ...heights,
        metres("G, cover over the edge", ask.capEdge),
        { name: "fall of the ground across the bed", value: ask.slope, unit: "" },
        side,
        ...(ask.basalArea === undefined
          ? []
          : [{ name: "soil wanted under and below the bed", value: ask.basalArea, unit: "m²" }]),
      ],
      source: MANUAL,
    },
  };
}

const insideOf = (bed: Bed): readonly [number, number] => [
  bed.length - 2 * bed.wall,
  bed.width - 2 * bed.wall,
];

/**
 * Fall of the ground between the bed's long sides, by the means of each side's corners; null beyond
 * the survey. Any fall along the bed is left out: a mound lies along the contour.
 */
function slopeAcross(bed: Bed, ground: (place: PlanPoint) => number): number | null {
  const [a, b, c, d] = rectangleInPlan(bed).points.map(ground);
  if (a === undefined || b === undefined || c === undefined || d === undefined) return null;
  const fall = Math.abs((a + d) / 2 - (b + c) / 2) / bed.width;
  return Number.isFinite(fall) ? fall : null;
}

/** Depths of the topmost gravel and of all filling under it; null where there is nothing under it. */
function sandAndGravel(bed: Bed, site: Site): { sand: number; bed: number } | null {
  const materials = materialsOf(site);
  const top = bed.filling.findLastIndex(
    ({ material }) => materials.get(material)?.kind === "aggregate",
  );
  const gravel = bed.filling[top];
  const sand = bed.filling.slice(0, Math.max(0, top)).reduce((sum, { depth }) => sum + depth, 0);
  return gravel === undefined || !(sand > 0) ? null : { sand, bed: gravel.depth };
}
