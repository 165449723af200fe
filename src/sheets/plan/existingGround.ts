/** The sheet of the ground as found, with all that limits the lot. */
import { groundAt, lotEdge } from "../../estimate/index.js";
import type { PlanPoint, Probe, Site } from "../../site/index.js";
import { elevation, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { SheetMaker } from "../paper.js";
import { drawLimits } from "./drawLimits.js";
import { drawBenchmark, drawBreaklines, drawContours, drawProbes, drawSpots } from "./ground.js";
import type { PlanTable } from "./panel.js";
import { planSheet } from "./planSheet.js";

const texts = words.sheetsPlan;

export const EXISTING_GROUND = "existing-ground";

/** Draws the ground as found: contours, points, probes, limits. */
export const existingGround: SheetMaker = ({ site }, room, windows) => [
  planSheet(
    {
      ...{ id: EXISTING_GROUND, title: texts.titles.existing, units: site.units },
      places: lotPlaces(site),
      tables: probeTables(site),
      draw: (drawing) => {
        drawContours(drawing, site, false);
        drawBreaklines(drawing, site);
        drawLimits(drawing, site, { grey: false, courses: true });
        drawProbes(drawing, site);
        drawBenchmark(drawing, site);
        drawSpots(drawing, site);
        return [];
      },
    },
    room,
    windows,
  ),
];

/** What shows the whole lot: its line where one is entered, else the survey; and every place that limits it. */
export function lotPlaces(site: Site): PlanPoint[] {
  const limits = site.limits ?? [];
  const lines = limits.flatMap(({ kind, path }) => (kind === "lot-line" ? (path ?? []) : []));
  const edge = lines.length > 2 ? lines : lotEdge(site);
  const probes = site.ground.probes.map(({ x, y }): PlanPoint => [x, y]);
  return [...edge, ...limits.flatMap(({ at }) => (at === undefined ? [] : [at])), ...probes];
}

/** What each probe found: depths to the bottom of each layer. */
function probeTables(site: Site): PlanTable[] {
  const { layers, probes } = site.ground;
  if (probes.length === 0) return [];
  const upper = layers.slice(0, -1);
  const below = layers[layers.length - 1]!.name;
  const wet = probes.some(({ water }) => water !== undefined);
  const { probe, ground, water, last } = texts.probes;
  return [
    {
      title: texts.probes.title(elevation.unitLabel(site.units)),
      head: [probe, ground, ...upper.map(({ name }) => name), ...(wet ? [water] : [])],
      rows: probes.map((one) => probeRow(site, one, wet)),
      notes: [last(below)],
    },
  ];
}

function probeRow(site: Site, probe: Probe, wet: boolean): string[] {
  const { units } = site;
  const { layers } = site.ground;
  const z = groundAt(site, [probe.x, probe.y]);
  const digits = units === "us" ? 1 : 2;
  const depthText = (depth: number): string => length.print(depth, units, { digits, bare: true });
  const stop = layers.findIndex(({ id }) => id === probe.stoppedIn);
  let depth = 0;
  const bottoms = layers.slice(0, -1).map((_, i) => {
    const thick = probe.thickness[i] ?? 0;
    depth += thick;
    if (stop >= 0 && i > stop) return texts.probes.none;
    if (i === stop) return texts.probes.atLeast(depthText(depth));
    return thick > 0 ? depthText(depth) : texts.probes.none;
  });
  const water = probe.water === undefined ? texts.probes.none : depthText(probe.water);
  return [
    probe.id,
    z === null ? texts.probes.none : elevation.print(z, units, { bare: true }),
    ...bottoms,
    ...(wet ? [water] : []),
  ];
}
