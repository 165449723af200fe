/**
 * Raised beds and buildings where a line in plan meets them. They stand on the ground and are no part
 * of it: each is drawn whole, from its level base up, as the estimate counts it. Where the ground
 * stands above a base the two overlap, and the estimate says so in a finding. Site coordinates, m.
 */
import { rectangle } from "../dig/index.js";
import type { Place, SectionPlace } from "../ground/index.js";
import type { Bed, Building, PlanPoint, Scheme } from "../site/index.js";
import { legsOf, type Leg } from "./pipesAcross.js";
import type { SectionArea } from "./sectionTypes.js";
import { hasCome } from "./stages.js";
import type { Stage } from "./types.js";

/** A stretch of the line, from station to station. m. */
type Span = readonly [from: number, to: number];

/**
 * The beds and buildings of a scheme cut open along a line at a stage, in building order. A building
 * stands at every stage, a bed's walls from "set" on, and its fillings from "backfilled" on, as the
 * dig counts them: one rectangle for each stretch of each filling, walls and building, fillings from
 * the bottom up and no higher than the walls. Along an outline's side what lies to the left of the
 * line shows, as it does of the ground.
 */
export function worksAcross(
  scheme: Scheme,
  stage: Stage,
  line: readonly PlanPoint[],
): SectionArea[] {
  const legs = legsOf(line);
  return scheme.works.flatMap((work) => {
    if (work.kind === "building") return buildingAcross(work, legs);
    return work.kind === "bed" ? bedAcross(work, stage, legs) : [];
  });
}

function buildingAcross({ id, outline, base, height }: Building, legs: readonly Leg[]): Areas {
  const built = { material: "building", kind: "structure", work: id } as const;
  return spansWithin(outline, legs).map((span) => upright(built, span, base, base + height));
}

type Areas = SectionArea[];

function bedAcross(bed: Bed, stage: Stage, legs: readonly Leg[]): Areas {
  if (!hasCome(stage, "set")) return [];
  const { base, height, id, at, bearing } = bed;
  const whole = spansWithin(rectangle(at, bearing, bed.length, bed.width), legs);
  const [length, width] = [bed.length - 2 * bed.wall, bed.width - 2 * bed.wall];
  const hollow = length > 0 && width > 0;
  const inside = hollow ? spansWithin(rectangle(at, bearing, length, width), legs) : [];
  const wall = { material: "wall", kind: "structure", work: id } as const;
  const walls = without(whole, inside).map((span) => upright(wall, span, base, base + height));
  return hasCome(stage, "backfilled") ? [...fillingsOf(bed, inside), ...walls] : walls;
}

/** The fillings of a bed from the bottom up, as far as its walls reach. */
function fillingsOf({ id, base, height, filling }: Bed, inside: readonly Span[]): Areas {
  const areas: Areas = [];
  let filled = 0;
  for (const { material, depth } of filling) {
    const put = { material, kind: "placed", work: id } as const;
    const top = Math.min(filled + depth, height);
    if (top <= filled) break;
    for (const span of inside) areas.push(upright(put, span, base + filled, base + top));
    filled = top;
  }
  return areas;
}

/** A rectangle between two stations and two elevations. */
function upright(
  what: Pick<SectionArea, "material" | "kind" | "work">,
  [from, to]: Span,
  low: number,
  high: number,
): SectionArea {
  const outline: SectionPlace[] = [
    [from, low],
    [to, low],
    [to, high],
    [from, high],
  ];
  return { ...what, outline, holes: [], area: (to - from) * (high - low) };
}

/** A place nearer to the line than this is on it, and a shorter span is none, m. */
const ON = 1e-9;

/** The stretches of a line within a simple polygon in plan, in order; those that touch are one. */
function spansWithin(outline: readonly Place[], legs: readonly Leg[]): Span[] {
  const spans: Span[] = [];
  for (const leg of legs) {
    for (const [from, to] of spansOfLeg(outline, leg)) {
      const last = spans.at(-1);
      if (last && from - last[1] <= ON) spans[spans.length - 1] = [last[0], to];
      else spans.push([from, to]);
    }
  }
  return spans;
}

/**
 * Between the first and second, third and fourth … side that a leg crosses it is inside. A side is
 * crossed when one of its ends lies to the left and the other does not: so each corner counts once.
 */
function spansOfLeg(outline: readonly Place[], leg: Leg): Span[] {
  const { from, u, length, station } = leg;
  const seen = outline.map(([x, y]) => {
    const [dx, dy] = [x - from[0], y - from[1]];
    const off = dy * u[0] - dx * u[1];
    return { along: dx * u[0] + dy * u[1], off: Math.abs(off) <= ON ? 0 : off };
  });
  const crossed = seen.flatMap((a, i) => {
    const b = seen[(i + 1) % seen.length]!;
    if (a.off > 0 === b.off > 0) return [];
    return [a.along + (a.off / (a.off - b.off)) * (b.along - a.along)];
  });
  crossed.sort((a, b) => a - b);
  const spans: Span[] = [];
  for (let i = 1; i < crossed.length; i += 2) {
    const start = Math.max(0, crossed[i - 1]!);
    const end = Math.min(length, crossed[i]!);
    if (end - start > ON) spans.push([station + start, station + end]);
  }
  return spans;
}

/** What is left of stretches once others, within them and in order, are taken out. */
function without(whole: readonly Span[], taken: readonly Span[]): Span[] {
  return whole.flatMap(([from, to]) => {
    const left: Span[] = [];
    let start = from;
    for (const [a, b] of taken) {
      if (b <= from || a >= to) continue;
      if (a - start > ON) left.push([start, a]);
      start = b;
    }
    if (to - start > ON) left.push([start, to]);
    return left;
  });
}
