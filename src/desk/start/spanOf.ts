import type { Site, SurveyPoint } from "../../site/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";

/** How far the points reach and how much they rise, in words, so that a wrong unit is seen. */
export function spanOf(points: readonly SurveyPoint[], units: Site["units"]): string {
  const reach = (key: "x" | "y" | "z"): string => {
    let [low, high] = [Infinity, -Infinity];
    for (const point of points) {
      low = Math.min(low, point[key]);
      high = Math.max(high, point[key]);
    }
    return distance.print(high - low, units);
  };
  return words.sums.start.span(reach("x"), reach("y"), reach("z"));
}
