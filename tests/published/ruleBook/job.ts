/** Small jobs for the rule book: level clay, or a plane slope, and what the whole estimate says. */
import { estimate, type Estimate } from "../../../src/estimate/index.js";
import type { Finding, LocalRule, Scheme, Site, Work } from "../../../src/site/index.js";
import { plainSite, plainTank } from "../../../src/site/site.fixture.js";

export const FOOT = 0.3048;
export const INCH = FOOT / 12;

/** One rule's numbers that a site puts in the place of the published ones. */
export type Rules = readonly LocalRule[];

/** What a job is made of; what is not given is plain. Level ground lies at 100 m. */
export interface Job {
  works?: Work[];
  rules?: Rules;
  limits?: NonNullable<Site["limits"]>;
  ground?: Site["ground"];
  flow?: Scheme["flow"];
  machines?: Scheme["machines"];
  height?: (x: number, y: number) => number;
  /** Half the side of the square survey, m. */
  half?: number;
}

const LEVEL = (): number => 100;

/** The ground of a shape, made once: an estimate remembers what it made of a survey. */
const made = new Map<Job["height"], Map<number, Site>>();

function groundLike(height: NonNullable<Job["height"]>, half: number): Site {
  const sizes = made.get(height) ?? new Map<number, Site>();
  const site = sizes.get(half) ?? plainSite({ height, half });
  made.set(height, sizes.set(half, site));
  return site;
}

/** The estimate of a job. */
export function estimated(job: Job): Estimate {
  const { works = [], rules = [], limits, ground, flow, machines, height, half } = job;
  const site: Site = {
    ...groundLike(height ?? LEVEL, half ?? 20),
    ...(ground && { ground }),
    ...(limits && { limits }),
    rules: [...rules],
    schemes: [
      { id: "plan", name: "Plan", works, ...(flow && { flow }), ...(machines && { machines }) },
    ],
  };
  return estimate(site, "plan");
}

/** The first finding of a code on a job that `which` takes; null for none. */
export function said(
  code: string,
  job: Job,
  which: (finding: Finding) => boolean = () => true,
): Finding | null {
  return estimated(job).findings.find((one) => one.code === code && which(one)) ?? null;
}

/** The state of an item of the permit's list: null where it is shown. */
export function missingItem(id: string, job: Job): string | null {
  const items = estimated(job).permit.groups.flatMap((group) => group.items);
  const item = items.find((one) => one.id === id);
  if (item === undefined) throw new Error(`got no item ${id}, expected it on the permit's list`);
  return item.state === "missing" ? item.because : null;
}

/** A tank whose upright hole, 3 m north by 2 m east about the origin, is so deep. */
export function holeOf(face: number, change: Parameters<typeof plainTank>[0] = {}): Work {
  const body = { length: 3, width: 2, height: 0.5 };
  return plainTank({ body, base: 100 - face + 0.2, ...change });
}

/** A rectangle's corners. */
export function box(west: number, south: number, east: number, north: number): [number, number][] {
  return [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
  ];
}

/** A line north to south, so far east. */
export function lineAt(x: number): [number, number][] {
  return [
    [x, -15],
    [x, 15],
  ];
}

export function building(outline: [number, number][], base: number): Work {
  return { kind: "building", id: "house", name: "House", outline, base, height: 3 };
}

/** Ground of one layer of a material. */
export function allOf(material: string, soil?: Site["ground"]["layers"][number]["soil"]) {
  const layer = { id: "all", name: "All", material, ...(soil && { soil }) };
  return { layers: [layer], probes: [] };
}
