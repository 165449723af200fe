/** Holes on a plan: top and foot, ticks down their slopes, order, floor, ladders. */
import { insideRings, type Estimate, type WorkQuantities } from "../../estimate/index.js";
import type { PlanPoint, Scheme, Site } from "../../site/index.js";
import { distance, elevation } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Mark, Spot } from "../paper.js";
import { lineObstacles } from "../place.js";
import { inRoom, ringLine } from "./clip.js";
import { drawOutline } from "./drawWorks.js";
import { lineSample } from "./lineStyle.js";
import { INK, pen, PENS, TYPE } from "./pens.js";
import { RANK, WEIGHT, type PlanDrawing } from "./planDrawing.js";
import { ladder, numbered, symbolSample } from "./symbols.js";
import { Way } from "./way.js";

const texts = words.sheetsPlan;

/** mm from one tick to the next on the top of a slope, and the shortest slope on paper that has any. */
const TICKS_EVERY = 1.8;
const LEAST_SLOPE = 0.9;

const TOP = PENS.strong;
const FOOT = pen(0.25, INK.black);
const FILL = pen(0.35, INK.black, [2.4, 0.7, 0.5, 0.7, 0.5, 0.7]);
const TICK = pen(0.18, INK.black);

/** The works of a scheme that are dug, in the order of digging: that in which they are built. */
export function dugWorks({ works }: Estimate): WorkQuantities[] {
  return works.filter(({ deepest, outlines }) => deepest > 0 && outlines !== undefined);
}

export function drawDigs(drawing: PlanDrawing, scheme: Scheme, estimate: Estimate): void {
  for (const work of scheme.works) {
    // What goes into the hole, behind its edges; a trench's floor is its foot already.
    if (work.kind !== "trench" && work.kind !== "strip") drawOutline(drawing, work, scheme);
  }
  for (const { fillFoot = [] } of estimate.works) drawFillFoot(drawing, fillFoot);
  for (const work of dugWorks(estimate)) drawHole(drawing, work);
  for (const { ladders } of estimate.holes) {
    for (const { at } of ladders) {
      if (drawing.symbol(texts.layers.digs, at, ladder, 1.8)) {
        drawing.row(texts.legend.ladder, symbolSample(ladder));
      }
    }
  }
}

/** The order of the holes and what each is, over all else. */
export function numberDigs(
  drawing: PlanDrawing,
  site: Site,
  scheme: Scheme,
  estimate: Estimate,
): void {
  const kinds = new Map(scheme.works.map(({ id, kind }) => [id, kind]));
  const all = dugWorks(estimate);
  all.forEach((work, i) => {
    const alike = all.filter((one) => one !== work && kinds.get(one.id) === kinds.get(work.id));
    numberHole(drawing, site, work, { order: i + 1, alike });
  });
}

/** The edge of a pad's fill: its foot outside the pad, and where it runs out against the cut. */
function drawFillFoot(drawing: PlanDrawing, rings: NonNullable<WorkQuantities["fillFoot"]>): void {
  for (const ring of rings) {
    const pieces = drawing.area(texts.layers.digs, [ring], { pen: FILL }, WEIGHT.usual);
    if (pieces.length > 0) drawing.row(texts.legend.fillFoot, lineSample({ pen: FILL }));
  }
}

function drawHole(drawing: PlanDrawing, { outlines }: WorkQuantities): void {
  const { daylight, toe } = outlines ?? { daylight: [], toe: [] };
  const feet = toe.map((ring) => ring.map((place) => drawing.spot(place)));
  for (const ring of toe) drawing.area(texts.layers.digs, [ring], { pen: FOOT }, WEIGHT.light);
  let any = false;
  for (const ring of daylight) {
    const pieces = drawing.area(texts.layers.digs, [ring], { pen: TOP }, WEIGHT.usual);
    any ||= pieces.length > 0;
    const edge = ringLine(ring.map((place) => drawing.spot(place)));
    const ticks = ticksDown(edge, feet).filter((tick) =>
      tick.every((spot) => inRoom(drawing.frame.room, spot)),
    );
    if (ticks.length > 0) {
      drawing.put(texts.layers.digs, [{ kind: "path", lines: ticks, closed: false, pen: TICK }]);
      for (const tick of ticks) drawing.keepOff(tick, WEIGHT.slope);
    }
  }
  if (!any) return;
  drawing.row(texts.legend.daylight, slopeSample());
  drawing.row(texts.legend.toe, lineSample({ pen: FOOT }));
}

