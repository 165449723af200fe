/** Stepping a pad down a slope: where its next level goes. */
import { groundAt, groundSlopeAt } from "../estimate/index.js";
import { centreOfArea } from "../site/index.js";
import type { Pad, PlanPoint, Site, Walls } from "../site/index.js";
import { sizesToPlace } from "./sizes.js";
import { toCentimetre, toMillimetre } from "./rounded.js";

type Level = NonNullable<Pad["levels"]>[number];

const lastOutline = (pad: Pad): readonly PlanPoint[] => pad.levels?.at(-1)?.outline ?? pad.outline;

/** The way down from the pad's last level, as a unit vector, and how steep; null off the survey. */
function downhill(site: Site, pad: Pad): { way: PlanPoint; slope: number } | null {
  const ground = groundSlopeAt(site, centreOfArea(lastOutline(pad)));
  if (ground === null) return null;
  // On flat ground there is no way down: then the pad's own fall tells it, or south.
  const bearing = ground.slope > 1e-6 ? ground.fallsTowards : (pad.fall?.bearing ?? 180);
  const turn = (bearing * Math.PI) / 180;
  return { way: [Math.sin(turn), Math.cos(turn)], slope: ground.slope };
}

/** The flattest wall of these, run per rise; layers are taken at 1. */
function flattestRun(walls: Walls): number {
  switch (walls.by) {
    case "run":
      return Math.max(walls.run, ...(walls.sides ?? []));
    case "layers":
      return 1;
    case "benches":
      return walls.tread / walls.rise;
  }
}

/** Steps the bank between two levels may take up of the distance between them, at most. */
const MOST_BANK = 0.6;

/**
 * How far down the slope (m, in plan) the next level goes so that it lies clear of the last one: its
 * extent that way, and room for the flatter of wall and filled side between them. Null where the
 * survey does not reach.
 */
export function levelDistance(site: Site, pad: Pad): number | null {
  const down = downhill(site, pad);
  if (down === null) return null;
  const along = lastOutline(pad).map(([x, y]) => x * down.way[0] + y * down.way[1]);
  const extent = Math.max(...along) - Math.min(...along);
  const bank = Math.min(MOST_BANK, down.slope * Math.max(flattestRun(pad.walls), pad.fillRun));
  const { step } = sizesToPlace(site);
  return Math.ceil(extent / (1 - bank) / step) * step;
}

/**
 * The next level of a stepped pad: the last level's outline moved down the slope by a distance (m in
 * plan), its top at the mean of the ground at its corners. Null where the survey does not reach.
 */
export function nextLevel(site: Site, pad: Pad, distance: number): Level | null {
  const down = downhill(site, pad);
  if (down === null) return null;
  const outline = lastOutline(pad).map(([x, y]) =>
    toMillimetre([x + down.way[0] * distance, y + down.way[1] * distance]),
  );
  const heights = outline.map((at) => groundAt(site, at)).filter((z) => z !== null);
  if (heights.length < outline.length) return null;
  const top = heights.reduce((sum, z) => sum + z, 0) / heights.length;
  return { outline, top: toCentimetre(top) };
}
