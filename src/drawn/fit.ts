/** How a section fits its drawing: scales, exaggeration and the figures on its axes. */
import { FOOT } from "../units/index.js";

/** Where a section is drawn and how much a metre is there. CSS px from the drawing's top left. */
export interface SectionFit {
  /** px for a metre along, and for a metre up. */
  across: number;
  up: number;
  /** How many times heights are stretched: up ÷ across. */
  stretch: number;
  /** px of station 0, and of the elevation `top`. */
  left: number;
  upper: number;
  /** Highest and lowest elevation drawn, m. */
  top: number;
  bottom: number;
}

/** The part of the drawing that is free for the ground, px. */
export interface Frame {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** Stretches that can be told apart and said aloud. */
const STRETCHES = [1, 1.5, 2, 3, 4, 5, 8, 10, 15, 20, 30, 50];

/** m over the highest ground, as a share of the relief, that stay free for names. */
const HEADROOM = 0.12;

/**
 * Fits a line of `length` m over ground between two elevations into a frame. `wanted` is the stretch
 * of heights that a person chose; null takes the most of the usual ones that fits. With little
 * room heights rule and the section does not fill the width.
 */
export function fitSection(
  length: number,
  { lowest, highest }: { lowest: number; highest: number },
  frame: Frame,
  wanted: number | null,
): SectionFit {
  const relief = Math.max(0.5, highest - lowest);
  const top = highest + HEADROOM * relief;
  const most = frame.height / (top - lowest);
  const wide = frame.width / length;
  const stretch = wanted ?? STRETCHES.filter((each) => each * wide <= most).at(-1) ?? 1;
  const across = Math.min(wide, most / stretch);
  const up = across * stretch;
  return {
    across,
    up,
    stretch,
    left: frame.left + (frame.width - across * length) / 2,
    upper: frame.top,
    top,
    bottom: top - frame.height / up,
  };
}

/** A figure on an axis: where it stands, m, and what it says in the site's unit. */
export interface Tick {
  at: number;
  text: string;
}

/** Round figures from `low` to `high` (m), at least `apart` m from one another. */
export function ticks(low: number, high: number, apart: number, units: "us" | "metric"): Tick[] {
  const unit = units === "us" ? FOOT : 1;
  const step = roundStep(apart / unit);
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const out: Tick[] = [];
  for (let k = Math.ceil(low / unit / step - 1e-9); k * step * unit <= high + 1e-9; k++) {
    const shown = (k * step).toLocaleString("en-US", {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    });
    out.push({ at: k * step * unit, text: shown === "-0" ? "0" : shown });
  }
  return out;
}

/** The least of 1, 2, 5, 10 … that is not under a number. */
function roundStep(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5, 10].find((each) => each * decade >= least * (1 - 1e-9)) ?? 10) * decade;
}

/** Elevation of a broken line at a station; null where it has none. Steps give their later side. */
export function heightOn(
  lines: readonly (readonly (readonly [number, number])[])[],
  station: number,
): number | null {
  let found: number | null = null;
  for (const line of lines) {
    line.slice(1).forEach((to, i) => {
      const from = line[i]!;
      if (station < from[0] || station > to[0]) return;
      const share = to[0] > from[0] ? (station - from[0]) / (to[0] - from[0]) : 1;
      found = from[1] + share * (to[1] - from[1]);
    });
  }
  return found;
}
