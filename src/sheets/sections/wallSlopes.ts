/** Slopes of walls as a section shows them. */
import { wallSlope } from "../../units/index.js";
import type { UnitSystem } from "../../units/index.js";

type Place = readonly [station: number, height: number];

/** A stretch of one wall with one slope. */
export interface WallSlope {
  /** Its middle. */
  at: Place;
  /** Horizontal run for 1 of rise; 0 is vertical. */
  run: number;
}

/** Runs that count as the same. */
const SAME = 0.02;
/** What lies flatter than this is floor or ground, run per rise. */
const FLATTEST = 4;

/**
 * The walls of what is dug between two stations: stretches of the surface that are steep, in order,
 * each straight piece once that rises `leastRise` m or more.
 */
export function wallSlopes(
  surface: readonly (readonly Place[])[],
  from: number,
  to: number,
  leastRise: number,
): WallSlope[] {
  const pieces = surface.flatMap((line) => straightPieces(line, from, to));
  return pieces
    .filter(({ a, b }) => Math.abs(b[1] - a[1]) >= leastRise)
    .map(({ a, b, run }) => ({ at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], run }));
}

interface Piece {
  a: Place;
  b: Place;
  run: number;
}

function straightPieces(line: readonly Place[], from: number, to: number): Piece[] {
  const pieces: Piece[] = [];
  line.slice(1).forEach((b, i) => {
    const a = line[i]!;
    if (b[0] < from - 1e-6 || a[0] > to + 1e-6 || Math.abs(b[1] - a[1]) < 1e-9) return;
    const signed = (b[0] - a[0]) / (b[1] - a[1]);
    if (Math.abs(signed) > FLATTEST) return;
    const last = pieces.at(-1);
    const goesOn =
      last !== undefined &&
      Math.hypot(last.b[0] - a[0], last.b[1] - a[1]) < 1e-6 &&
      Math.abs((last.b[0] - last.a[0]) / (last.b[1] - last.a[1]) - signed) < SAME;
    if (goesOn) pieces[pieces.length - 1] = { ...last, b };
    else pieces.push({ a, b, run: Math.abs(signed) });
  });
  return pieces;
}

/** A run as it is said, to a hundredth: "¾ : 1", "vertical". */
export function sayRun(run: number, units: UnitSystem): string {
  const rounded = Math.round(run * 100) / 100;
  return wallSlope.print(rounded < SAME ? 0 : rounded, units);
}
