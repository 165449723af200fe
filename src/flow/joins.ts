import type { PipeRun } from "../dig/index.js";
import type { Bed, Finding, Scheme, Tank } from "../site/index.js";
import { pumpWell } from "./fallRules.js";
import { planDistance, rectangleInPlan } from "./planDistance.js";
import { flowRule } from "./rules.js";
import { FLOW_SETTINGS } from "./settings.js";
import type { Wording } from "./wording.js";

/** A place with an invert that a drain should start at. */
interface Mouth {
  name: string;
  invert: number;
}

/**
 * Inverts at every joint but those at a tank or building: a drain that starts at a bed's overflow
 * has to start no higher than that; one that leaves another drain's end, no higher than it.
 */
export function joinFindings(
  run: PipeRun,
  runs: readonly PipeRun[],
  scheme: Scheme,
  words: Wording,
): Finding[] {
  const first = run.stations[0];
  if (run.service !== "gravity" || first === undefined || !Number.isFinite(first.invert)) return [];
  const mouth = mouthAt(first.at, run, runs, scheme);
  if (mouth === null) return [];
  const up = first.invert - mouth.invert;
  if (up <= FLOW_SETTINGS.jointTolerance) return [];
  return [
    {
      level: "caution",
      code: "pipe.starts-above",
      where: run.id,
      text: `${run.name} starts ${words.length(up)} above ${mouth.name}, so water would stand there. Start it at that invert or lower.`,
      source: "geometry",
    },
  ];
}

function mouthAt(
  at: readonly [number, number],
  run: PipeRun,
  runs: readonly PipeRun[],
  scheme: Scheme,
): Mouth | null {
  const near = (place: readonly [number, number]): boolean =>
    Math.hypot(place[0] - at[0], place[1] - at[1]) <= FLOW_SETTINGS.joinsWithin;
  for (const work of scheme.works) {
    if (work.kind === "bed" && work.overflow !== undefined && byBed(work, at)) {
      return { name: `the overflow of ${work.name}`, invert: work.base + work.overflow };
    }
  }
  for (const other of runs) {
    const last = other.stations.at(-1);
    if (other.id === run.id || other.service !== "gravity" || last === undefined) continue;
    if (near(last.at) && Number.isFinite(last.invert)) {
      return { name: `the end of ${other.name}`, invert: last.invert };
    }
  }
  return null;
}

function byBed(bed: Bed, at: readonly [number, number]): boolean {
  const place = { points: [[at[0], at[1]] as [number, number]], closed: false };
  return planDistance(rectangleInPlan(bed), place) <= FLOW_SETTINGS.joinsWithin;
}

/**
 * Tanks through which the water flows whose liquid, from the top of the floor to the outlet, is less
 * deep than is wanted. The file gives no floor's thickness: that of a pump tank stands in.
 */
export function liquidDepthFindings(scheme: Scheme, words: Wording): Finding[] {
  const least = flowRule("liquid-depth", scheme);
  const { slab } = pumpWell();
  const pumped = (scheme.flow?.pressure ?? []).map(({ tank }) => tank);
  return scheme.works.flatMap((tank): Finding[] => {
    if (tank.kind !== "tank" || tank.body.outlet === undefined || pumped.includes(tank.id))
      return [];
    const depth = tank.body.outlet - slab.value;
    if (depth >= least.value - 1e-9) return [];
    return [
      {
        level: "note",
        code: "tank.shallow-liquid",
        where: tank.id,
        text: `${tank.name} holds ${words.length(Math.max(0, depth))} of liquid below its outlet, with a floor ${words.length(slab.value)} thick; ${words.length(least.value)} is wanted. Ask its maker, and check your local code.`,
        source: `${least.source}; thickness of the floor: ${slab.source}`,
      },
    ];
  });
}

/** A tank whose outlet is not far enough below its inlet. */
export function tankDropFindings(scheme: Scheme, words: Wording): Finding[] {
  const least = flowRule("tank-drop", scheme);
  return scheme.works
    .filter((work): work is Tank => work.kind === "tank")
    .flatMap((tank): Finding[] => {
      const { inlet, outlet } = tank.body;
      if (inlet === undefined || outlet === undefined) return [];
      const drop = inlet - outlet;
      if (drop >= least.value - 1e-9) return [];
      const how = drop > 0 ? `only ${words.length(drop)} below` : "not below";
      return [
        {
          level: "caution",
          code: "tank.little-drop",
          where: tank.id,
          text: `The outlet of ${tank.name} is ${how} its inlet; ${words.length(least.value)} is wanted, or the drain stands full.`,
          source: least.source,
        },
      ];
    });
}
