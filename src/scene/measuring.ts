import type { PlanPoint, Site } from "../site/index.js";
import { area as areaOf, bearing, distance, pipeSlope, plainNumber } from "../units/index.js";
import { words } from "../words/index.js";
import { bearingOf } from "./dragging.js";
import { signedArea } from "./picking.js";

/** What is being measured: places in the order that they were set, site coordinates. */
export interface Measuring {
  points: readonly PlanPoint[];
  /** False once the person said that it is done: then taps set no more. */
  isSetting: boolean;
}

export type MeasureEvent =
  { type: "set"; at: PlanPoint } | { type: "back" } | { type: "done" } | { type: "again" };

export const NOTHING_MEASURED: Measuring = { points: [], isSetting: true };

/** Places nearer to each other than this are one, m: the second click of a double click. */
const SAME = 0.02;

/** The next state. Pure. */
export function stepMeasuring(state: Measuring, event: MeasureEvent): Measuring {
  switch (event.type) {
    case "set": {
      const last = state.points.at(-1);
      if (!state.isSetting) return state;
      if (last !== undefined && farBetween(last, event.at) < SAME) return state;
      return { ...state, points: [...state.points, event.at] };
    }
    case "back":
      // Taking back goes on from where it was done.
      return { points: state.points.slice(0, -1), isSetting: true };
    case "done":
      return state.points.length < 2 ? state : { ...state, isSetting: false };
    case "again":
      return NOTHING_MEASURED;
  }
}

/** From one place to the next. m; `rise` is up when positive, null where the ground is not known. */
export interface MeasuredLeg {
  plan: number;
  slope: number | null;
  rise: number | null;
  /** Degrees clockwise from north. */
  bearing: number;
}

export interface Measured {
  legs: readonly MeasuredLeg[];
  /** m in plan from the first place to the last. */
  length: number;
  /** m² in plan within three places or more, the last joined with the first; null for fewer. */
  area: number | null;
}

/** The figures of places that were set; `heightAt` is the ground's elevation, m, or null. */
export function measure(
  points: readonly PlanPoint[],
  heightAt: (at: PlanPoint) => number | null,
): Measured {
  const legs = points.slice(1).map((to, i): MeasuredLeg => {
    const from = points[i] ?? to;
    const plan = farBetween(from, to);
    const [low, high] = [heightAt(from), heightAt(to)];
    const rise = low === null || high === null ? null : high - low;
    const slope = rise === null ? null : Math.hypot(plan, rise);
    return { plan, slope, rise, bearing: bearingOf(from, to) };
  });
  return {
    legs,
    length: legs.reduce((sum, leg) => sum + leg.plan, 0),
    area: points.length < 3 ? null : Math.abs(signedArea(points)),
  };
}

function farBetween(a: PlanPoint, b: PlanPoint): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

/** A row of the figures as they are shown and copied. */
export interface LegText {
  name: string;
  plan: string;
  slope: string;
  rise: string;
  /** In percent, up when positive. */
  percent: string;
  /** Run for a rise of 1. */
  ratio: string;
  bearing: string;
}

const NONE = "–";

/** The legs in the site's units. */
export function legTexts({ legs }: Measured, units: Site["units"]): LegText[] {
  return legs.map((leg, i) => {
    // A place upon the last one has no grade.
    const grade = leg.rise === null || leg.plan < SAME ? null : leg.rise / leg.plan;
    const sign = grade !== null && grade > 0 ? "+" : "";
    return {
      name: `${i + 1}–${i + 2}`,
      plan: distance.print(leg.plan, units),
      slope: leg.slope === null ? NONE : distance.print(leg.slope, units),
      rise: leg.rise === null ? NONE : sign + distance.print(leg.rise, units),
      percent: grade === null ? NONE : sign + pipeSlope.print(grade, units),
      ratio: grade === null ? NONE : ratioText(grade),
      bearing: bearing.print(leg.bearing, units),
    };
  });
}

/** Run for a rise of one; so flat that nobody would say it so: none. */
function ratioText(grade: number): string {
  const run = 1 / Math.abs(grade);
  return run > 999 ? NONE : `${plainNumber(run, run < 10 ? 2 : 1)} : 1`;
}

/** The whole length and the area in words; empty where there is one leg alone. */
export function wholeTexts(measured: Measured, units: Site["units"]): string[] {
  const { looking } = words;
  if (measured.legs.length < 2) return [];
  const whole = looking.wholeLength(distance.print(measured.length, units));
  return measured.area === null
    ? [whole]
    : [whole, looking.areaInside(areaOf.print(measured.area, units))];
}

/** All figures as text for pasting: a table by tabs, then the whole. */
export function copyText(measured: Measured, units: Site["units"]): string {
  const { columns } = words.looking;
  const rows = legTexts(measured, units).map((leg) =>
    [leg.name, leg.plan, leg.slope, leg.rise, leg.percent, leg.ratio, leg.bearing].join("\t"),
  );
  const head = [
    columns.leg,
    columns.plan,
    columns.slope,
    columns.rise,
    columns.percent,
    columns.ratio,
    columns.bearing,
  ];
  return [head.join("\t"), ...rows, ...wholeTexts(measured, units)].join("\n");
}
