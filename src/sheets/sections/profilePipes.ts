/** The pipes of a chain seen from the side, and those that cross it. */
import type { PipeCheck } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { Fill, Mark, Spot } from "../paper.js";
import { PENS } from "./pens.js";
import type { ProfileData } from "./profileData.js";
import { crossPipes, LEAST_PIPE } from "./sectionPipes.js";
import { boxOf, lineOf, xOf, yOf, type View } from "./view.js";

const PAPER: Fill = { color: "#ffffff" };

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
  const high =
    tall >= LEAST_PIPE ? at(check.inside + wall) : low.map(([x, y]): Spot => [x, y - LEAST_PIPE]);
  const body: Mark = {
    kind: "path",
    lines: [[...low, ...high.reverse()]],
    closed: true,
    fill: PAPER,
    pen: PENS.pipe,
  };
  const invert: Mark = { kind: "path", lines: [at(0)], closed: false, pen: PENS.built };
  return tall >= 3 * LEAST_PIPE ? [body, invert] : [body];
}

/** Other pipes of the scheme, cut across; those of the chain itself are seen from the side. */
function acrossMarks({ finished, chain, beyond }: ProfileData, view: View): Mark[] {
  const own = new Set(chain.runs.map(({ trench }) => trench.id));
  const others = finished.pipes.filter(({ work }) => !own.has(work));
  return crossPipes(others, view, beyond);
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
