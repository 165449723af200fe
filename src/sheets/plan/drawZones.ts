/** Lines that something keeps behind: holes' edges, buried and overhead lines, bare ground, barriers. */
import {
  aroundRings,
  bareGround,
  besideLine,
  lineClearance,
  type Areas,
  type Estimate,
} from "../../estimate/index.js";
import { isBuriedLine, ruleOf, type Limit, type Site } from "../../site/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Fill, Pen } from "../paper.js";
import { dugWorks } from "./drawDigs.js";
import { areaSample } from "./drawWorks.js";
import { lineSample, type LineStyle } from "./lineStyle.js";
import { INK, pen } from "./pens.js";
import { WEIGHT, type PlanDrawing } from "./planDrawing.js";

const texts = words.sheetsPlan;

interface Zone {
  name: string;
  pen: Pen;
  fill?: Fill;
}

const hatch = (turn: number): Fill => ({
  hatches: [{ kind: "lines", turn, gap: 1.6, pen: pen(0.13, INK.grey) }],
});

const KEEP_OFF: LineStyle = { pen: pen(0.25, INK.black, [0.6, 0.9]) };
const BARE: LineStyle = { pen: pen(0.25, INK.brown, [4, 0.8, 0.8, 0.8]) };
const BARRIER: LineStyle = { pen: pen(0.5, INK.black), ticks: true };

/** The zones of a scheme in plan, which take a while to work out. */
export interface Zones {
  bare: Areas;
  /** About each hole, at the distance that spoil and machines keep back, m. */
  back: number;
  keepOff: readonly Areas[];
  about: readonly (Zone & { areas: Areas })[];
}

export function zonesOf(site: Site, schemeId: string, estimate: Estimate): Zones {
  const back = ruleOf(site, "spoil-back").value;
  return {
    bare: bareGround(site, schemeId, estimate),
    back,
    keepOff: dugWorks(estimate).map(({ outlines }) => aroundRings(outlines?.daylight ?? [], back)),
    about: (site.limits ?? []).flatMap((limit) => {
      const { path, closed } = limit;
      const zone = zoneOf(site, limit);
      if (zone === null || path === undefined || path.length < 2) return [];
      const line = closed === true ? [...path, path[0]!] : path;
      return [{ ...zone, areas: besideLine(line, zone.reach) }];
    }),
  };
}

export function drawZones(
  drawing: PlanDrawing,
  { units }: Site,
  estimate: Estimate,
  { bare, back, keepOff, about }: Zones,
): void {
  const layer = texts.layers.zones;
  if (drawAreas(drawing, bare, BARE)) drawing.row(texts.legend.bare, lineSample(BARE));
  const kept = keepOff.filter((areas) => drawAreas(drawing, areas, KEEP_OFF));
  if (kept.length > 0) {
    drawing.row(texts.legend.keepOff(distance.print(back, units)), lineSample(KEEP_OFF));
  }
  for (const barrier of estimate.land.barriers) {
    const line = barrier.map(([x, y]) => [x, y] as const);
    if (drawing.line(layer, line, BARRIER, WEIGHT.usual).length > 0) {
      drawing.row(texts.legend.barrier, lineSample(BARRIER));
    }
  }
  for (const zone of about) {
    for (const rings of zone.areas) {
      const pieces = drawing.area(layer, rings, zone, WEIGHT.light);
      if (pieces.length > 0) drawing.row(zone.name, areaSample(zone));
    }
  }
}

function drawAreas(drawing: PlanDrawing, areas: Areas, style: LineStyle): boolean {
  const shown = areas
    .flat()
    .map((ring) => drawing.line(texts.layers.zones, ring, style, WEIGHT.light));
  return shown.some((pieces) => pieces.length > 0);
}

/** Whether a limit is a power line overhead. */
export function isOverhead({ kind }: Limit): boolean {
  return kind === "overhead-line";
}

function zoneOf(site: Site, limit: Limit): (Zone & { reach: number }) | null {
  if (isOverhead(limit)) {
    const { least } = lineClearance(limit.voltage);
    return {
      name: texts.legend.clearance,
      pen: pen(0.35, INK.black, [1, 0.7]),
      fill: hatch(-60),
      reach: least,
    };
  }
  if (!isBuriedLine(limit.kind)) return null;
  const reach = ruleOf(site, "hand-within").value;
  const name = texts.legend.tolerance(distance.print(reach, site.units));
  return { name, pen: pen(0.18, INK.black, [1.6, 0.7]), fill: hatch(60), reach };
}
