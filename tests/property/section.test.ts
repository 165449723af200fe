/**
 * Sections of random sites. Two laws: at every station the areas add up to the ground above the
 * datum; and a sweep of sections over the whole site gives the volumes that the dig counts.
 */
import { describe, expect, it } from "vitest";
import { digToStage } from "../../src/dig/index.js";
import { sectionAlong, type Section, type Stage } from "../../src/estimate/index.js";
import { baseGround, groundSection, LayeredGround } from "../../src/ground/index.js";
import type { PlanPoint } from "../../src/site/index.js";
import { randomSite } from "../fixtures/randomSite.js";
import { seeded } from "../fixtures/seeded.js";
import { SCHEME } from "../fixtures/site.js";

const FIRST = 5200;
const SITES = 60;
const STAGES: readonly Stage[] = ["found", "dug", "bedded", "set", "backfilled"];

function areaUnder(section: Section): number {
  let sum = 0;
  for (const part of section.surface) {
    part.slice(1).forEach((to, i) => {
      const from = part[i]!;
      sum += (to[0] - from[0]) * ((from[1] + to[1]) / 2 - section.datum);
    });
  }
  return sum;
}

/** Twice a ring's area; positive when counter-clockwise. */
function turned(ring: readonly (readonly [number, number])[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length]!;
    return sum + x * ny - nx * y;
  }, 0);
}

function lineFor(seed: number): PlanPoint[] {
  const random = seeded(seed);
  const place = (): PlanPoint =>
    random.whole(0, 1) === 0
      ? [random.whole(-30, 30), random.whole(-30, 30)]
      : [random.between(-40, 40), random.between(-40, 40)];
  const [x, y] = place();
  // Half of the lines run along whole metres, where corners, sides and walls of random sites lie.
  if (random.whole(0, 1) === 0)
    return [
      [Math.round(x), -30],
      [Math.round(x), 30],
    ];
  return Array.from({ length: random.whole(2, 4) }, (_, i) => (i === 0 ? [x, y] : place()));
}

function faultOf(seed: number, stage: Stage): string | null {
  const site = randomSite(seed);
  const section = sectionAlong(site, SCHEME, stage, lineFor(seed));
  const sum = section.areas.reduce((total, { area }) => total + area, 0);
  const under = areaUnder(section);
  if (Math.abs(sum - under) > 1e-6 * (1 + under)) return `areas ${sum} m², ground ${under} m²`;
  for (const { outline, holes, area, material } of section.areas) {
    if (!(area > 0)) return `${material} has ${area} m²`;
    const net = holes.reduce((total, hole) => total + turned(hole), turned(outline)) / 2;
    if (Math.abs(net - area) > 1e-9 * (1 + area)) return `${material}: ${net} m², said ${area} m²`;
    if (holes.some((hole) => turned(hole) >= 0)) return `${material} has a hole turned wrongly`;
  }
  return null;
}

describe(`sections of ${SITES} random sites, seeds ${FIRST} to ${FIRST + SITES - 1}`, () => {
  it("add up to the ground above their datum", () => {
    const faults: string[] = [];
    for (let seed = FIRST; seed < FIRST + SITES; seed++) {
      const stage = STAGES[seed % STAGES.length]!;
      try {
        const fault = faultOf(seed, stage);
        if (fault !== null) faults.push(`seed ${seed}, ${stage}: ${fault}`);
      } catch (error) {
        faults.push(`seed ${seed}, ${stage}: ${error instanceof Error ? error.stack : ""}`);
      }
    }
    expect(faults).toEqual([]);
  });
});

/**
 * Sections this far apart, m, in the sweep. Between two of them an area changes evenly but at the
 * ends of works and layers, where at most a slice's worth is missed: hence the tolerance, a share of
 * the whole cut (measured: within 7e-5 of it).
 */
const SLICE = 0.1;
const TOLERANCE = 0.001;

/** Area of each natural material along y = const, m², by material. */
function naturalAlong(ground: LayeredGround, y: number): Map<string, number> {
  const [ox, oy, oz] = ground.base.tin.origin;
  const line = [
    [-50 - ox, y - oy],
    [50 - ox, y - oy],
  ] as const;
  const sums = new Map<string, number>();
  for (const { material, area } of groundSection(ground, line, -40 - oz).pieces) {
    sums.set(material, (sums.get(material) ?? 0) + area);
  }
  return sums;
}

/** What the dig takes out by material, m³, measured by sections across the whole site. */
function sweptCut(found: LayeredGround, dug: LayeredGround): Map<string, number> {
  const volumes = new Map<string, number>();
  for (let y = -50 + SLICE / 2; y < 50; y += SLICE) {
    const now = naturalAlong(dug, y);
    for (const [material, area] of naturalAlong(found, y)) {
      const gone = (area - (now.get(material) ?? 0)) * SLICE;
      volumes.set(material, (volumes.get(material) ?? 0) + gone);
    }
  }
  return volumes;
}

describe("a sweep of sections", () => {
  it.each([5301, 5302, 5306])(
    "gives the volumes of the cut within a thousandth of the whole, seed %d",
    (seed) => {
      const site = randomSite(seed);
      const built = baseGround(site);
      if (!built.ok) throw new Error(built.problem.text);
      const { works, ground } = digToStage(site, site.schemes[0]!, built.base, "dug");
      const cut = new Map<string, number>();
      for (const work of works) {
        for (const [material, volume] of Object.entries(work.cut)) {
          cut.set(material, (cut.get(material) ?? 0) + volume);
        }
      }
      const whole = [...cut.values()].reduce((sum, volume) => sum + volume, 0);
      expect(whole).toBeGreaterThan(1);
      for (const [material, volume] of sweptCut(new LayeredGround(built.base), ground)) {
        const off = Math.abs(volume - (cut.get(material) ?? 0));
        expect(off).toBeLessThan(TOLERANCE * whole);
      }
    },
  );
});
