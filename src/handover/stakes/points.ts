/** Every point to set out: digs, pads, beds, buildings, trenches. */
import { columnAt, groundAt, insideRings, schemeOf } from "../../estimate/index.js";
import { areaOutline, centreOfArea } from "../../site/index.js";
import type { Pad, PlanPoint, Site, Trench, Work } from "../../site/index.js";
import { FOOT } from "../../units/index.js";
import type { StakeChoices } from "../choices.js";
import type { HandoverJob } from "../job.js";
import { stakedCorners } from "./outline.js";
import { alongPath, stationNear, stationsOf } from "./path.js";
import { trenchFloor } from "./pipeStations.js";
import type { Stake, StakeGroup } from "./stake.js";

/** Distances that hold where nothing was chosen: common practice, no source. */
export const USUAL_STAKES = {
  us: { offset: 3 * FOOT, interval: 10 * FOOT },
  metric: { offset: 1, interval: 3 },
} as const;

/** m that a height is read inside an edge, since an edge is in two surfaces. */
const INSIDE = 0.01;

const LETTER: Partial<Record<Work["kind"], string>> = {
  tank: "T",
  pad: "P",
  trench: "L",
  bed: "B",
  building: "H",
  strip: "S",
};

interface Setting {
  job: HandoverJob;
  choices: Required<Pick<StakeChoices, "offset" | "interval">>;
  /** Rings of every dig's daylight, by work. */
  digs: readonly (readonly (readonly (readonly [number, number])[])[])[];
}

/** Every group of stakes of the scheme. */
export function stakeGroups(job: HandoverJob, choices: StakeChoices = {}): StakeGroup[] {
  const usual = USUAL_STAKES[job.site.units];
  const digs = job.estimate.works.flatMap(({ outlines }) => (outlines ? [outlines.daylight] : []));
  const { offset = usual.offset, interval = usual.interval } = choices;
  const setting: Setting = { job, digs, choices: { offset, interval } };
  const count = new Map<string, number>();
  return schemeOf(job.site, job.schemeId).works.flatMap((work) => {
    const letter = LETTER[work.kind];
    if (letter === undefined) return [];
    const number = (count.get(letter) ?? 0) + 1;
    count.set(letter, number);
    return groupsOf(setting, work, `${letter}${number}`).filter(({ stakes }) => stakes.length > 0);
  });
}

function groupsOf(setting: Setting, work: Work, short: string): StakeGroup[] {
  const dug = digGroups(setting, work, short);
  switch (work.kind) {
    case "trench":
      return [...trenchGroups(setting, work, short), ...dug];
    case "pad":
      return [...padGroups(setting, work, short), ...dug];
    case "bed":
    case "building":
      return [
        cornerGroup(setting, work.id, short, {
          outline: areaOutline(work) ?? [],
          grade: () => work.base,
        }),
        ...dug,
      ];
    default:
      return dug;
  }
}

/** Floor corners with the floor's elevation, and the corners of the line where the dig comes to daylight. */
function digGroups(setting: Setting, work: Work, short: string): StakeGroup[] {
  const { job } = setting;
  const quantities = job.estimate.works.find(({ id }) => id === work.id);
  const outlines = quantities?.outlines;
  if (quantities === undefined || outlines === undefined) return [];
  const { lowest, highest } = quantities.floor;
  const level = highest - lowest < 1e-6;
  const toe = outlines.toe.map((ring) => stakedCorners(ring));
  const top = outlines.daylight.map((ring) => stakedCorners(ring));
  const floorAt = (ring: readonly PlanPoint[], i: number): number | null => {
    if (work.kind === "trench") {
      return finite(trenchFloor(job, work, stationNear(work.path, ring[i]!)));
    }
    return level ? lowest : heightAt(job, "dug", insideOf(ring, i));
  };
  const groups = (kind: "floor" | "top", letter: string, rings: PlanPoint[][]): StakeGroup[] => {
    let number = 0;
    return rings.map((ring) => ({
      ...{ work: work.id, kind, closed: true },
      stakes: ring.map((at, i) =>
        stakeAt(setting, {
          name: `${short}-${letter}${(number += 1)}`,
          ...{ work: work.id, kind, at },
          grade: kind === "floor" ? floorAt(ring, i) : null,
        }),
      ),
    }));
  };
  return [...groups("floor", "F", toe), ...groups("top", "D", top)];
}

