import type { Crane, Estimate } from "../../estimate/index.js";
import {
  catalogueCranes,
  chartRow,
  firstPlaces,
  groundAt,
  insideRings,
  placesBeside,
} from "../../estimate/index.js";
import type { HoleBeside } from "../../estimate/index.js";
import { ruleOf } from "../../site/index.js";
import type { Lift, PlanPoint, Site, Tank } from "../../site/index.js";
import { words } from "../../words/index.js";

type Works = Estimate["works"];

/** kg of slings and shackles to begin with: common practice, no source. */
const RIGGING = 100;
/** m: a new place nearer than this to one that is there would be the same place. */
const APART = 1;
/** m added between the pads, so that rounding a place does not bring it too near the edge. */
const SLACK = 0.01;

/**
 * The lift to begin with: the smallest crane of the catalogue whose chart carries the tank from one
 * of two places beside its hole (the largest if none does, the first if the tank has no weight).
 */
export function newLift(site: Site, works: Works, tank: Tank): Lift {
  const cranes = catalogueCranes();
  const { emptyMass } = tank.body;
  const carries = (crane: Crane): boolean =>
    emptyMass !== undefined &&
    placesFor(site, works, tank, crane.outriggers).some((at) => {
      const row = chartRow(crane.table, distance(tank.at, at));
      return row !== null && row.load >= emptyMass + RIGGING + crane.block;
    });
  const crane =
    cranes.find(carries) ?? (emptyMass === undefined ? cranes[0] : cranes.at(-1)) ?? cranes[0]!;
  const stands = placesFor(site, works, tank, crane.outriggers).map((at, i) => ({
    id: `stand-${i + 1}`,
    name: words.machinesLeaf.place(i + 1),
    at: rounded(at),
  }));
  return { crane: { by: "catalogue", id: crane.id }, rigging: RIGGING, stands };
}

/** Another place beside the tank's hole, on a side where none is yet; else beside the last one. */
export function nextPlace(
  site: Site,
  works: Works,
  tank: Tank,
  stands: readonly { at: PlanPoint }[],
  spread: number,
): PlanPoint {
  const free = placesBeside(tank, holeOf(site, works, tank), spread + SLACK).find((at) =>
    stands.every((stand) => distance(stand.at, at) > APART),
  );
  const [east, north] = stands.at(-1)?.at ?? tank.at;
  return rounded(free ?? [east + 2 * APART, north]);
}

function placesFor(site: Site, works: Works, tank: Tank, spread: number): PlanPoint[] {
  const holes = works.flatMap(({ outlines }) => outlines?.daylight ?? []);
  return firstPlaces(
    tank,
    holeOf(site, works, tank),
    spread + SLACK,
    (at) => groundAt(site, at) !== null && !insideRings(at, holes),
  );
}

/** A tank's hole as it was dug; without one, nothing to keep from but the tank. */
function holeOf(site: Site, works: Works, tank: Tank): HoleBeside {
  const hole = works.find(({ id }) => id === tank.id);
  if (hole === undefined) return { edge: [], keepOff: 0 };
  return {
    edge: hole.outlines?.daylight ?? [],
    keepOff: ruleOf(site, "crane-back").value * Math.max(hole.deepest, hole.tallestFace),
  };
}

function distance(a: PlanPoint, b: PlanPoint): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** To a millimetre: no stand is put down finer. */
function rounded([east, north]: PlanPoint): PlanPoint {
  return [Math.round(east * 1000) / 1000, Math.round(north * 1000) / 1000];
}
