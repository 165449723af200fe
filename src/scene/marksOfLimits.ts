/** What of setbacks and steep ground is drawn, cut to the ground that is there. Scene metres. */
import type { SetbackBand, SetbackField, SetbackLine, SteepGround } from "../estimate/index.js";
import type { PlanPoint } from "../site/index.js";
import { distance, type UnitSystem } from "../units/index.js";
import { words } from "../words/index.js";
import { toScene, type SceneFrame, type ScenePoint } from "./frame.js";
import type { StageGround } from "./stageGround.js";
import { subdivide } from "../estimate/index.js";

/** A text on the ground, at the first of its places with room; `wrong` where a setback falls short. */
export interface LimitTag {
  seats: readonly ScenePoint[];
  text: string;
  wrong: boolean;
}

export interface LimitMarksShown {
  /** Whether setbacks are shown, even where there are none. */
  setbacks: boolean;
  /** Ground inside setbacks, to be hatched; null where there is none. */
  field: SetbackField | null;
  /** Segment ends of the bands, and of the lines to the nearest limits, kept and fallen short. */
  bands: Float32Array;
  lines: Float32Array;
  short: Float32Array;
  tags: readonly LimitTag[];
  steep: SteepGround | null;
}

/** m over the ground, and between places that follow it. */
const LIFT = 0.08;
const STEP = 0.5;
/** m: as the findings have it. */
const TOLERANCE = 0.005;

/** A path laid on the ground, in runs without what lies beyond the survey. */
export function runsOnGround(
  path: readonly PlanPoint[],
  frame: SceneFrame,
  ground: StageGround,
): ScenePoint[][] {
  const runs: ScenePoint[][] = [];
  let run: ScenePoint[] = [];
  const end = (): void => {
    if (run.length > 1) runs.push(run);
    run = [];
  };
  for (const [x, y] of subdivide(
    path.map((at) => toScene(frame, at)),
    STEP,
  )) {
    const z = ground.heightAt(x, y)?.z;
    if (z === undefined) end();
    else run.push([x, y, z + LIFT]);
  }
  end();
  return runs;
}

function segmentsOf(runs: readonly (readonly ScenePoint[])[]): Float32Array {
  return Float32Array.from(
    runs.flatMap((run) => run.slice(1).flatMap((to, i) => [...run[i]!, ...to])),
  );
}

/** Shares along a run at which a text may stand, the best first. */
const SEATS = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

function seatsOn(run: readonly ScenePoint[]): ScenePoint[] {
  return SEATS.map((share) => run[Math.floor(share * run.length)]).filter((at) => at !== undefined);
}

/** Bands and their tags: each at the middle of its longest run. */
function bandMarks(
  bands: readonly SetbackBand[],
  units: UnitSystem,
  frame: SceneFrame,
  ground: StageGround,
): { runs: ScenePoint[][]; tags: LimitTag[] } {
  const each = bands.map((band) => {
    const runs = band.pieces.flatMap((piece) => runsOnGround(piece, frame, ground));
    const longest = runs.reduce<ScenePoint[]>(
      (best, run) => (run.length > best.length ? run : best),
      [],
    );
    const parts = band.own
      ? ""
      : band.parts.map((part) => words.limits.table.parts[part] ?? part).join(", ");
    const text = words.limits.band(distance.print(band.distance, units), parts, band.toName);
    const seats = seatsOn(longest);
    return { runs, tags: seats.length === 0 ? [] : [{ seats, text, wrong: false }] };
  });
  return { runs: each.flatMap(({ runs }) => runs), tags: each.flatMap(({ tags }) => tags) };
}

/** All marks of a scene's setbacks and steep ground. */
export function limitMarksOf(
  given: {
    bands: readonly SetbackBand[];
    lines: readonly SetbackLine[];
    steep: SteepGround | null;
    setbacks: boolean;
    field: SetbackField | null;
  },
  units: UnitSystem,
  frame: SceneFrame,
  ground: StageGround,
): LimitMarksShown {
  const bands = bandMarks(given.bands, units, frame, ground);
  const isShort = ({ kept }: SetbackLine): boolean => kept.wanted - kept.distance > TOLERANCE;
  const runsOf = (lines: readonly SetbackLine[]): ScenePoint[][] =>
    lines.flatMap(({ from, to }) => runsOnGround([from, to], frame, ground));
  const dimensions = given.lines.flatMap((line): LimitTag[] => {
    const seats = runsOf([line]).flatMap((run) => seatsOn(run));
    if (seats.length === 0) return [];
    const text = words.limits.dimension(
      distance.print(line.kept.distance, units),
      line.kept.toName,
    );
    return [{ seats, text, wrong: isShort(line) }];
  });
  return {
    setbacks: given.setbacks,
    field: given.field,
    bands: segmentsOf(bands.runs),
    lines: segmentsOf(runsOf(given.lines.filter((line) => !isShort(line)))),
    short: segmentsOf(runsOf(given.lines.filter(isShort))),
    // Distances that are come before distances that are asked, where there is no room for both.
    tags: [...dimensions, ...bands.tags],
    steep: given.steep,
  };
}
