/** Where the sheets of sections cut the works: lines on the plan, with letters and the way one looks. */
import type { Estimate } from "../../estimate/index.js";
import type { PlanPoint, Scheme, Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { Mark, Spot } from "../paper.js";
import { cutsOf } from "../sections/cuts.js";
import { inRoom } from "./clip.js";
import { headMark } from "./lineStyle.js";
import { INK, pen, PENS, TYPE } from "./pens.js";
import { RANK, WEIGHT, type PlanDrawing } from "./planDrawing.js";

const texts = words.sheetsPlan;

const LINE = pen(0.13, INK.black, [3, 0.7, 0.6, 0.7]);
/** mm: stroke beyond each end of the line, stroke towards what is seen, head at its tip. */
const BEYOND = 2;
const AWAY = 2.2;
const HEAD = 1.5;

/** Where the lines of all sections begin and end, m. */
export function sectionPlaces(site: Site, scheme: Scheme, estimate: Estimate): PlanPoint[] {
  return cutsOf(site, scheme, estimate).flatMap(({ line }) => [...line]);
}

/** Draws the line of every section; an end that lies out of the room is marked where the line comes in. */
export function drawSections(
  drawing: PlanDrawing,
  site: Site,
  scheme: Scheme,
  estimate: Estimate,
): void {
  for (const { letter, line } of cutsOf(site, scheme, estimate)) {
    const [from, to] = [drawing.spot(line[0]), drawing.spot(line[1])];
    const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (long === 0) continue;
    const u: Spot = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
    if (
      drawing.lineOnPaper(texts.layers.sections, [from, to], { pen: LINE }, WEIGHT.light).length ===
      0
    )
      continue;
    // Both ends or none: one letter alone tells no section.
    const [first, last] = [firstInRoom(drawing, from, to), firstInRoom(drawing, to, from)];
    if (first === null || last === null) continue;
    drawEnd(drawing, first, [-u[0], -u[1]], sightOf(u), letter);
    drawEnd(drawing, last, u, sightOf(u), `${letter}′`);
    drawing.row(texts.legend.section, sample());
  }
}

/** The way one looks who sees a line go from left to right; y is down on paper. */
const sightOf = ([x, y]: Spot): Spot => [y, -x];

/** mm from one place that is tried to the next. */
const STEP = 0.5;

/** The first place on the way from one spot to another whose mark lies whole in the room; null for none. */
function firstInRoom({ frame: { room } }: PlanDrawing, from: Spot, to: Spot): Spot | null {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  for (let off = 0; off <= long; off += STEP) {
    const t = long === 0 ? 0 : off / long;
    const spot: Spot = [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    if (inRoom(room, spot, BEYOND + AWAY + HEAD)) return spot;
  }
  return null;
}

function drawEnd(drawing: PlanDrawing, end: Spot, out: Spot, sight: Spot, letter: string): void {
  const { marks, elbow, tip } = endMarks(end, out, sight);
  drawing.put(texts.layers.sections, marks);
  drawing.keepOff([end, elbow, tip], WEIGHT.strong);
  const lettering = { lines: [letter], size: TYPE.strong, face: "strong" as const };
  const beside: Spot = [elbow[0] + 2 * out[0], elbow[1] + 2 * out[1]];
  const behind: Spot = [elbow[0] - 2.2 * sight[0], elbow[1] - 2.2 * sight[1]];
  const seats = [{ middle: beside }, { middle: behind }];
  drawing.label(RANK.letters, { ...lettering, seats, anchor: elbow, clear: 1, must: true });
}

function endMarks(end: Spot, out: Spot, sight: Spot): { marks: Mark[]; elbow: Spot; tip: Spot } {
  const elbow: Spot = [end[0] + BEYOND * out[0], end[1] + BEYOND * out[1]];
  const tip: Spot = [elbow[0] + AWAY * sight[0], elbow[1] + AWAY * sight[1]];
  const marks: Mark[] = [
    { kind: "path", lines: [[end, elbow, tip]], closed: false, pen: PENS.strong },
    headMark(tip, sight, HEAD),
  ];
  return { marks, elbow, tip };
}

function sample(): Mark[] {
  const [left, right]: [Spot, Spot] = [
    [2.3, 3],
    [7.7, 3],
  ];
  return [
    { kind: "path", lines: [[left, right]], closed: false, pen: LINE },
    ...endMarks(left, [-1, 0], [0, -1]).marks,
    ...endMarks(right, [1, 0], [0, -1]).marks,
  ];
}
