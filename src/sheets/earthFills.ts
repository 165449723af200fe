/**
 * How each material of the ground and of works is laid out on paper: a pale tone, and a hatch that
 * tells it apart without any colour.
 */
import { soilShade } from "../estimate/index.js";
import type { SoilShade } from "../estimate/index.js";
import { materialsOf, NATIVE } from "../site/index.js";
import type { MaterialKind, Site } from "../site/index.js";
import { nameOfMaterial } from "./earthNames.js";
import type { Fill, Hatch, LegendRow, Mark, Pen } from "./paper.js";
import { INK } from "./strokes.js";

/** What a drawing tells apart. Aggregate is gravel, or sand where its name says so. */
export type EarthTone =
  | Exclude<MaterialKind, "aggregate">
  | "gravel"
  | SoilShade
  | "native"
  | "tank"
  | "wall"
  | "building";

/** Hatches keep to the thinnest width of ISO 128-2 that prints everywhere, mm. */
const hatchPen = (dash?: readonly number[], width = 0.18): Pen => ({
  width,
  color: INK,
  ...(dash && { dash }),
});

const lines = (turn: number, gap: number, dash?: readonly number[], width?: number): Hatch => ({
  kind: "lines",
  turn,
  gap,
  pen: hatchPen(dash, width),
});

const dots = (gap: number, size: number): Hatch => ({ kind: "dots", gap, size, color: INK });

const FILLS: Readonly<Record<EarthTone, Fill>> = {
  // Short upright strokes, as of roots.
  topsoil: { color: "#d9cab2", hatches: [lines(90, 1, [0.8, 1])] },
  soil: { color: "#f1e6cf", hatches: [dots(2.4, 0.32)] },
  sand: { color: "#f7f0dc", hatches: [dots(0.9, 0.2)] },
  // Slanting dashes, on the red that clay often has.
  clay: { color: "#e6c7b2", hatches: [lines(-60, 1.5, [1.4, 1.1])] },
  silt: { color: "#dfdac6", hatches: [dots(1.3, 0.2), lines(0, 2.6, [0.8, 1.8])] },
  gravel: { color: "#f4f2ea", hatches: [dots(1.7, 0.75)] },
  rippable: { color: "#e3e5e2", hatches: [lines(-45, 1.8)] },
  rock: { color: "#c9cdcc", hatches: [lines(45, 1, undefined, 0.25)] },
  fill: { color: "#eddfc0", hatches: [lines(0, 1.5, [2.4, 1.2])] },
  native: { color: "#f6eedd", hatches: [lines(45, 2.6), lines(-45, 2.6)] },
  tank: { color: "#dcdbd5", hatches: [dots(3.2, 0.5), lines(-45, 3.2, [0.9, 2.3])] },
  wall: { color: "#e6d8be", hatches: [lines(90, 1.2)] },
  building: { color: "#f0ede4", hatches: [lines(0, 2.8)] },
};

/** Water in a tank or standing in the ground. */
export const WATER_FILL: Fill = {
  color: "#e2edf2",
  hatches: [lines(0, 1.4, [3, 0.8, 0.8, 0.8])],
};

/** What a material id is drawn as; "tank" stands for any built thing that is not told apart. */
export function earthToneOf(site: Site, material: string): EarthTone {
  if (material === NATIVE) return "native";
  const known = materialsOf(site).get(material);
  if (!known) return material === "wall" || material === "building" ? material : "tank";
  const { kind } = known;
  if (kind !== "aggregate" && kind !== "soil") return kind;
  const shade = soilShade(known);
  if (kind === "soil") return shade;
  return shade === "sand" ? "sand" : "gravel";
}

/** Soils are many on one site, and dots of two sizes are not told apart. */
const MORE_SOILS: readonly Fill[] = [
  { color: "#ecdcc0", hatches: [lines(60, 2, [1, 1.5])] },
  { color: "#efe2c8", hatches: [dots(2.4, 0.32), lines(-30, 2.6, [1.4, 2])] },
  { color: "#e8d9bd", hatches: [lines(60, 2.4, [0.9, 1.6]), lines(-60, 2.4, [0.9, 1.6])] },
];

/** The same hatch, wider and turned: for the second and third material of one tone. */
function varied(tone: EarthTone, times: number): Fill {
  const fill = FILLS[tone];
  if (times === 0) return fill;
  const other = tone === "soil" ? MORE_SOILS[times - 1] : undefined;
  if (other !== undefined) return other;
  const wider = 1 + 0.45 * times;
  return {
    ...fill,
    hatches: (fill.hatches ?? []).map((hatch) =>
      hatch.kind === "lines"
        ? { ...hatch, turn: hatch.turn + 30 * times, gap: hatch.gap * wider }
        : { ...hatch, gap: hatch.gap * wider, size: hatch.size * (1 + 0.35 * times) },
    ),
  };
}

/**
 * The fill of each of the materials of one drawing. Two of one tone differ by their hatch's turn and
 * gap; who comes first in `materials` keeps the plain one, so give them in a stable order.
 */
export function earthFills(site: Site, materials: readonly string[]): ReadonlyMap<string, Fill> {
  const seen = new Map<EarthTone, number>();
  const fills = new Map<string, Fill>();
  for (const material of materials) {
    if (fills.has(material)) continue;
    const tone = earthToneOf(site, material);
    const before = seen.get(tone) ?? 0;
    seen.set(tone, before + 1);
    fills.set(material, varied(tone, before));
  }
  return fills;
}

/** Box of 10 × 4 mm for a legend, laid out with a fill. */
export function fillSample(fill: Fill): readonly Mark[] {
  const box = [
    [0, 0],
    [10, 0],
    [10, 4],
    [0, 4],
  ] as const;
  return [{ kind: "path", lines: [box], closed: true, fill, pen: { width: 0.18, color: INK } }];
}

/** Legend rows of the materials of one drawing, in their order. */
export function earthLegend(site: Site, materials: readonly string[]): LegendRow[] {
  return [...earthFills(site, materials)].map(([material, fill]) => ({
    sample: fillSample(fill),
    name: nameOfMaterial(site, material),
  }));
}
