/** The built things of a scheme as plain triangles: tanks, beds, buildings and pipes. */
import earcut from "earcut";
import {
  bedCourses,
  groundAt,
  hasCome,
  invertLine,
  rectangle,
  signedArea,
} from "../../estimate/index.js";
import type { Stage } from "../../estimate/index.js";
import { materialsOf } from "../../site/index.js";
import type { Bed, Building, PlanPoint, Site, Tank, Trench, Work } from "../../site/index.js";

/** What a built solid is, as a model's reader sees it; a bed's filling is of a material instead. */
export type SolidKind = "concrete" | "timber" | "building" | "gravity" | "pressure" | "conduit";

/** One thing: site coordinates, m; triangles are consecutive triples of corners, seen from outside. */
export interface Solid {
  /** Id of the work or pipe. A bed's walls and courses have one id. */
  id: string;
  name: string;
  kind: SolidKind | { material: string };
  /** x, y, z per corner. */
  corners: readonly number[];
}

/** The ground as found, and each kind of solid, in models and pictures. */
export const GRASS = "#b6b284";
export const SOLID_COLOURS: Readonly<Record<SolidKind, string>> = {
  concrete: "#d9d5c9",
  timber: "#a9814f",
  building: "#e8dcc0",
  gravity: "#3d6b52",
  pressure: "#2f6f73",
  conduit: "#7b5a86",
};

type Corner = readonly [number, number, number];

const quad = (a: Corner, b: Corner, c: Corner, d: Corner): number[] => [
  ...a,
  ...b,
  ...c,
  ...a,
  ...c,
  ...d,
];

/** An upright prism on an outline, closed above and below. */
export function prism(outline: readonly PlanPoint[], bottom: number, top: number): number[] {
  const round = signedArea(outline) < 0 ? [...outline].reverse() : outline;
  const sides = round.flatMap((a, i) => {
    const b = round[(i + 1) % round.length] ?? a;
    return quad([...a, bottom], [...b, bottom], [...b, top], [...a, top]);
  });
  const numbers = earcut(round.flat());
  const lid: number[] = [];
  const floor: number[] = [];
  for (let i = 0; i < numbers.length; i += 3) {
    const [a, b, c] = [round[numbers[i]!]!, round[numbers[i + 1]!]!, round[numbers[i + 2]!]!];
    // The library does not say which way round its triangles lie.
    const [p, q] = signedArea([a, b, c]) < 0 ? [c, b] : [b, c];
    lid.push(...a, top, ...p, top, ...q, top);
    floor.push(...a, bottom, ...q, bottom, ...p, bottom);
  }
  return [...sides, ...lid, ...floor];
}

/** A riser's outside diameter, m: for the picture alone, where the tank names none. */
const RISER = 0.6;
const RISER_SIDES = 16;

/** Middle of a riser along the tank from its centre, as a share of the length. */
const RISER_PLACES = [-0.3, 0.3];

