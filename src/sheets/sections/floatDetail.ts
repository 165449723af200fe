/** The chamber of a pump with its float levels to scale, from the estimate's dose. */
import type { PressureResult } from "../../estimate/index.js";
import type { Scheme, Site, Tank } from "../../site/index.js";
import { elevation, liquidVolume } from "../../units/index.js";
import { words } from "../../words/index.js";
import { WATER_FILL } from "../earthFills.js";
import type { Mark, Spot } from "../paper.js";
import type { Callout } from "./callouts.js";
import type { DetailSpec } from "./detailSpec.js";
import type { Span } from "./dimensionRows.js";
import { PENS } from "./pens.js";
import { lineOf, type View } from "./view.js";

/** m about the tank. */
const AROUND = 0.15;

/** Null for a system without a tank of its own, or without a dose. */
export function floatDetail(site: Site, scheme: Scheme, result: PressureResult): DetailSpec | null {
  const tank = scheme.works.find(({ id }) => id === result.tank);
  if (tank?.kind !== "tank" || result.dose === null) return null;
  const { detail } = words.sheetsSections;
  const levels = levelsOf(result);
  return {
    subject: `detail:floats:${tank.id}`,
    title: detail.floats(tank.name),
    said: detail.floatsSaid,
    from: -AROUND,
    to: tank.body.length + AROUND,
    low: tank.base - AROUND,
    high: tank.base + tank.body.height + AROUND,
    finished: null,
    dug: null,
    paint: (view) => paintChamber(tank, result, view),
    callouts: calloutsOf(site, tank, result),
    beside: spansOf(levels, result.water.floor),
    across: [],
  };
}

interface FloatLevel {
  /** m over the chamber's floor. */
  depth: number;
  name: string;
}

/** The float levels that the chamber has room for, from its floor up. */
function levelsOf(result: PressureResult): FloatLevel[] {
  const { detail } = words.sheetsSections;
  const plan = result.dose?.plan;
  const all = [
    { depth: plan?.off, name: detail.off },
    { depth: plan?.on, name: detail.on },
    { depth: plan?.alarm, name: detail.alarm },
    { depth: plan?.full, name: detail.full },
  ];
  return all.flatMap(({ depth, name }) =>
    depth === undefined || depth === null ? [] : [{ depth, name }],
  );
}

function spansOf(levels: readonly FloatLevel[], floor: number): Span[] {
  const heights = [0, ...levels.map(({ depth }) => depth)];
  return heights
    .slice(1)
    .map((depth, i) => ({ from: floor + heights[i]!, to: floor + depth, name: "" }));
}

function calloutsOf({ units }: Site, tank: Tank, result: PressureResult): Callout[] {
  const { detail } = words.sheetsSections;
  const { water, dose } = result;
  const plan = dose?.plan;
  const gallons = (volume: number): string => liquidVolume.print(volume, units);
  const more: Record<string, string> = {
    [detail.off]: plan ? detail.kept(gallons(plan.kept)) : "",
    [detail.on]: plan ? detail.drawn(gallons(plan.drawn)) : "",
    [detail.alarm]: plan ? detail.aboveAlarm[plan.freeTo](gallons(plan.reserve)) : "",
  };
  const at = (height: number, name: string): string =>
    words.sheetsSections.cut.levelAt(elevation.print(height, units, { bare: true }), name);
  const levels = levelsOf(result).map(({ depth, name }): Callout => {
    const said = more[name] ?? "";
    return {
      height: water.floor + depth,
      from: 0,
      text: at(water.floor + depth, said === "" ? name : `${name}: ${said}`),
      water: [wallOf(tank, result), tank.body.length - wallOf(tank, result)],
    };
  });
  const all: Callout[] = [
    { height: water.cover, from: 0, text: at(water.cover, detail.chamberCover) },
    ...levels,
    { height: water.floor, from: 0, text: at(water.floor, detail.chamberFloor) },
  ];
  return all.sort((a, b) => b.height - a.height);
}

/** m of the chamber's wall as drawn: as thick as its floor, since no figure is entered. */
function wallOf(tank: Tank, { water }: PressureResult): number {
  return Math.max(0.05, water.floor - tank.base);
}

function paintChamber(tank: Tank, result: PressureResult, view: View): Mark[] {
  const { base, body } = tank;
  const { floor, cover } = result.water;
  const wall = wallOf(tank, result);
  const box = (from: number, to: number, low: number, high: number): Spot[] =>
    lineOf(view, [
      [from, low],
      [to, low],
      [to, high],
      [from, high],
    ]);
  const outside = box(0, body.length, base, base + body.height);
  const inside = box(wall, body.length - wall, floor, Math.max(floor, cover));
  const off = result.dose?.plan.off ?? 0;
  const kept = box(wall, body.length - wall, floor, floor + off);
  return [
    {
      kind: "path",
      lines: [outside, inside],
      closed: true,
      fill: { color: "#dcdbd5" },
      pen: PENS.built,
    },
    { kind: "path", lines: [kept], closed: true, fill: WATER_FILL, pen: PENS.thin },
  ];
}
