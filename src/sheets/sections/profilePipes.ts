/** The pipes of a chain seen from the side, and those that cross it. */
import type { PipeCheck } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { Fill, Mark, Spot } from "../paper.js";
import { PENS } from "./pens.js";
import type { ProfileData } from "./profileData.js";
import { boxOf, lineOf, spotOf, xOf, yOf, type View } from "./view.js";

const PAPER: Fill = { color: "#ffffff" };
/** A pipe is drawn no thinner than this, mm, however small the scale. */
const LEAST = 0.7;

/** Pipes with their walls, their inverts heavier; then what crosses them. */
export function pipeMarks(data: ProfileData, view: View): Mark[] {
  const { layers } = words.sheetsSections;
  const along = data.chain.runs.flatMap(({ trench, pipes, start }) =>
    [...pipes].reverse().flatMap((check) => {
      const pipe = trench.pipes.find(({ id }) => id === check.id);
      return sideMarks(check, pipe?.outside ?? check.inside, start, view);
    }),
  );
  return [
    { kind: "group", layer: layers.pipes, clip: boxOf(view), marks: along },
    {
      kind: "group",
      layer: layers.pipes,
      clip: boxOf(view),
      marks: [...acrossMarks(data, view), ...buriedMarks(data, view)],
    },
  ];
}

function sideMarks(check: PipeCheck, outside: number, start: number, view: View): Mark[] {
  const wall = (outside - check.inside) / 2;
  const known = check.stations.filter(({ invert }) => Number.isFinite(invert));
  if (known.length < 2) return [];
  const at = (over: number): Spot[] =>
    lineOf(
      view,
      known.map(({ station, invert }) => [start + station, invert + over]),
    );
  const low = at(-wall);
  const tall = (outside * 1000) / view.up;
  const high = tall >= LEAST ? at(check.inside + wall) : low.map(([x, y]): Spot => [x, y - LEAST]);
  const body: Mark = {
    kind: "path",
    lines: [[...low, ...high.reverse()]],
    closed: true,
    fill: PAPER,
    pen: PENS.pipe,
  };
  const invert: Mark = { kind: "path", lines: [at(0)], closed: false, pen: PENS.built };
  return tall >= 3 * LEAST ? [body, invert] : [body];
}

/** Other pipes of the scheme, cut across; those of the chain itself are seen from the side. */
function acrossMarks({ finished, chain, beyond }: ProfileData, view: View): Mark[] {
  const own = new Set(chain.runs.map(({ trench }) => trench.id));
  return finished.pipes
    .filter(({ work }) => !own.has(work))
    .map(({ centre, breadth, outside }) => {
      const half = [(breadth / 2) * (1000 / view.along), (outside / 2) * (1000 / view.up)] as const;
      return oval([centre[0] - beyond, centre[1]], half, view);
    });
}

function oval(
  centre: readonly [number, number],
  half: readonly [number, number],
  view: View,
): Mark {
  const [x, y] = spotOf(view, centre);
  const [a, b] = half.map((each) => Math.max(LEAST, each)) as [number, number];
  const ring = Array.from({ length: 32 }, (_, i): Spot => {
    const angle = (i * Math.PI) / 16;
    return [x + a * Math.cos(angle), y + b * Math.sin(angle)];
  });
  return { kind: "path", lines: [ring], closed: true, fill: PAPER, pen: PENS.pipe };
}

/** Buried lines: a ring at their top, or a dashed upright where the depth is not known. */
function buriedMarks({ buried, low, high }: ProfileData, view: View): Mark[] {
  return buried.map(({ station, top }): Mark => {
    if (top !== null) {
      return {
        kind: "circle",
        at: [xOf(view, station), yOf(view, top) + 1],
        radius: 1,
        fill: PAPER,
        pen: PENS.built,
      };
    }
    const line = lineOf(view, [
      [station, high],
      [station, low],
    ]);
    return { kind: "path", lines: [line], closed: false, pen: PENS.dug };
  });
}
