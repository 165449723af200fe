/** The sheet of the ground as found, with all that limits the lot. */
import { groundAt, lotEdge } from "../../estimate/index.js";
import type { PlanPoint, Probe, Site, SurveyPoint } from "../../site/index.js";
import { elevation, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { SheetMaker } from "../paper.js";
import { drawLimits } from "./drawLimits.js";
import {
  drawBenchmark,
  drawBreaklines,
  drawContours,
  drawProbes,
  drawSpots,
  drawSurveyEdge,
} from "./ground.js";
import { drawLotCorners } from "./lotCorners.js";
import type { PlanTable } from "./panel.js";
import { drawnPlan, type PlanSpec } from "./planSheet.js";

const texts = words.sheetsPlan;

export const EXISTING_GROUND = "existing-ground";

/** Times that elevations without room go to the list, since the list takes room from the others. */
const ROUNDS = 4;

/** Draws the ground as found: contours, points, probes, limits. */
export const existingGround: SheetMaker = ({ site }, room, windows) => {
  let listed: readonly string[] = [];
  for (let round = 1; ; round++) {
    const { content, left } = drawnPlan(specOf(site, listed), room, windows);
    const more = left.filter((id) => !listed.includes(id));
    if (more.length === 0 || round === ROUNDS) return [content];
    const all = new Set([...listed, ...more]);
    listed = fromNorth(site, all).map(({ id }) => id);
  }
};

/** From north to south, as they are looked for on the plan. */
function fromNorth({ survey }: Site, ids: ReadonlySet<string>): SurveyPoint[] {
  return survey.points.filter(({ id }) => ids.has(id)).sort((a, b) => b.y - a.y || a.x - b.x);
}

function specOf(site: Site, listed: readonly string[]): PlanSpec {
  return {
    ...{ id: EXISTING_GROUND, title: texts.titles.existing, units: site.units },
    places: lotPlaces(site),
    tables: [...probeTables(site), ...heightTable(site, listed)],
    draw: (drawing) => {
      drawSurveyEdge(drawing, site);
      drawContours(drawing, site, false);
      drawBreaklines(drawing, site);
      drawLimits(drawing, site, { grey: false, courses: true });
      // Here the points themselves are drawn, and room is scarce.
      drawLotCorners(drawing, site, false);
      drawProbes(drawing, site);
      drawBenchmark(drawing, site);
      drawSpots(drawing, site, listed);
      return [];
    },
  };
}

/** Numbers and elevations side by side in the list. */
const ABREAST = 3;

/** Elevations that found no room on the plan, by the number that stands there instead. */
function heightTable({ units, survey }: Site, listed: readonly string[]): PlanTable[] {
  if (listed.length === 0) return [];
  const { title, number, key } = texts.heights;
  const down = Math.ceil(listed.length / ABREAST);
  const cells = listed.map((id, i): string[] => {
    const z = survey.points.find((point) => point.id === id)?.z ?? NaN;
    return [key(i + 1), elevation.print(z, units, { bare: true })];
  });
  return [
    {
      title,
      head: Array.from({ length: ABREAST }, () => [number, elevation.unitLabel(units)]).flat(),
      rows: Array.from({ length: down }, (_, row) =>
        Array.from({ length: ABREAST }, (_, k) => cells[row + k * down] ?? ["", ""]).flat(),
      ),
      align: Array.from({ length: 2 * ABREAST }, () => "end" as const),
    },
  ];
}

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
