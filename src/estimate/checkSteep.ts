/** Fields and beds that stand on ground steeper than a site's rule book calls steep. */
import { corners, trianglesIn, type BaseGround, type Tin } from "../ground/index.js";
import { bodiesOf } from "../safety/index.js";
import { ruleOf, type Finding, type Scheme, type Site } from "../site/index.js";
import { area as areaMeasure, pipeSlope } from "../units/index.js";

type Place = readonly [number, number];

/** m²: less of a field than this on steep ground is finer than a survey. */
const SOME_AREA = 0.01;

/** A finding for each field or bed of a scheme that stands on steep ground, with how much of it. */
export function checkSteep(
  site: Pick<Site, "rules" | "units">,
  scheme: Scheme,
  { tin }: BaseGround,
): Finding[] {
  const rule = ruleOf(site, "steep-from");
  const [ox, oy] = tin.origin;
  return bodiesOf(scheme).flatMap(({ work: id, from, shapes }) => {
    if (from !== "field") return [];
    const on = shapes.reduce((sum, { points }) => {
      const local = points.map(([x, y]): Place => [x - ox, y - oy]);
      return sum + areaOnSteep(tin, local, rule.value);
    }, 0);
    const work = scheme.works.find((one) => one.id === id);
    if (on < SOME_AREA || work === undefined) return [];
    const share = pipeSlope.print(rule.value, site.units, { digits: 0 });
    return [
      {
        ...{ level: "caution" as const, code: "ground.steep", where: id },
        text: `${areaMeasure.print(on, site.units)} of ${work.name} lie on ground of ${share} or steeper. Water may come out of the slope below it, and machines may not stand there: move it to flatter ground, or ask the office that gives the permit what it takes.`,
        source: `slope of the survey's triangles; steep from ${rule.source}`,
      },
    ];
  });
}

/** m² of an outline (local m) over triangles at least this steep. */
function areaOnSteep(tin: Tin, outline: readonly Place[], from: number): number {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
  return trianglesIn(tin, [...box]).reduce((sum, t) => {
    if (slopeOf(tin, t) < from) return sum;
    const sides = corners(tin, t).map((v): Place => [tin.x[v]!, tin.y[v]!]);
    return sum + ringArea(within(outline, sides));
  }, 0);
}

/** The part of an outline within a convex one that runs counter-clockwise (Sutherland and Hodgman). */
function within(outline: readonly Place[], convex: readonly Place[]): readonly Place[] {
  return convex.reduce<readonly Place[]>((left, a, i) => {
    const b = convex[(i + 1) % convex.length]!;
    const side = ([x, y]: Place): number => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
    return left.flatMap((p, k) => {
      const q = left[(k + 1) % left.length]!;
      const [sp, sq] = [side(p), side(q)];
      const kept: Place[] = sp >= 0 ? [p] : [];
      if (sp * sq < 0) {
        const t = sp / (sp - sq);
        kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
      }
      return kept;
    });
  }, outline);
}

/** Area of a ring in plan, m². */
export function ringArea(ring: readonly (readonly [number, number, ...unknown[]])[]): number {
  const [x0, y0] = ring[0] ?? [0, 0];
  const twice = ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length]!;
    return sum + (x - x0) * (ny - y0) - (nx - x0) * (y - y0);
  }, 0);
  return Math.abs(twice) / 2;
}

/** Rise per run of a triangle; 0 for one without area in plan. */
export function slopeOf(tin: Tin, t: number): number {
  const [a, b, c] = corners(tin, t);
  const [ux, uy, uz] = [tin.x[b]! - tin.x[a]!, tin.y[b]! - tin.y[a]!, tin.z[b]! - tin.z[a]!];
  const [vx, vy, vz] = [tin.x[c]! - tin.x[a]!, tin.y[c]! - tin.y[a]!, tin.z[c]! - tin.z[a]!];
  const twice = ux * vy - uy * vx;
  if (twice === 0) return 0;
  return Math.hypot((uz * vy - vz * uy) / twice, (ux * vz - vx * uz) / twice);
}
