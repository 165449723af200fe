/**
 * Contours of random sites at random stages: whatever the works, the lines of a level with the
 * survey's edge bound exactly the ground that stands above it, and lines end only at that edge.
 */
import { describe, expect, it } from "vitest";
import { digToStage } from "../../src/dig/index.js";
import {
  baseGround,
  groundContours,
  LayeredGround,
  profileAlong,
  surfaceOf,
  type Cell,
  type Place,
} from "../../src/ground/index.js";
import { randomSite } from "../fixtures/randomSite.js";
import { plainPad, plainSite, plainTank } from "../../src/site/site.fixture.js";
import type { Site } from "../../src/site/index.js";

const FIRST = 4100;
const SITES = 60;
const STAGES = ["dug", "bedded", "set", "backfilled"] as const;

function groundOf(site: Site, stage: (typeof STAGES)[number] | "found"): LayeredGround {
  const built = baseGround(site);
  if (!built.ok) throw new Error(built.problem.text);
  if (stage === "found") return new LayeredGround(built.base);
  return digToStage(site, site.schemes[0]!, built.base, stage).ground;
}

/** Plan area of a cell above a height, m². */
function areaAbove(cell: Cell, height: number): number {
  const top = surfaceOf(cell);
  const kept: Place[] = [];
  top.forEach((z, i) => {
    const j = (i + 1) % top.length;
    const [a, b] = [z - height, top[j]! - height];
    if (a > 0) kept.push([cell.x[i]!, cell.y[i]!]);
    if (a > 0 === b > 0) return;
    const share = a / (a - b);
    kept.push([
      cell.x[i]! + share * (cell.x[j]! - cell.x[i]!),
      cell.y[i]! + share * (cell.y[j]! - cell.y[i]!),
    ]);
  });
  return kept.reduce((sum, from, i) => sum + under(from, kept[(i + 1) % kept.length]!), 0);
}

/** Half the cross product of two places: summed around an area, it is the area. */
function under([ax, ay]: Place, [bx, by]: Place): number {
  return (ax * by - bx * ay) / 2;
}

/** The share of that sum that the survey's edge has where the ground stands above a height. */
function alongEdge(ground: LayeredGround, height: number): number {
  const { tin } = ground.base;
  let sum = 0;
  tin.hull.forEach((v, i) => {
    const w = tin.hull[(i + 1) % tin.hull.length]!;
    const p: Place = [tin.x[v]!, tin.y[v]!];
    const q: Place = [tin.x[w]!, tin.y[w]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const at = (s: number): Place => [
      p[0] + ((q[0] - p[0]) * s) / length,
      p[1] + ((q[1] - p[1]) * s) / length,
    ];
    for (const { from, to, start, end } of profileAlong(ground, p, q)) {
      const [a, b] = [start - height, end - height];
      const meet = from + ((to - from) * a) / (a - b);
      const [low, high] = [a > 0 ? from : meet, b > 0 ? to : meet];
      if (a > 0 || b > 0) sum += under(at(low), at(high));
    }
  });
  return sum;
}

function faultOf(ground: LayeredGround, step: number): string | null {
  const { tin } = ground.base;
  const lines = groundContours(ground, step);
  const far = Math.hypot(tin.x[tin.hull[0]!]!, tin.y[tin.hull[0]!]!);
  const levels = [...new Set(lines.map((line) => line.elevation))];
  for (const elevation of levels) {
    const height = elevation - tin.origin[2];
    let bounded = alongEdge(ground, height);
    for (const { line } of lines.filter((each) => each.elevation === elevation)) {
      line.slice(1).forEach((to, i) => (bounded += under(line[i]!, to)));
    }
    let expected = 0;
    for (let t = 0; t < tin.triangles.length / 3; t++) {
      for (const cell of ground.cellsOf(t)) expected += areaAbove(cell, height);
    }
    const gap = Math.abs(bounded - expected);
    // Measured: within 4e-15 of that.
    if (!(gap <= 1e-9 * far * far)) return `${elevation} m: ${bounded} m², expected ${expected} m²`;
  }
  for (const { closed, line, elevation } of lines) {
    const [first, last] = [line[0]!, line[line.length - 1]!];
    if (closed && (first[0] !== last[0] || first[1] !== last[1])) return `${elevation} m is open`;
    if (!closed && !(onEdge(ground, first) && onEdge(ground, last))) {
      return `${elevation} m ends inside, at ${String(first)} or ${String(last)}`;
    }
  }
  return null;
}

function onEdge(ground: LayeredGround, [x, y]: Place): boolean {
  const { tin } = ground.base;
  return Array.from(tin.hull).some((v, i) => {
    const w = tin.hull[(i + 1) % tin.hull.length]!;
    const [dx, dy] = [tin.x[w]! - tin.x[v]!, tin.y[w]! - tin.y[v]!];
    const off = (dx * (y - tin.y[v]!) - dy * (x - tin.x[v]!)) / Math.hypot(dx, dy);
    return Math.abs(off) < 1e-6;
  });
}

describe(`contours at a stage, ${SITES} random sites, seeds ${FIRST} to ${FIRST + SITES - 1}`, () => {
  it("bound the ground above their level", () => {
    const faults: string[] = [];
    let counted = 0;
    for (let seed = FIRST; seed < FIRST + SITES; seed++) {
      const stage = STAGES[seed % STAGES.length]!;
      const ground = groundOf(randomSite(seed), stage);
      const fault = faultOf(ground, 0.25);
      counted += 1;
      if (fault !== null) faults.push(`seed ${seed}, ${stage}: ${fault}`);
    }
    expect(faults).toEqual([]);
    expect(counted).toBe(SITES);
  });
});

describe("contours on vertical walls", () => {
  it("run round a hole with vertical walls on level ground, once for each level", () => {
    const site = plainSite({ works: [plainTank({ bearing: 0, overdig: 0.5 })] });
    const lines = groundContours(groundOf(site, "dug"), 0.5);
    // From the floor at 97.8 m up to the ground at 100 m.
    expect(lines.map((line) => line.elevation)).toEqual([98, 98.5, 99, 99.5]);
    for (const { closed, line } of lines) {
      expect(closed).toBe(true);
      const area = line.slice(1).reduce((sum, to, i) => sum + under(line[i]!, to), 0);
      // The hole is low ground: the line goes round it clockwise.
      expect(area).toBeCloseTo(-4 * 3, 6);
    }
  });

  it("run round a fill with vertical sides", () => {
    const site = plainSite({ works: [plainPad({ top: 101 })] });
    const lines = groundContours(groundOf(site, "backfilled"), 0.5);
    expect(lines.map((line) => line.elevation)).toEqual([100, 100.5]);
    for (const { line } of lines) {
      const area = line.slice(1).reduce((sum, to, i) => sum + under(line[i]!, to), 0);
      expect(area).toBeCloseTo(6 * 4, 6);
    }
  });
});
