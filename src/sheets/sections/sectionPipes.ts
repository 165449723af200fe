/** Pipes in a section: cut across, or seen from the side. */
import type { PipeAcross, PipeAlong } from "../../estimate/index.js";
import type { Fill, Mark, Spot } from "../paper.js";
import { PENS } from "./pens.js";
import { lineOf, spotOf, type View } from "./view.js";

const PAPER: Fill = { color: "#ffffff" };
/** A pipe is drawn no thinner than this, mm, however small the scale. */
export const LEAST_PIPE = 0.7;

/** Pipes cut across, as ovals where the line meets them aslant or heights are stretched. */
export function crossPipes(pipes: readonly PipeAcross[], view: View, before = 0): Mark[] {
  return pipes.flatMap(({ centre, breadth, outside, inside }): Mark[] => {
    const at = [centre[0] - before, centre[1]] as const;
    const ring = oval(at, breadth, outside, view);
    const bore = oval(at, (breadth * inside) / outside, inside, view);
    return [
      { kind: "path", lines: [ring], closed: true, fill: PAPER, pen: PENS.pipe },
      { kind: "path", lines: [bore], closed: true, pen: PENS.thin },
    ];
  });
}

function oval(centre: readonly [number, number], wide: number, tall: number, view: View): Spot[] {
  const [x, y] = spotOf(view, centre);
  const a = Math.max(LEAST_PIPE / 2, (wide * 500) / view.along);
  const b = Math.max(LEAST_PIPE / 2, (tall * 500) / view.up);
  return Array.from({ length: 32 }, (_, i): Spot => {
    const angle = (i * Math.PI) / 16;
    return [x + a * Math.cos(angle), y + b * Math.sin(angle)];
  });
}

/** Pipes that lie along the section, seen from the side. */
export function sidePipes(pipes: readonly PipeAlong[], view: View): Mark[] {
  return pipes.map(({ centre, outside }) => {
    const half = Math.max(outside / 2, (LEAST_PIPE * view.up) / 2000);
    const at = (over: number): Spot[] =>
      lineOf(
        view,
        centre.map(([station, z]) => [station, z + over] as const),
      );
    const body = [...at(-half), ...at(half).reverse()];
    return { kind: "path", lines: [body], closed: true, fill: PAPER, pen: PENS.pipe };
  });
}
