import { plainNumber, type UnitSystem } from "../units/index.js";

/** The most bands of cut or of fill: more tones of one hue could not be told apart. */
const MOST = 5;
/** m: what lies nearer to the ground as found than this has not changed. */
export const LEVEL = 0.004;
const FOOT = 0.3048;

/** Bands of depth on one side, cut or fill. */
export interface BandSide {
  /** m of each band. */
  step: number;
  /** How many bands there are; 0 where nothing is cut or filled. */
  count: number;
  /** The deepest cut or the highest fill, m. */
  most: number;
}

/** Bands of depth of cut and of fill. */
export type DepthBands = Readonly<Record<"cut" | "fill", BandSide>>;

/**
 * Bands with round limits in the person's units for a deepest cut and a highest fill, m: on each side
 * the finest that make five or fewer. Null where the ground is as found.
 */
export function depthBands(
  { deepest, highest }: { deepest: number; highest: number },
  units: UnitSystem,
): DepthBands | null {
  if (deepest < LEVEL && highest < LEVEL) return null;
  return { cut: bandsTo(deepest, units), fill: bandsTo(highest, units) };
}

function bandsTo(most: number, units: UnitSystem): BandSide {
  const unit = units === "us" ? FOOT : 1;
  for (let decade = 0.01; ; decade *= 10) {
    for (const round of [1, 2, 3, 5]) {
      // Inches read, tenths of a foot do not.
      const size = units === "us" && decade * round < 1 ? inches(decade * round) : decade * round;
      if (size === null) continue;
      const step = size * unit;
      const count = most < LEVEL ? 0 : Math.ceil(most / step - 1e-6);
      if (count <= MOST) return { step, count, most };
    }
  }
}

/** Below a foot only an inch, 3 and 6 inches are round: in place of 0.1, 0.2 and 0.5. */
function inches(feet: number): number | null {
  const nearest = [0.1, 0.2, 0.5].findIndex((one) => Math.abs(one - feet) < 1e-9);
  return nearest === -1 ? null : [1, 3, 6][nearest]! / 12;
}

/** The limits of the bands as they are read, from 0 up: one more than there are bands. */
export function bandLimits({ count, step }: BandSide, units: UnitSystem): string[] {
  const inInches = units === "us" && step < FOOT * 0.99;
  const unit = units === "us" ? (inInches ? FOOT / 12 : FOOT) : 1;
  const size = step / unit;
  const digits = [0, 1, 2].find((n) => Math.abs(size - Number(size.toFixed(n))) < 1e-9) ?? 2;
  return Array.from({ length: count + 1 }, (_, i) => plainNumber(i * size, i === 0 ? 0 : digits));
}

/** The unit of `bandLimits`. */
export function bandUnit({ step }: BandSide, units: UnitSystem): string {
  if (units === "metric") return "m";
  return step < FOOT * 0.99 ? "in" : "ft";
}

/** Ends of the tones, pale to dark: rust for a cut, teal for a fill (CSS hex). */
const TONES = { cut: ["#f0c9a4", "#6a2708"], fill: ["#bfe3df", "#0d4448"] } as const;

/** The tones of a side's bands, the shallowest first: each darker than the one before (CSS hex). */
export function bandTones(side: "cut" | "fill", count: number): string[] {
  const [pale, dark] = TONES[side];
  return Array.from({ length: count }, (_, i) =>
    mixed(pale, dark, count < 2 ? 0.5 : i / (count - 1)),
  );
}

function mixed(from: string, to: string, share: number): string {
  const part = (hex: string, k: number): number =>
    Number.parseInt(hex.slice(1 + 2 * k, 3 + 2 * k), 16);
  const parts = [0, 1, 2].map((k) => {
    const value = part(from, k) + (part(to, k) - part(from, k)) * share;
    return Math.round(value).toString(16).padStart(2, "0");
  });
  return `#${parts.join("")}`;
}
