/** Corners of the lot on a plan, by the numbers that the stakes' list calls them. */
import {
  limitCorners,
  lotLinesOf,
  staysInGround,
  type PlanPoint,
  type Site,
  type SurveyPoint,
} from "../../site/index.js";
import { words } from "../../words/index.js";
import type { Mark, Spot } from "../paper.js";
import { kindName } from "./drawLimits.js";
import { PENS, TYPE } from "./pens.js";
import { RANK, type PlanDrawing } from "./planDrawing.js";
import { symbolSample } from "./symbols.js";

const texts = words.sheetsPlan;

/** mm of the ring on a corner. */
const RING = 0.8;
/** m: nearer than this, a corner and a survey point are one mark, as in the stakes' list. */
const SAME = 0.05;
/** mm on paper: nearer than this they look like one. */
const LOOKS_SAME = 1.2;

/** Each corner with its number; `marked` adds the mark in the ground that was measured there or beside it. */
export function drawLotCorners(drawing: PlanDrawing, site: Site, marked: boolean): void {
  const lines = lotLinesOf(site);
  for (const line of lines) {
    (limitCorners(line)?.places ?? []).forEach((at, i) => {
      const { name = line.id } = line;
      const corner = lines.length > 1 ? texts.cornerOf(name, i + 1) : texts.corner(i + 1);
      drawCorner(
        drawing,
        at,
        kindName(line),
        marked ? withPoint(drawing, site, corner, at) : corner,
      );
    });
  }
}

function drawCorner(drawing: PlanDrawing, at: PlanPoint, layer: string, name: string): void {
  if (!drawing.symbol(layer, at, ring, RING)) return;
  drawing.row(texts.legend.corner, symbolSample(ring));
  const label = { lines: [name], size: TYPE.small, anchor: drawing.spot(at), clear: RING + 0.6 };
  drawing.label(RANK.figures, { ...label, must: true });
}

/** A corner's name with that of the nearest point whose note says that it stays in the ground. */
function withPoint(
  drawing: PlanDrawing,
  { survey }: Site,
  corner: string,
  [x, y]: PlanPoint,
): string {
  const off = (one: SurveyPoint): number => Math.hypot(one.x - x, one.y - y);
  const [nearest] = survey.points.filter(staysInGround).sort((a, b) => off(a) - off(b));
  if (nearest === undefined || drawing.mm(off(nearest)) > LOOKS_SAME) return corner;
  return off(nearest) < SAME
    ? texts.cornerAtPoint(corner, nearest.id)
    : texts.cornerBesidePoint(corner, nearest.id);
}

const ring = (at: Spot): Mark[] => [
  { kind: "circle", at, radius: RING, pen: PENS.middle, fill: { color: "#ffffff" } },
];
