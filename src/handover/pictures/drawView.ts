/**
 * The picture of a view as marks: each kind of earth, of built things and of limits in a layer of its
 * own, of which only what is seen is there.
 */
import { layer } from "../../sheets/index.js";
import type { Mark, Pen } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import { frameSides, MARGIN, type Fit } from "./fit.js";
import type { Lens } from "./lens.js";
import { LineCutter } from "./lineCutter.js";
import { dot } from "./normals.js";
import { northMarks } from "./northMarks.js";
import { chainsOf, outlinesOf } from "./outlines.js";
import { litColour, lightOf } from "./shades.js";
import { nameMarks, type NameSeats } from "./viewNames.js";
import type { ViewScene } from "./viewScene.js";
import { facetOf, FacetMap, halfOf, twiceArea, type Facet, type Spot } from "./visible.js";

/** A line of the legend: an area of a colour, or a line of a pen. */
export type LegendRow = { name: string } & ({ color: string } | { pen: Pen });

export interface DrawnView {
  marks: Mark[];
  /** Of what is seen. */
  legend: readonly LegendRow[];
  /** What a reader must know of how it is drawn; null for nothing. */
  note: string | null;
}

/** m: what is less apart in depth is the error of 32-bit numbers. */
const SLACK = 0.002;

const INK = "#26323a";

const PEN = {
  edge: { width: 0.25, color: INK },
  outline: { width: 0.3, color: INK },
  contour: { width: 0.13, color: "#8a6234" },
  heavy: { width: 0.26, color: "#8a6234" },
  buried: { width: 0.3, color: "#2f6f73", dash: [1.6, 1] },
} satisfies Record<string, Pen>;

/** Covers the hair between areas that meet, mm. */
const SEAM = 0.16;

const says = words.pictures.view;

/** Draws what a lens shows. Throws when nothing at all is seen. */
export function drawView(scene: ViewScene, lens: Lens, fit: Fit, seats?: NameSeats): DrawnView {
  const facets = facetsOf(scene, lens, fit);
  if (facets.length === 0) throw new Error("a view in which nothing is seen: turn the camera");
  const map = new FacetMap(facets);
  const cut = new LineCutter(map, lens, fit);
  const earth = earthMarks(scene, map);
  const lines = scene.lines.map((line) => ({ ...line, seen: cut.seen(line.strokes) }));
  const drawn = {
    buried: cut.hidden(scene.buried),
    outlines: cut.seen(scene.outlines),
    edges: cut.seen(scene.edges),
  };
  const usual = cut.seen(scene.contours.usual);
  const heavy = cut.seen(scene.contours.heavy);
  const seen = lines.filter((line) => line.seen.length > 0);
  return {
    note: scene.note,
    marks: [
      ...earth.marks,
      layer(says.contours, [...lineMarks(usual, PEN.contour), ...lineMarks(heavy, PEN.heavy)]),
      ...seen.map((line) => layer(line.name, lineMarks(line.seen, line.pen))),
      layer(says.buried, lineMarks(drawn.buried, PEN.buried)),
      layer(says.outlines, lineMarks(drawn.outlines, PEN.outline)),
      layer(says.edges, lineMarks(drawn.edges, PEN.edge)),
      northMarks(lens, [fit.page - MARGIN - 12, MARGIN + 12]),
      ...nameMarks(scene, { lens, fit, map }, Object.values(drawn).flat(), seats),
    ].filter((mark) => mark.kind !== "group" || mark.marks.length > 0),
    legend: [
      ...earth.legend,
      ...(drawn.buried.length > 0 ? [{ name: says.buried, pen: PEN.buried }] : []),
      ...seen.flatMap(({ name, pen, listed }) => (listed ? [{ name, pen }] : [])),
    ],
  };
}

/** The faces that are turned to the eye, on the paper and cut off at the picture's sides. */
export function facetsOf(scene: ViewScene, lens: Lens, fit: Fit): Facet[] {
  const sides = frameSides(fit);
  const lit = lightOf(lens.axes);
  return scene.faces.flatMap(({ corners, normal, layer: name }): Facet[] => {
    if (dot(normal, lens.toEye(corners[0])) <= 0) return [];
    const before = lens.inFront(corners);
    if (before.length < 3) return [];
    const shown = before.map((corner) => fit.at(lens.show(corner)));
    const nearness = shown.reduce((sum, { near }) => sum + near, 0) / shown.length;
    const slack = SLACK * lens.perMetre(nearness);
    const facet = facetOf(shown, { slack, layer: name, light: lit(normal) });
    if (facet === null) return [];
    const outline = sides.reduce<readonly Spot[]>(halfOf, facet.outline);
    return outline.length < 3 ? [] : [{ ...facet, outline }];
  });
}

/** mm² that must be seen of a layer for the legend to name it. */
const LEAST_SHOWN = 0.5;

/** The layers of earth and built things, and those of which enough is seen to be named. */
function earthMarks(scene: ViewScene, map: FacetMap): { marks: Mark[]; legend: LegendRow[] } {
  const seen = new Map<string, Map<number, (readonly Spot[])[]>>();
  for (const facet of map.facets) {
    const tones = seen.get(facet.layer) ?? new Map<number, (readonly Spot[])[]>();
    seen.set(facet.layer, tones);
    const parts = tones.get(facet.light) ?? [];
    parts.push(...map.partsOf(facet));
    tones.set(facet.light, parts);
  }
  const legend: LegendRow[] = [];
  const marks = [...scene.layers].map(([name, color]): Mark => {
    const tones = [...(seen.get(name) ?? [])].toSorted(([a], [b]) => a - b);
    const area = tones.flatMap(([, parts]) => parts.map(twiceArea)).reduce((a, b) => a + b, 0) / 2;
    if (area > LEAST_SHOWN && name !== says.trunks) legend.push({ name, color });
    return layer(
      name,
      tones.flatMap(([light, parts]) => toneMarks(parts, litColour(color, light))),
    );
  });
  return { marks, legend };
}

function toneMarks(parts: readonly (readonly Spot[])[], color: string): Mark[] {
  const lines = outlinesOf(parts);
  if (lines.length === 0) return [];
  return [{ kind: "path", lines, closed: true, fill: { color }, pen: { width: SEAM, color } }];
}

function lineMarks(lines: readonly (readonly [Spot, Spot])[], pen: Pen): Mark[] {
  const chains = chainsOf(lines);
  return chains.length === 0 ? [] : [{ kind: "path", lines: chains, closed: false, pen }];
}
