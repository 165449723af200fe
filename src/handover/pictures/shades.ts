/** Light on the faces of a view: from above, over the left shoulder of whoever looks. */
import type { Lens } from "./lens.js";
import { dot, unit, type Place } from "./normals.js";

/** Steps between the darkest face and the brightest: faces of one step are drawn together. */
const STEPS = 24;
const DARKEST = 0.58;
const BRIGHTEST = 1.14;

/** Gives the step of light, from 0 to `STEPS`, of a face with a normal. */
export function lightOf({ right, forward }: Lens["axes"]): (normal: Place) => number {
  const level = unit([forward[0], forward[1], 0]);
  const ahead: Place = Math.hypot(forward[0], forward[1]) < 1e-6 ? [0, 1, 0] : level;
  const toLight = unit([
    -0.75 * right[0] - 0.35 * ahead[0],
    -0.75 * right[1] - 0.35 * ahead[1],
    0.7,
  ]);
  return (normal) => Math.round(STEPS * Math.max(0, dot(normal, toLight)));
}

/** A colour (CSS hex) in a step of light. */
export function litColour(hex: string, step: number): string {
  const light = DARKEST + ((BRIGHTEST - DARKEST) * step) / STEPS;
  const part = (at: number): string => {
    const lit = Math.round(Number.parseInt(hex.slice(at, at + 2), 16) * light);
    return Math.min(255, lit).toString(16).padStart(2, "0");
  };
  return `#${part(1)}${part(3)}${part(5)}`;
}