/** Strokes from the top of a slope towards its foot, long and short in turns; none where it is steep. */
export function ticksDown(edge: readonly Spot[], feet: readonly (readonly Spot[])[]): Spot[][] {
  const way = new Way(edge);
  if (way.length === 0 || feet.length === 0) return [];
  return way.stationsEvery(TICKS_EVERY).flatMap((station, i) => {
    const top = way.at(station).at;
    const foot = nearestOn(top, feet);
    if (foot === null) return [];
    const far = Math.hypot(foot[0] - top[0], foot[1] - top[1]);
    if (far < LEAST_SLOPE) return [];
    const t = i % 2 === 0 ? 0.9 : 0.4;
    const end: Spot = [top[0] + t * (foot[0] - top[0]), top[1] + t * (foot[1] - top[1])];
    return [[top, end]];
  });
}

function nearestOn([x, y]: Spot, rings: readonly (readonly Spot[])[]): Spot | null {
  let best: Spot | null = null;
  let least = Infinity;
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const square = dx * dx + dy * dy;
      const along = square === 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / square;
      const t = Math.min(1, Math.max(0, along));
      const spot: Spot = [a[0] + t * dx, a[1] + t * dy];
      const far = Math.hypot(x - spot[0], y - spot[1]);
      if (far < least) [best, least] = [spot, far];
    });
  }
  return best;
}

/** The order of a hole in a dark disc on its floor, and its name, floor and depth beside it. */
function numberHole(
  drawing: PlanDrawing,
  { units }: Site,
  work: WorkQuantities,
  { order, alike }: { order: number; alike: readonly WorkQuantities[] },
): void {
  const at = placeInHole(work);
  if (at === null || !drawing.symbol(texts.layers.order, at, numbered(order), 2)) return;
  drawing.row(texts.legend.order, symbolSample(numbered(1)));
  const { lowest, highest } = work.floor;
  const [low, high] = [lowest, highest].map((z) => elevation.print(z, units));
  const lines = [
    work.name,
    low === high ? texts.dig.floor(low ?? "") : texts.dig.floors(low ?? "", high ?? ""),
    texts.dig.deep(distance.print(work.deepest, units)),
  ];
  const lettering = { lines, size: TYPE.usual, face: "strong" as const };
  // A leader over another hole of its kind would seem to name that one.
  const shun = alike
    .flatMap(({ outlines }) => outlines?.daylight ?? [])
    .filter((ring) => !insideRings(at, [ring]))
    .flatMap((ring) =>
      lineObstacles(
        ring.map((place) => drawing.spot(place)),
        0.1,
        0,
        true,
      ),
    )
    .map(({ quad }) => quad);
  const beside = { anchor: drawing.spot(at), clear: 2.6, shun };
  drawing.label(RANK.must, { ...lettering, ...beside, must: true });
}

/** A place well inside a hole's floor: the middle of a pit, a place half way along a trench. */
function placeInHole({ outlines }: WorkQuantities): PlanPoint | null {
  const rings =
    outlines === undefined || outlines.toe.length === 0 ? outlines?.daylight : outlines.toe;
  const [ring] = rings ?? [];
  if (ring === undefined || rings === undefined) return null;
  let best: PlanPoint | null = null;
  let most = -Infinity;
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
  const [west, east, south, north] = [
    Math.min(...xs),
    Math.max(...xs),
    Math.min(...ys),
    Math.max(...ys),
  ];
  const steps = 24;
  for (let i = 0; i <= steps; i++) {
    for (let j = 0; j <= steps; j++) {
      const at: PlanPoint = [
        west + (i / steps) * (east - west),
        south + (j / steps) * (north - south),
      ];
      if (!insideRings(at, rings)) continue;
      const foot = nearestOn(at, rings);
      const inside = foot === null ? 0 : Math.hypot(at[0] - foot[0], at[1] - foot[1]);
      const central = Math.hypot(at[0] - (west + east) / 2, at[1] - (south + north) / 2);
      const worth = inside - central / 1000;
      if (worth > most) [best, most] = [at, worth];
    }
  }
  return best ?? [ring[0]![0], ring[0]![1]];
}

function slopeSample(): Mark[] {
  const ticks = Array.from({ length: 5 }, (_, i): Spot[] => [
    [1 + 2 * i, 0.8],
    [1 + 2 * i, i % 2 === 0 ? 3.4 : 1.8],
  ]);
  return [
    {
      kind: "path",
      lines: [
        [
          [0.3, 0.8],
          [9.7, 0.8],
        ],
      ],
      closed: false,
      pen: TOP,
    },
    { kind: "path", lines: ticks, closed: false, pen: TICK },
  ];
}
