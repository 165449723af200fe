import { boreArea } from "./friction.js";
import { depthOf, volumeBelow, type ChamberShape } from "./chamber.js";

/** Volume held in pipes, m³; bores and lengths in m. */
export function pipeVolume(pipes: readonly { inside: number; length: number }[]): number {
  return pipes.reduce((sum, { inside, length }) => sum + boreArea(inside) * length, 0);
}

/** s. */
const HOUR = 3600;
const DAY = 24 * HOUR;

/** What a dose is planned from. SI; depths over the chamber's floor. */
export interface DoseAsk {
  shape: ChamberShape;
  /** m, to the underside of the cover. */
  height: number;
  /** m, to the invert of the inlet; absent where none is known. */
  inlet?: number;
  /** What runs in over the day, m³/s. */
  daily: number;
  /** m³ that each dose brings to the beds. */
  volume: number;
  /** m³ that runs back from the pipes when the pump stops. */
  drainBack: number;
  /** m: level where the pump stops, and how far the alarm stands above where it starts. */
  off: number;
  alarmAbove: number;
  /** m³ wanted free above the alarm. */
  reserve: number;
  /** m³/s: what the pump gives, and what runs in meanwhile. */
  pumpFlow: number;
  inflow: number;
}

export interface DosePlan {
  /** m³ drawn from the chamber each time: the dose and what runs back. */
  drawn: number;
  /** m over the floor; null where the chamber is too small to reach so far. */
  off: number;
  on: number | null;
  alarm: number | null;
  /** Level with the whole reserve in, m. */
  full: number | null;
  /** m³ that the chamber holds from its floor to its cover. */
  holds: number;
  /** m³ free between the alarm and the inlet's invert or the cover, whichever is lower. */
  reserve: number;
  /** Which of the two that is. */
  freeTo: "inlet" | "cover";
  /** m³ below the pump's stop, which stay. */
  kept: number;
  /** s; null when the pump gives no more than runs in. */
  runTime: number | null;
  perDay: number;
  /** h that the free room above the start holds with the pump out of use. */
  hoursWithoutPower: number;
}

/**
 * Float levels of a dosing chamber: the dose and the drain-back over the level where the pump stops,
 * then the alarm, then the reserve, which ends at the inlet's invert where that is under the cover:
 * higher, sewage stands in the drain before. Run time: volume drawn ÷ (pump's flow − inflow).
 */
export function planDose(ask: DoseAsk): DosePlan {
  const { shape, height } = ask;
  const drawn = ask.volume + ask.drainBack;
  const kept = volumeBelow(shape, ask.off);
  const on = depthOf(shape, kept + drawn, height);
  const alarm = on === null || on + ask.alarmAbove > height ? null : on + ask.alarmAbove;
  const most = volumeBelow(shape, height);
  const below = alarm === null ? most : volumeBelow(shape, alarm);
  const freeTo = ask.inlet !== undefined && ask.inlet < height ? "inlet" : "cover";
  const top = Math.max(0, Math.min(height, ask.inlet ?? height));
  const free = volumeBelow(shape, top);
  const net = ask.pumpFlow - ask.inflow;
  return {
    drawn,
    off: ask.off,
    on,
    alarm,
    full: alarm === null ? null : depthOf(shape, below + ask.reserve, top),
    holds: most,
    reserve: Math.max(0, free - below),
    freeTo,
    kept,
    runTime: net > 0 ? drawn / net : null,
    perDay: (ask.daily * DAY) / ask.volume,
    hoursWithoutPower:
      on === null ? 0 : Math.max(0, free - volumeBelow(shape, on)) / ask.daily / HOUR,
  };
}
