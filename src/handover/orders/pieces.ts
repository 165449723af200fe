/** How runs of pipe are cut from what the yard sells. Lengths in one unit, whichever. */

/** One run: whole lengths, and the piece that is cut to end it. */
export interface CutRun {
  name: string;
  length: number;
  whole: number;
  /** 0 where whole lengths end it. */
  piece: number;
}

export interface Cutting {
  runs: readonly CutRun[];
  /** Whole lengths to buy. */
  count: number;
  /** What is left over of cut lengths, all together. */
  offcuts: number;
}

/** A run within this part of one length of a whole number of them is that number. */
const SLACK = 1e-9;

/**
 * Lengths to buy for runs that are each laid from whole lengths and one cut piece. Pieces come from
 * what is left of lengths cut before, longest piece first, each from the first that is long enough.
 * That never needs more lengths than a new one for every piece. Throws on a length that is not more
 * than zero.
 */
export function cutFrom(stick: number, runs: readonly { name: string; length: number }[]): Cutting {
  if (!(stick > 0)) throw new Error(`pipe length: got ${stick}, expected more than 0`);
  const cut = runs.map(({ name, length }): CutRun => {
    const whole = Math.floor(length / stick + SLACK);
    const rest = length - whole * stick;
    return { name, length, whole, piece: rest > SLACK * stick ? rest : 0 };
  });
  const left: number[] = [];
  const pieces = cut.map(({ piece }) => piece).filter((piece) => piece > 0);
  for (const piece of pieces.sort((a, b) => b - a)) {
    const from = left.findIndex((rest) => rest >= piece - SLACK * stick);
    if (from < 0) left.push(stick - piece);
    else left[from] = Math.max(0, left[from]! - piece);
  }
  return {
    runs: cut,
    count: cut.reduce((sum, { whole }) => sum + whole, 0) + left.length,
    offcuts: left.reduce((sum, rest) => sum + rest, 0),
  };
}

/** Strips of a roll, side by side with a lap, that cover a rectangle; then rolls for all of them. */
export function rollsFor(
  roll: { width: number; length: number; lap: number },
  areas: readonly { length: number; width: number }[],
): number {
  const { width, length, lap } = roll;
  if (!(width > lap && lap >= 0 && length > 0)) {
    throw new Error(`roll: got ${width} wide, ${length} long, lap ${lap}; expected width over lap`);
  }
  const run = areas.reduce((sum, area) => {
    const strips = Math.max(1, Math.ceil((area.width - lap) / (width - lap) - SLACK));
    return sum + strips * area.length;
  }, 0);
  return Math.ceil(run / length - SLACK);
}
