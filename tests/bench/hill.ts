/** The ground and the hole that edits are measured on. */
import { digScheme } from "../../src/dig/index.js";
import { baseGround, type BaseGround } from "../../src/ground/index.js";
import type { Scheme, Site } from "../../src/site/index.js";
import { plainPad, plainSite } from "../../src/site/site.fixture.js";
import { seeded, type Seeded } from "../fixtures/seeded.js";

export const SEED = 20261125;

/** The hole's floor, m, and how deep it lies below the ground at the middle, m. */
export const FLOOR = { width: 3, length: 5 } as const;
/** With walls 1:1 the hole is 3 + 2 × 11.5 = 26 m across at the height of its middle. */
export const DEPTH = 11.5;

/** Height of the rolling ground, m. */
export function heightAt(x: number, y: number): number {
  return 100 + 3 * Math.sin(x / 15) + 2 * Math.cos(y / 11);
}

type Points = Site["survey"]["points"];

/** A hill ready to be dug: one hole that stays open, 1:1 walls, 1.5 m of clay over rock. */
export interface Hill {
  site: Site;
  scheme: Scheme;
  base: BaseGround;
}

/** So many random points over 100 × 100 m. */
export function randomHill(count: number): Hill {
  return hillOn(scattered(seeded(SEED), count, () => true, 50));
}

const PATCH = { half: 18, points: 8000 } as const;

/**
 * The same points about the hole each time, 8,000 on a patch of 36 × 36 m, and as many more at the
 * same density around it as make up `count`.
 */
export function growingHill(count: number): Hill {
  const patch = scattered(seeded(SEED), PATCH.points, () => true, PATCH.half);
  const half = PATCH.half * Math.sqrt(count / PATCH.points);
  const outside = (x: number, y: number): boolean =>
    Math.max(Math.abs(x), Math.abs(y)) >= PATCH.half;
  const rest = scattered(seeded(SEED + 1), count - PATCH.points, outside, half, "r");
  return hillOn([...patch, ...rest]);
}

function scattered(
  random: Seeded,
  count: number,
  wanted: (x: number, y: number) => boolean,
  half: number,
  mark = "p",
): Points {
  const points: Points = [];
  while (points.length < count) {
    const [x, y] = [random.between(-half, half), random.between(-half, half)];
    if (wanted(x, y)) points.push({ id: `${mark}${points.length}`, x, y, z: heightAt(x, y) });
  }
  return points;
}

function cornersOf(x: number, y: number): [number, number][] {
  return [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ];
}

function hillOn(points: Points): Hill {
  // A pad so deep in the ground fills nothing: what is timed is the cut and what follows from it.
  const hole = plainPad({
    outline: cornersOf(FLOOR.width / 2, FLOOR.length / 2),
    top: heightAt(0, 0) - DEPTH,
    walls: { by: "run", run: 1 },
  });
  const site: Site = {
    ...plainSite({ works: [hole] }),
    survey: { points },
    ground: {
      layers: [
        { id: "clay", name: "Clay", material: "clay" },
        { id: "rock", name: "Shelf rock", material: "shelf-rock" },
      ],
      probes: [{ id: "t1", x: 0, y: 0, thickness: [1.5] }],
    },
  };
  const built = baseGround(site);
  if (!built.ok) throw new Error(built.problem.text);
  return { site, scheme: site.schemes[0]!, base: built.base };
}

/** What one edit finds, for checking that the same hole was dug. */
export interface Edited {
  /** m³ of all layers. */
  cut: number;
  triangles: number[];
}

/**
 * One edit as an app makes it: the hole dug layer by layer, with its daylight and toe outlines,
 * centre of mass and volumes by depth, which `digScheme` gives with it. Returns m³ cut.
 */
export function edit({ site, scheme, base }: Hill): number {
  const { result, ground } = digScheme(site, scheme, base);
  ground.release();
  return totalOf(result.cut);
}

/** The same edit, not timed. Throws when it gives no daylight outline, as all else counts on it. */
export function editOnce({ site, scheme, base }: Hill): Edited {
  const { result, ground } = digScheme(site, scheme, base);
  const triangles = ground.touchedTriangles();
  ground.release();
  const rings = result.works[0]?.outlines?.daylight.length ?? 0;
  if (rings !== 1) throw new Error(`got ${rings} daylight rings of the hole, expected 1`);
  return { cut: totalOf(result.cut), triangles };
}

function totalOf(volumes: Readonly<Record<string, number>>): number {
  return Object.values(volumes).reduce((sum, volume) => sum + volume, 0);
}
