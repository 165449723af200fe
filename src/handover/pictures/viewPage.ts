/**
 * A view of a stage as a page of marks: each kind of earth and of built things in a layer of its own,
 * of which only what is seen is there. It is slanted, so nothing can be measured on it.
 */
import { STAGE_NAMES } from "../../estimate/index.js";
import type { Stage } from "../../estimate/index.js";
import { layer, lineObstacles, placeLabels } from "../../sheets/index.js";
import type { Mark, Page, Pen } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import type { HandoverJob } from "../job.js";
import { fitOf, frameSides, MARGIN, WIDTH, type Fit } from "./fit.js";
import { footMarks } from "./footMarks.js";
import { lensOf, type Lens, type ViewCamera } from "./lens.js";
import { LineCutter } from "./lineCutter.js";
import { dot } from "./normals.js";
import { northMarks } from "./northMarks.js";
import { chainsOf, outlinesOf } from "./outlines.js";
import { litColour, lightOf } from "./shades.js";
import { viewScene, type ViewScene } from "./viewScene.js";
import { facetOf, FacetMap, halfOf, twiceArea, type Facet, type Spot } from "./visible.js";

export interface ViewOptions {
  camera?: ViewCamera;
  /** Width over height of the picture; as it fits for a parallel view of everything. */
  aspect?: number;
}

/** A view into the hill from one side, as the page begins with. */
export const USUAL_CAMERA = { kind: "parallel", bearing: 20, dip: 36 } as const;

/** mm of a name's letters. */
const NAME = 3;

/** m: what is less apart in depth is the error of 32-bit numbers. */
const SLACK = 0.002;

const PEN = {
  edge: { width: 0.25, color: "#26323a" },
  outline: { width: 0.3, color: "#26323a" },
  contour: { width: 0.13, color: "#8a6234" },
  buried: { width: 0.3, color: "#2f6f73", dash: [1.6, 1] },
  leader: { width: 0.15, color: "#26323a" },
} satisfies Record<string, Pen>;

/** Covers the hair between areas that meet, mm. */
const SEAM = 0.06;

const says = words.pictures.view;

/** The view as a page. Throws like `estimate`, and when nothing at all is seen. */
export function viewPage(job: HandoverJob, stage: Stage, options: ViewOptions = {}): Page {
  const scene = viewScene(job, stage);
  const camera = options.camera ?? USUAL_CAMERA;
  const lens = lensOf(camera, scene.origin);
  const fit = fitOf(scene, lens, camera, options.aspect ?? 1.6);
  const facets = facetsOf(scene, lens, fit);
  if (facets.length === 0) throw new Error("a view in which nothing is seen: turn the camera");
  const map = new FacetMap(facets);
  const cut = new LineCutter(map, lens, fit);
  const { earth, shown } = earthMarks(scene, map);
  const drawn = {
    buried: cut.hidden(scene.buried),
    outlines: cut.seen(scene.outlines),
    edges: cut.seen(scene.edges),
  };
  const labels = labelMarks(scene, lens, fit, Object.values(drawn).flat());
  const rows = [...scene.layers].filter(([name]) => shown.has(name));
  const foot = footMarks(job, stage, rows, MARGIN + fit.height);
  return {
    id: `view:${stage}`,
    title: `${job.site.name}: ${STAGE_NAMES[stage]}`,
    number: 1,
    scale: null,
    window: null,
    width: WIDTH,
    height: round(foot.bottom),
    marks: [
      ...earth,
      lineLayer(says.contours, cut.seen(scene.contours), PEN.contour),
      lineLayer(says.buried, drawn.buried, PEN.buried),
      lineLayer(says.outlines, drawn.outlines, PEN.outline),
      lineLayer(says.edges, drawn.edges, PEN.edge),
      northMarks(lens, [WIDTH - MARGIN - 12, MARGIN + 12]),
      ...labels,
      ...foot.marks,
    ].filter((mark) => mark.kind !== "group" || mark.marks.length > 0),
  };
}

const round = (value: number): number => Math.round(value * 100) / 100;

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
function earthMarks(scene: ViewScene, map: FacetMap): { earth: Mark[]; shown: Set<string> } {
  const seen = new Map<string, Map<number, (readonly Spot[])[]>>();
  for (const facet of map.facets) {
    const tones = seen.get(facet.layer) ?? new Map<number, (readonly Spot[])[]>();
    seen.set(facet.layer, tones);
    const parts = tones.get(facet.light) ?? [];
    parts.push(...map.partsOf(facet));
    tones.set(facet.light, parts);
  }
  const shown = new Set<string>();
  const earth = [...scene.layers].map(([name, colour]): Mark => {
    const tones = [...(seen.get(name) ?? [])].toSorted(([a], [b]) => a - b);
    const area = tones.flatMap(([, parts]) => parts.map(twiceArea)).reduce((a, b) => a + b, 0) / 2;
    if (area > LEAST_SHOWN) shown.add(name);
    return layer(
      name,
      tones.flatMap(([light, parts]) => toneMarks(parts, litColour(colour, light))),
    );
  });
  return { earth, shown };
}

function toneMarks(parts: readonly (readonly Spot[])[], color: string): Mark[] {
  const lines = outlinesOf(parts);
  if (lines.length === 0) return [];
  return [{ kind: "path", lines, closed: true, fill: { color }, pen: { width: SEAM, color } }];
}

function lineLayer(name: string, lines: readonly (readonly [Spot, Spot])[], pen: Pen): Mark {
  const chains = chainsOf(lines);
  return layer(
    name,
    chains.length === 0 ? [] : [{ kind: "path", lines: chains, closed: false, pen }],
  );
}

/** mm² that a line of a work costs under a name: names stand clear of the works where they can. */
const LINE_WEIGHT = 40;

/** Names of the works, each with a line to its place; one that finds no room is left out. */
function labelMarks(
  scene: ViewScene,
  lens: Lens,
  fit: Fit,
  lines: readonly (readonly [Spot, Spot])[],
): Mark[] {
  const wishes = scene.names.flatMap(({ name, at }, i) => {
    const [place] = lens.inFront([at]);
    if (place === undefined) return [];
    const { x, y } = fit.at(lens.show(place));
    const isIn = x > MARGIN && x < MARGIN + fit.width && y > MARGIN && y < MARGIN + fit.height;
    if (!isIn) return [];
    return [
      {
        ...({ id: String(i), lines: [name], face: "strong", size: NAME, halo: true } as const),
        ...{ priority: scene.names.length - i, at: [x, y] as const, gap: 1.5, reach: 60 },
      },
    ];
  });
  const room = { left: MARGIN, top: MARGIN, width: fit.width, height: fit.height };
  const { placed } = placeLabels(
    wishes,
    lines.flatMap((line) => lineObstacles(line, 0.2, LINE_WEIGHT)),
    room,
  );
  const leaders = placed.flatMap(({ leader }) => (leader === null ? [] : [leader]));
  return [
    layer(says.names, [
      ...(leaders.length === 0
        ? []
        : [{ kind: "path", lines: leaders, closed: false, pen: PEN.leader } as const]),
      ...placed.flatMap(({ marks }) => marks),
    ]),
  ];
}
