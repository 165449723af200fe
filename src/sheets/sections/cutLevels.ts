/** Elevations that a section names, and where in it they are read. */
import { heightOn } from "../../estimate/index.js";
import type { Estimate, Section } from "../../estimate/index.js";
import type { Bed, Pad, Scheme, Tank } from "../../site/index.js";
import { insideRings } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { Cut } from "./cuts.js";

export interface Level {
  /** Elevation, m. */
  height: number;
  name: string;
  /** Station from which a line leads to its figure, m. */
  from: number;
  /** A water level is drawn with its sign, from one station to another. */
  water?: readonly [number, number];
}

/** Levels nearer than this are one, m. */
const SAME = 0.004;

/** The levels of a cut from the top down, those of one height together. */
export function levelsOf(cut: Cut, scheme: Scheme, estimate: Estimate, finished: Section): Level[] {
  const { work } = cut;
  const levels =
    work.kind === "tank"
      ? tankLevels(cut, work, estimate, finished)
      : work.kind === "pad"
        ? padLevels(cut, work, scheme)
        : bedLevels(cut, work);
  const ordered = levels.filter(({ height }) => Number.isFinite(height));
  ordered.sort((a, b) => b.height - a.height);
  return together(ordered);
}

function together(levels: readonly Level[]): Level[] {
  const out: Level[] = [];
  for (const level of levels) {
    const last = out.at(-1);
    if (!last || last.height - level.height > SAME) out.push(level);
    else {
      const water = last.water ?? level.water;
      out[out.length - 1] = {
        ...last,
        name: words.sheetsSections.cut.both(last.name, level.name),
        from: Math.min(last.from, level.from),
        ...(water && { water }),
      };
    }
  }
  return out;
}

function tankLevels(cut: Cut, tank: Tank, estimate: Estimate, finished: Section): Level[] {
  const { level } = words.sheetsSections.cut;
  const [left, right] = cut.floor;
  const middle = (left + right) / 2;
  const [near, edge] = [left + tank.overdig, right - tank.overdig];
  const { base, body } = tank;
  const over = (height: number | undefined): number => (height === undefined ? NaN : base + height);
  const water = estimate.holes.find((hole) => hole.work === tank.id)?.water;
  const floor = base - tank.bedding.depth;
  return [
    { height: heightOn(finished.surface, middle) ?? NaN, name: level.ground, from: edge },
    { height: base + body.height, name: level.tankTop, from: edge },
    { height: over(body.inlet), name: level.inlet, from: edge },
    ...waterLevels(tank, estimate, edge, [near, edge]),
    { height: base, name: level.underside, from: edge },
    { height: floor, name: level.floor, from: right },
    ...(water && water.overFloor > 0
      ? [
          {
            height: floor + water.overFloor,
            name: water.met ? level.waterMet : level.waterGiven,
            from: cut.changed[0],
            water: cut.changed,
          },
        ]
      : []),
  ];
}

/**
 * Outlet and water: a tank that runs over stands full to its outlet; a pumped one stands between the
 * levels where its pump starts and stops, and its sign is at the upper of those that are known.
 */
function waterLevels(
  { id, base, body }: Tank,
  { flow }: Estimate,
  from: number,
  water: readonly [number, number],
): Level[] {
  const { level } = words.sheetsSections.cut;
  const outlet = body.outlet === undefined ? NaN : base + body.outlet;
  const pumped = flow.pressure.find(({ tank }) => tank === id)?.water;
  const lift = flow.lifts.find(({ tank }) => tank === id);
  const low = pumped?.low ?? lift?.lowWater;
  if (low === undefined) {
    const stops = body.lowWater === undefined ? NaN : base + body.lowWater;
    return [
      { height: outlet, name: level.outletWater, from, water },
      { height: stops, name: level.lowWater, from },
    ];
  }
  const starts = pumped?.high ?? null;
  const lowWater = { height: low, name: level.lowWater, from };
  return [
    { height: outlet, name: level.outlet, from },
    ...(starts === null
      ? [{ ...lowWater, water }]
      : [{ height: starts, name: level.pumpStarts, from, water }, lowWater]),
  ];
}

function padLevels(cut: Cut, pad: Pad, scheme: Scheme): Level[] {
  const { level } = words.sheetsSections.cut;
  const [, right] = cut.floor;
  const bed = scheme.works.find(
    (work): work is Bed => work.kind === "bed" && insideRings(work.at, [pad.outline]),
  );
  const course = pad.course?.depth ?? 0;
  const own = [
    { height: pad.top, name: pad.fall ? level.padMiddle : level.padTop, from: right },
    ...(course > 0 ? [{ height: pad.top - course, name: level.subgrade, from: right }] : []),
  ];
  return bed === undefined ? own : [...own, ...bedLevels(cut, bed)];
}

function bedLevels({ floor }: Cut, bed: Bed): Level[] {
  const { level } = words.sheetsSections.cut;
  const from = (floor[0] + floor[1]) / 2;
  return [
    { height: bed.base + bed.height, name: level.bedTop, from },
    {
      height: bed.overflow === undefined ? NaN : bed.base + bed.overflow,
      name: level.overflow,
      from,
    },
    { height: bed.base, name: level.bedBase, from },
  ];
}
