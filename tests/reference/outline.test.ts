/** The surface of an outline against winding numbers and its own parts, for random polygons. */
import { describe, expect, it } from "vitest";
import {
  outlineSurface,
  signedArea,
  tidyOutline,
  type Place,
  plane,
  type Surface,
} from "../../src/ground/index.js";
import { seeded, type Seeded } from "../fixtures/seeded.js";

/** Height of a surface at a place, by its definition. */
function heightAt(surface: Surface, x: number, y: number): number {
  switch (surface.is) {
    case "plane":
      return surface.a * x + surface.b * y + surface.c;
    case "wall": {
      const inside = surface.nx * x + surface.ny * y <= surface.d;
      return inside === surface.reversed ? Infinity : -Infinity;
    }
    case "boundless":
      return surface.level === "above" ? Infinity : -Infinity;
    case "strips": {
      const along = surface.ux * x + surface.uy * y;
      const strip = surface.marks.findIndex((mark) => along <= mark);
      return heightAt(surface.of[strip < 0 ? surface.marks.length : strip]!, x, y);
    }
    case "higher":
      return Math.max(...surface.of.map((each) => heightAt(each, x, y)));
    case "lower":
      return Math.min(...surface.of.map((each) => heightAt(each, x, y)));
  }
}

/** Winding number of an outline about a place, by angles. */
function winding(outline: readonly Place[], x: number, y: number): number {
  let angle = 0;
  outline.forEach(([px, py], i) => {
    const [qx, qy] = outline[(i + 1) % outline.length]!;
    const cross = (px - x) * (qy - y) - (py - y) * (qx - x);
    const dot = (px - x) * (qx - x) + (py - y) * (qy - y);
    angle += Math.atan2(cross, dot);
  });
  return Math.round(angle / (2 * Math.PI));
}

function star({ between, whole }: Seeded): Place[] {
  const count = whole(3, 14);
  return Array.from({ length: count }, (_, i): Place => {
    const angle = (2 * Math.PI * (i + between(0, 0.9))) / count;
    const radius = between(0.8, 10);
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** Random places joined in a tour that is untangled by turning crossing pairs round (2-opt). */
function untangled({ between, whole }: Seeded): Place[] {
  const tour = Array.from({ length: whole(4, 14) }, (): Place => [between(-9, 9), between(-9, 9)]);
  for (;;) {
    const pair = crossingPair(tour);
    if (!pair) return tour;
    const [i, j] = pair;
    tour.splice(i + 1, j - i, ...tour.slice(i + 1, j + 1).reverse());
  }
}

/** The first two edges of a tour that cross, by their first corners. */
function crossingPair(tour: readonly Place[]): [number, number] | null {
  for (let i = 0; i + 1 < tour.length; i++) {
    for (let j = i + 2; j < tour.length; j++) {
      const [a, b] = [tour[i]!, tour[i + 1]!];
      const [c, d] = [tour[j]!, tour[(j + 1) % tour.length]!];
      if (a !== d && crosses(a, b, c, d)) return [i, j];
    }
  }
  return null;
}

function crosses(a: Place, b: Place, c: Place, d: Place): boolean {
  const side = (p: Place, q: Place, r: Place): number =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Right-angled outlines: many edges in line with each other and parallel ends. */
function stairs({ whole }: Seeded): Place[] {
  const places: Place[] = [[0, 0]];
  const steps = whole(1, 5);
  let [x, y] = [0, 0];
  for (let i = 0; i < steps; i++) {
    x += whole(1, 3);
    places.push([x, y]);
    y += whole(0, 1) === 0 ? whole(1, 3) : -Math.min(whole(1, 3), y + 20);
    places.push([x, y]);
  }
  const top = Math.max(...places.map(([, py]) => py)) + whole(1, 3);
  return [...places, [x, top], [0, top]];
}

function surfacesOf(outline: readonly Place[]): { vertical: Surface; sloped: Surface } {
  const side = (i: number): { nx: number; ny: number; d: number } => {
    const [p, q] = [outline[i]!, outline[(i + 1) % outline.length]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const [nx, ny] = [(q[1] - p[1]) / length, (p[0] - q[0]) / length];
    return { nx, ny, d: nx * p[0] + ny * p[1] };
  };
  return {
    vertical: outlineSurface(outline, (i) => ({ is: "wall", ...side(i), reversed: false }), "low"),
    sloped: outlineSurface(
      outline,
      (i) => {
        const { nx, ny, d } = side(i);
        return plane(nx, ny, -d);
      },
      "low",
    ),
  };
}

function distanceToEdge(outline: readonly Place[], x: number, y: number): number {
  return Math.min(
    ...outline.map(([px, py], i) => {
      const [qx, qy] = outline[(i + 1) % outline.length]!;
      const [dx, dy] = [qx - px, qy - py];
      const share = ((x - px) * dx + (y - py) * dy) / (dx * dx + dy * dy);
      const at = Math.min(1, Math.max(0, share));
      return Math.hypot(px + at * dx - x, py + at * dy - y);
    }),
  );
}

describe.each([
  ["star-shaped", star, 300, 4000],
  ["untangled", untangled, 400, 5000],
  ["stepped", stairs, 200, 6000],
] as const)("%s outlines", (_, make, count, firstSeed) => {
  it(`low inside and high outside, seeds ${firstSeed} to ${firstSeed + count - 1}`, () => {
    for (let seed = firstSeed; seed < firstSeed + count; seed++) {
      const random = seeded(seed);
      const outline = tidyOutline(make(random));
      expect(signedArea(outline)).toBeGreaterThan(0);
      const { vertical, sloped } = surfacesOf(outline);
      for (let i = 0; i < 60; i++) {
        const [x, y] = [random.between(-12, 16), random.between(-12, 16)];
        const edge = distanceToEdge(outline, x, y);
        if (edge < 1e-6) continue;
        const inside = winding(outline, x, y) === 1;
        const [wall, slope] = [heightAt(vertical, x, y), heightAt(sloped, x, y)];
        if (wall > 0 === inside || slope > 0 === inside) {
          throw new Error(`seed ${seed} at ${x}, ${y}: inside is ${inside}, got ${wall}, ${slope}`);
        }
        // No wall stands nearer to its floor than a wall through the nearest edge would.
        if (!inside && slope > edge + 1e-9) {
          throw new Error(`seed ${seed} at ${x}, ${y}: height ${slope}, expected at most ${edge}`);
        }
      }
    }
  });

  it(`uses every edge once, seeds ${firstSeed} to ${firstSeed + count - 1}`, () => {
    for (let seed = firstSeed; seed < firstSeed + count; seed++) {
      const outline = tidyOutline(make(seeded(seed)));
      const used: number[] = [];
      outlineSurface(
        outline,
        (i) => {
          used.push(i);
          return plane(0, 0, 0);
        },
        "low",
      );
      expect(used.sort((a, b) => a - b)).toEqual(outline.map((_, i) => i));
    }
  });
});