/** Every level of a pad at its finished top. */
function padGroups(setting: Setting, pad: Pad, short: string): StakeGroup[] {
  const { job } = setting;
  const levels = [{ outline: pad.outline, top: pad.top }, ...(pad.levels ?? [])];
  return levels.map(({ outline, top }, level) =>
    cornerGroup(
      setting,
      pad.id,
      levels.length === 1 ? short : `${short}${"abcdefgh"[level] ?? level}`,
      {
        outline,
        // A pad that falls is read where its corner is built; a level one stands as it is written.
        grade: (i) => (pad.fall ? heightAt(job, "backfilled", insideOf(outline, i)) : top),
      },
    ),
  );
}

function cornerGroup(
  setting: Setting,
  work: string,
  short: string,
  { outline, grade }: { outline: readonly PlanPoint[]; grade: (i: number) => number | null },
): StakeGroup {
  const kind = "corner";
  const stakes = outline.map((at, i) =>
    stakeAt(setting, { name: `${short}-${i + 1}`, work, kind, at, grade: grade(i) }),
  );
  return { work, kind, closed: true, stakes };
}

/** Centre line and both rows of offset stakes, at the same stations. */
function trenchGroups(setting: Setting, trench: Trench, short: string): StakeGroup[] {
  const { job, choices } = setting;
  const places = stationsOf(trench, choices.interval).map((station, i) => {
    const along = alongPath(trench.path, station.at);
    const grade = finite(trenchFloor(job, trench, station.at));
    return { ...along, name: `${short}-${i + 1}`, station, grade };
  });
  const row = (kind: "centre" | "left" | "right", suffix: string, side: number): StakeGroup => ({
    ...{ work: trench.id, kind, closed: false },
    stakes: places.map(({ at, across, name, station, grade }) =>
      stakeAt(setting, {
        name: `${name}${suffix}`,
        ...{ work: trench.id, kind, grade },
        at: [at[0] + side * choices.offset * across[0], at[1] + side * choices.offset * across[1]],
        ...{ station: station.at, stationKind: station.kind },
      }),
    ),
  });
  return [row("centre", "", 0), row("left", "L", 1), row("right", "R", -1)];
}

function stakeAt({ job, digs }: Setting, stake: Omit<Stake, "ground" | "lost">): Stake {
  const outside = stake.kind === "left" || stake.kind === "right";
  return {
    ...stake,
    ground: groundAt(job.site, stake.at),
    lost: outside && digs.some((rings) => insideRings(stake.at, rings)),
  };
}

/** A place just inside a ring's corner, towards the middle of its area. */
function insideOf(ring: readonly PlanPoint[], i: number): PlanPoint {
  const [x, y] = ring[i]!;
  const [before, after] = [
    ring[(i + ring.length - 1) % ring.length]!,
    ring[(i + 1) % ring.length]!,
  ];
  const [ux, uy] = unit(before[0] - x, before[1] - y);
  const [vx, vy] = unit(after[0] - x, after[1] - y);
  const tries: PlanPoint[] = [
    [x + INSIDE * (ux + vx), y + INSIDE * (uy + vy)],
    [x - INSIDE * (ux + vx), y - INSIDE * (uy + vy)],
  ];
  const found = tries.find((at) => insideRings(at, [ring]));
  if (found !== undefined) return found;
  const [cx, cy] = centreOfArea(ring);
  const [dx, dy] = unit(cx - x, cy - y);
  return [x + INSIDE * dx, y + INSIDE * dy];
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

function unit(x: number, y: number): [number, number] {
  const far = Math.hypot(x, y);
  return far === 0 ? [0, 0] : [x / far, y / far];
}

/** Elevation of the ground at a stage, m; null beyond the survey. */
export function heightAt(
  { site, schemeId }: { site: Site; schemeId: string },
  stage: "dug" | "backfilled",
  at: PlanPoint,
): number | null {
  return columnAt(site, schemeId, stage, at)?.now.elevation ?? null;
}
