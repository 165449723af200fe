/** A small sketch of the lot for the cover: what lies where, north up, no scale of its own. */
import { lotEdge, workOutline } from "../../estimate/index.js";
import { limitKind, type Limit, type PlanPoint, type Work } from "../../site/index.js";
import type { FlowItem } from "../flow.js";
import { movedMarks } from "../moved.js";
import type { Mark, SheetJob, Spot } from "../paper.js";
import { lineObstacles, placeLabels, type LabelWish, type Obstacle } from "../place.js";
import { boxQuad } from "../quads.js";
import { box, GREY, layer, line, PENS, words } from "../strokes.js";
import { words as texts } from "../../words/index.js";

const PAD = 4;
const NAME_SIZE = 1.9;
const EDGE = { width: 0.25, color: GREY };

/** The sketch in a box of a column's width. */
export function sketchItem(job: SheetJob, width: number, height: number): FlowItem {
  const marks = sketchMarks(job, width, height);
  return {
    height: height + 2,
    draw: (left, top) => [layer(texts.sheetsFront.sketch, movedMarks(marks, left, top))],
  };
}

function sketchMarks({ site, schemeId }: SheetJob, width: number, height: number): Mark[] {
  const works = site.schemes.find(({ id }) => id === schemeId)?.works ?? [];
  const limits = site.limits ?? [];
  const edge = lotEdge(site);
  const toPaper = fitted([...edge, ...lotCorners(limits)], width, height);
  const lines = (path: readonly PlanPoint[]): Spot[] => path.map(toPaper);
  const shapes = works.flatMap((work) => {
    const outline = workOutline(work);
    return outline === null ? [] : [{ work, ring: lines(outline) }];
  });
  const behind = limits.flatMap(({ path, closed }) =>
    path === undefined ? [] : [lines(closed === true ? [...path, path[0]!] : path)],
  );
  const places = limits.flatMap(({ at }) => (at === undefined ? [] : [toPaper(at)]));
  const names = namesOf(shapes, behind, places, { width, height });
  return [
    box(0, 0, width, height, { pen: PENS.thin }),
    {
      kind: "group",
      layer: texts.sheetsFront.sketch,
      clip: [0.2, 0.2, width - 0.4, height - 0.4],
      marks: [
        { kind: "path", lines: [lines(edge)], closed: true, pen: { ...EDGE, dash: [0.6, 0.9] } },
        ...limits.flatMap((limit) => limitMarks(limit, toPaper)),
        ...shapes.map(({ ring }): Mark => ({
          kind: "path",
          lines: [ring],
          closed: true,
          pen: PENS.thin,
          fill: { color: "#dddddd" },
        })),
        ...names,
      ],
    },
    ...northMarks(width),
  ];
}

/** Corners of the lot lines; other limits may lie far off and are cut at the box. */
function lotCorners(limits: readonly Limit[]): PlanPoint[] {
  return limits.flatMap(({ kind, path }) => (kind === "lot-line" ? (path ?? []) : []));
}

function fitted(
  points: readonly PlanPoint[],
  width: number,
  height: number,
): (point: PlanPoint) => Spot {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(
    (width - 2 * PAD) / Math.max(right - left, 1e-6),
    (height - 2 * PAD) / Math.max(high - low, 1e-6),
  );
  return ([x, y]) => [
    width / 2 + (x - (left + right) / 2) * scale,
    height / 2 - (y - (low + high) / 2) * scale,
  ];
}

function limitMarks(
  { kind, at, path, closed }: Limit,
  toPaper: (point: PlanPoint) => Spot,
): Mark[] {
  const isLot = kind === "lot-line";
  const pen = isLot ? PENS.thick : EDGE;
  if (path !== undefined && path.length > 1) {
    const isArea = closed ?? false;
    return [{ kind: "path", lines: [path.map(toPaper)], closed: isArea, pen }];
  }
  if (at === undefined) return [];
  const radius = limitKind(kind)?.id === "tree" ? 0.7 : 0.9;
  return [{ kind: "circle", at: toPaper(at), radius, pen: EDGE }];
}

/** Names of the works, as far as there is room for them. */
function namesOf(
  shapes: readonly { work: Work; ring: readonly Spot[] }[],
  behind: readonly (readonly Spot[])[],
  places: readonly Spot[],
  { width, height }: { width: number; height: number },
): Mark[] {
  const wishes = shapes.map(({ work, ring }, i): LabelWish => {
    const at: Spot = [mean(ring.map(([x]) => x)), mean(ring.map(([, y]) => y))];
    const face = "text";
    return {
      id: work.id,
      lines: [work.name],
      face,
      size: NAME_SIZE,
      priority: (work.kind === "trench" ? 0 : 100) - i,
      at,
      gap: 2.5,
      reach: 26,
    };
  });
  const obstacles = [
    ...shapes.flatMap(({ ring }): Obstacle[] => lineObstacles(ring, 0.4, 20, true)),
    ...behind.flatMap((path): Obstacle[] => lineObstacles(path, 0.4, 12)),
    ...places.map(([x, y]): Obstacle => ({ quad: boxQuad(x - 1, y - 1, 2, 2), weight: 6 })),
  ];
  const north: Obstacle = { quad: boxQuad(width - 9, 0, 9, 14), weight: Infinity, text: true };
  const room = { left: 1, top: 1, width: width - 2, height: height - 2 };
  return placeLabels(wishes, [...obstacles, north], room).placed.flatMap(({ marks, leader }) => [
    ...marks,
    ...(leader === null ? [] : [line(leader, PENS.fine)]),
  ]);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function northMarks(width: number): Mark[] {
  const x = width - 5;
  return [
    line(
      [
        [x, 12.5],
        [x, 5.5],
      ],
      PENS.thin,
    ),
    line(
      [
        [x - 1.1, 7.6],
        [x, 5.2],
        [x + 1.1, 7.6],
      ],
      PENS.thin,
    ),
    words(texts.sheets.north, [x, 4.2], "strong", 2.6, { anchor: "middle" }),
  ];
}
