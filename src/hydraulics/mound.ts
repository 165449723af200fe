/** Measures of a mound: a level bed on sand over sloping ground, with earth sides. One unit of length. */
export interface MoundAsk {
  /** Bed across the slope's fall (A) and along the contour (B). */
  bedWidth: number;
  bedLength: number;
  /** Fall of the ground across the bed, drop per run; 0 or more. */
  slope: number;
  /** Sand under the bed's upslope edge (D), and the bed's own depth (F). */
  sand: number;
  bed: number;
  /** Cover over the bed's edge (G) and over its middle (H). */
  capEdge: number;
  capMiddle: number;
  /** Run of the mound's sides per 1 of rise. */
  side: number;
  /** Natural soil's area that the water wants under and downslope of the bed; absent: not asked. */
  basalArea?: number;
}

/** A mound in plan, the ask's unit of length. Letters are those of the manual. */
export interface Mound {
  /** Sand under the bed's downslope edge (E). */
  sandDownslope: number;
  /** Toe to bed: upslope (J), downslope (I), at either end (K). */
  upslope: number;
  downslope: number;
  ends: number;
  /** Whether the basal area and not the side's slope sets the downslope reach. */
  setByBasalArea: boolean;
  /** Over all, along the contour (L) and across it (W). */
  length: number;
  width: number;
}

/**
 * Footprint of a mound. E = D + slope·A; K = side·((D + E)/2 + F + H); J = side·(D + F + G) and
 * I = side·(E + F + G), each times its slope correction; I at least basal area ÷ B − A;
 * L = B + 2K; W = J + A + I. Nothing is rounded. Null where the ground falls as steeply as the side,
 * which then never meets it. Throws on a measure that is not finite or is negative.
 *
 * US EPA 625/1-80-012, Onsite Wastewater Treatment and Disposal Systems (1980), Example 7-1; slope
 * correction: Ohio State University Extension Bulletin 813, Tables 3 and 4.
 */
export function moundFootprint(ask: MoundAsk): Mound | null {
  for (const [name, value] of Object.entries(ask)) {
    if (!(Number.isFinite(value) && value >= 0)) {
      throw new Error(`mound: got ${name} ${String(value)}, expected 0 or more`);
    }
  }
  const { bedWidth, bedLength, slope, sand, bed, capEdge, capMiddle, side, basalArea } = ask;
  const down = downslopeCorrection(slope, side);
  if (down === null) return null;
  const sandDownslope = sand + slope * bedWidth;
  const ends = side * ((sand + sandDownslope) / 2 + bed + capMiddle);
  const upslope = side * (sand + bed + capEdge) * upslopeCorrection(slope, side);
  const bySide = side * (sandDownslope + bed + capEdge) * down;
  const byArea = basalArea === undefined ? 0 : basalArea / bedLength - bedWidth;
  const downslope = Math.max(bySide, byArea);
  return {
    sandDownslope,
    upslope,
    downslope,
    ends,
    setByBasalArea: byArea > bySide,
    length: bedLength + 2 * ends,
    width: upslope + bedWidth + downslope,
  };
}

/** How much shorter a side's reach is where it runs uphill: 1 ÷ (1 + side·slope). Same source. */
export function upslopeCorrection(slope: number, side: number): number {
  return 1 / (1 + side * slope);
}

/**
 * How much longer a side's reach is where it runs downhill: 1 ÷ (1 − side·slope); null where it never
 * meets the ground. Same source.
 */
export function downslopeCorrection(slope: number, side: number): number | null {
  const left = 1 - side * slope;
  return left > 0 ? 1 / left : null;
}
