import type { Site } from "../site/index.js";
import { distance, elevation } from "../units/index.js";
import { words } from "../words/index.js";
import type { SnapHold } from "./snap.js";

/** What holds a place, in words: "corner of Bed pad", "right angle", "contour 2,412 ft". */
export function holdWords(holds: readonly SnapHold[], units: Site["units"]): string {
  return holds.map((hold) => oneHold(hold, units)).join(", ");
}

function oneHold(hold: SnapHold, units: Site["units"]): string {
  const { hold: says } = words.drawing;
  switch (hold.by) {
    case "corner":
      return cornerWords(hold);
    case "edge":
      return hold.shape === "path" ? says.alongOf(hold.of) : says.edgeOf(hold.of);
    case "contour":
      // Contours lie at round heights: decimals only where the step is less than one.
      return says.contour(
        elevation.print(hold.elevation, units, { digits: digitsOf(hold, units) }),
      );
    case "length":
      return says.length(distance.print(hold.length, units));
    case "close":
    case "square":
    case "straight":
    case "first":
      return says[hold.by];
  }
}

function cornerWords({ of, shape }: Extract<SnapHold, { by: "corner" }>): string {
  const { hold: says } = words.drawing;
  switch (shape) {
    case "outline":
      return says.cornerOf(of);
    case "path":
      return says.bendOf(of);
    case "middle":
      return says.middleOf(of);
    case "place":
    case "joint":
      return of;
  }
}

function digitsOf({ elevation: z }: { elevation: number }, units: Site["units"]): number {
  const shown = units === "us" ? z / 0.3048 : z;
  return Math.abs(shown - Math.round(shown)) < 1e-6 ? 0 : 1;
}
