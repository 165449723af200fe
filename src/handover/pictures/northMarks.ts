/** An arrow to the north as it lies on the level ground of a view. */
import { layer } from "../../sheets/index.js";
import type { Mark, TextMark } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import type { Lens } from "./lens.js";
import { dot, type Place } from "./normals.js";
import type { Spot } from "./visible.js";

/** mm from the middle to the tip, where it is not foreshortened. */
const LENGTH = 8;

export function northMarks({ axes }: Lens, [x, y]: Spot): Mark {
  const at = (east: number, north: number): Spot => {
    const place: Place = [east, north, 0];
    return [x + LENGTH * dot(place, axes.right), y - LENGTH * dot(place, axes.up)];
  };
  const pen = { width: 0.3, color: "#26323a" };
  const letter: TextMark = {
    ...{ kind: "text", at: below(at(0, 1.45)), text: words.sheets.north, face: "strong", size: 3 },
    anchor: "middle",
  };
  return layer(words.pictures.view.north, [
    {
      ...{ kind: "path", lines: [[at(0, 1), at(0.28, -0.6), at(0, -0.35), at(-0.28, -0.6)]] },
      ...{ closed: true, pen, fill: { color: "#ffffff" } },
    },
    {
      ...{ kind: "path", lines: [[at(0, 1), at(0, -0.35), at(-0.28, -0.6)]] },
      ...{ closed: true, pen, fill: { color: pen.color } },
    },
    letter,
  ]);
}

const below = ([x, y]: Spot): Spot => [x, y + 1.1];
