/** How a section fits its drawing: scales and exaggeration. */
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