function circle([x, y]: PlanPoint, radius: number, sides: number): PlanPoint[] {
  return Array.from({ length: sides }, (_, i): PlanPoint => {
    const turn = (2 * Math.PI * i) / sides;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
}

/** The body, and two risers up to the ground as found where that is above the lid. */
function tankCorners(site: Site, tank: Tank): number[] {
  const { length, width, height } = tank.body;
  const lid = tank.base + height;
  const ground = groundAt(site, tank.at) ?? lid;
  const body = prism(rectangle(tank.at, tank.bearing, length, width), tank.base, lid);
  if (ground <= lid) return body;
  const turn = (tank.bearing * Math.PI) / 180;
  const risers = RISER_PLACES.flatMap((share) => {
    const at: PlanPoint = [
      tank.at[0] + Math.sin(turn) * length * share,
      tank.at[1] + Math.cos(turn) * length * share,
    ];
    return prism(circle(at, RISER / 2, RISER_SIDES), lid, ground + 0.08);
  });
  return [...body, ...risers];
}

/** A bed without a wall thickness gets one that can be seen. */
const wallOf = (bed: Bed): number => Math.max(bed.wall, 0.05);

/** Four walls. */
function bedCorners(bed: Bed): number[] {
  const wall = wallOf(bed);
  const turn = (bed.bearing * Math.PI) / 180;
  const along: PlanPoint = [Math.sin(turn), Math.cos(turn)];
  const across: PlanPoint = [Math.cos(turn), -Math.sin(turn)];
  const at = (way: PlanPoint, by: number): PlanPoint => [
    bed.at[0] + way[0] * by,
    bed.at[1] + way[1] * by,
  ];
  const top = bed.base + bed.height;
  const long = (side: number): number[] =>
    prism(
      rectangle(at(across, (side * (bed.width - wall)) / 2), bed.bearing, bed.length, wall),
      bed.base,
      top,
    );
  const short = (end: number): number[] =>
    prism(
      rectangle(
        at(along, (end * (bed.length - wall)) / 2),
        bed.bearing,
        wall,
        Math.max(0.01, bed.width - 2 * wall),
      ),
      bed.base,
      top,
    );
  return [...long(1), ...long(-1), ...short(1), ...short(-1)];
}

/** The walls, and each course of what is in the bed at a stage. */
function bedSolids(site: Site, bed: Bed, stage: Stage): Solid[] {
  const { id, name } = bed;
  const [length, width] = [bed.length - 2 * wallOf(bed), bed.width - 2 * wallOf(bed)];
  const walls: Solid = { id, name, kind: "timber", corners: bedCorners(bed) };
  if (length <= 0 || width <= 0) return [walls];
  const inside = rectangle(bed.at, bed.bearing, length, width);
  const courses = bedCourses(bed, materialsOf(site), hasCome(stage, "backfilled"));
  return [
    walls,
    ...courses.map(({ material, bottom, top }): Solid => ({
      ...{ id, name, kind: { material } },
      corners: prism(inside, bottom, top),
    })),
  ];
}

const PIPE_SIDES = 12;

/** A round tube along a line of centres, with flat ends; each ring stands upright across its way. */
export function tube(line: readonly Corner[], radius: number): number[] {
  const places = line.filter((at, i) => i === 0 || apart(at, line[i - 1]!) > 1e-6);
  if (places.length < 2) return [];
  const rings = places.map((at, i) => {
    const [before, after] = [
      places[Math.max(0, i - 1)]!,
      places[Math.min(places.length - 1, i + 1)]!,
    ];
    const size = Math.hypot(after[0] - before[0], after[1] - before[1]);
    // A pipe that stands upright has no way in plan.
    const [ax, ay] =
      size < 1e-9 ? [1, 0] : [(after[1] - before[1]) / size, -(after[0] - before[0]) / size];
    return Array.from({ length: PIPE_SIDES }, (_, k): Corner => {
      const turn = (2 * Math.PI * k) / PIPE_SIDES;
      const out = radius * Math.cos(turn);
      return [at[0] + ax * out, at[1] + ay * out, at[2] + radius * Math.sin(turn)];
    });
  });
  const skin = rings.slice(1).flatMap((ring, i) =>
    ring.flatMap((corner, k) => {
      const next = (k + 1) % PIPE_SIDES;
      return quad(rings[i]![k]!, corner, ring[next]!, rings[i]![next]!);
    }),
  );
  const fan = (ring: readonly Corner[], at: Corner, turned: boolean): number[] =>
    ring.flatMap((corner, k) => {
      const next = ring[(k + 1) % ring.length]!;
      return turned ? [...at, ...next, ...corner] : [...at, ...corner, ...next];
    });
  return [
    ...skin,
    ...fan(rings[0]!, places[0]!, false),
    ...fan(rings[rings.length - 1]!, places[places.length - 1]!, true),
  ];
}

function apart(a: Corner, b: Corner): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}

function pipesOf(site: Site, trench: Trench): Solid[] {
  return trench.pipes.map((pipe) => ({
    id: pipe.id,
    name: pipe.name,
    kind: pipe.service,
    corners: tube(
      invertLine(trench, pipe, (at) => groundAt(site, at)).map(([x, y, invert]): Corner => [
        x,
        y,
        invert + pipe.inside / 2,
      ]),
      pipe.outside / 2,
    ),
  }));
}

function buildingSolid(building: Building): Solid {
  const corners = prism(building.outline, building.base, building.base + building.height);
  return { id: building.id, name: building.name, kind: "building", corners };
}

/** The solids of one work as they stand at a stage; none for what is earth alone (pads, strips, piles). */
export function solidsOf(site: Site, work: Work, stage: Stage): Solid[] {
  if (work.kind !== "building" && !hasCome(stage, "set")) return [];
  switch (work.kind) {
    case "tank":
      return [{ id: work.id, name: work.name, kind: "concrete", corners: tankCorners(site, work) }];
    case "bed":
      return bedSolids(site, work, stage);
    case "building":
      return [buildingSolid(work)];
    case "trench":
      return pipesOf(site, work);
    case "pad":
    case "strip":
    case "pile":
      return [];
  }
}
