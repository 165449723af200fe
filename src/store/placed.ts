/**
 * What a click puts down: works with typical sizes, set at a sensible depth in the ground there.
 * Sizes are typical, no source; every one can be typed over.
 */
import pipeRows from "../../shared/catalogue/pipes.json" with { type: "json" };
import tankRows from "../../shared/catalogue/tanks.json" with { type: "json" };
import { groundAt } from "../estimate/index.js";
import {
  addWork,
  catalogueName,
  changeFlow,
  freshId,
  guessedNote,
  materialsOf,
  NATIVE,
} from "../site/index.js";
import { newDrain, newFieldPipe, type NewPipe } from "./newPipes.js";
import { toCentimetre, toMillimetre } from "./rounded.js";
import { sizesToPlace } from "./sizes.js";
import type {
  Bed,
  Pad,
  Pipe,
  PlanPoint,
  Probe,
  Site,
  Strip,
  Tank,
  Trench,
  Work,
} from "../site/index.js";

/** What can be placed by clicking in the scene. */
export type PlaceKind =
  "tank" | "bed" | "probe" | "pad" | "trench" | "field" | "building" | "strip" | "outlet" | "limit";

/** The catalogue row of this id; throws when the catalogue lacks it. */
function rowOf<T extends { id: string }>(rows: readonly T[], id: string): T {
  const row = rows.find((one) => one.id === id);
  if (row === undefined) throw new Error(`catalogue: got no "${id}", expected it`);
  return row;
}

/** A tank's body from the catalogue: outside sizes, m; inverts above the underside, m; kg, m³. */
export function tankBody(id: string): Tank["body"] {
  const row = rowOf(tankRows.tanks, id);
  const { length, width, height, emptyMass, liquidVolume, inlet, outlet } = row;
  return { length, width, height, emptyMass, liquidVolume, inlet, outlet };
}

/** A pipe's bore, outside (m) and make from the catalogue. */
export function pipeSize(id: string): Pick<Pipe, "inside" | "outside" | "material"> {
  const { inside, outside, name } = rowOf(pipeRows.pipes, id);
  return { inside, outside, material: name };
}

/** Rows of a catalogue with their names as a site of these units reads them. */
export function namedFor<T extends { name: string }>(
  rows: readonly T[],
  units: Site["units"],
): T[] {
  return rows.map((row) => ({ ...row, name: catalogueName(row.name, units) }));
}

/** Catalogue tanks and pipes to choose from. */
export const tankChoices: readonly { id: string; name: string }[] = tankRows.tanks;
export const pipeChoices: readonly {
  id: string;
  name: string;
  inside: number;
  outside: number;
  services: readonly string[];
}[] = pipeRows.pipes;

/** What is placed unless the person says otherwise. */
export const GRAVITY_PIPE = "schedule-40-4-in";
export const PRESSURE_PIPE = "schedule-40-2-in";
const FIRST_TANK = "tank-1000-gal";

/** The first of these materials that the site may name, else the first of this kind. */
function materialFor(site: Site, wanted: string, kind: string): string {
  const all = materialsOf(site);
  if (all.has(wanted)) return wanted;
  for (const material of all.values()) if (material.kind === kind) return material.id;
  throw new Error(`expected a material of kind ${kind} in the catalogue, got none`);
}

function grounds(site: Site, at: readonly PlanPoint[]): number[] {
  return at.map((place) => groundAt(site, place)).filter((z) => z !== null);
}

const meanOf = (list: readonly number[]): number =>
  list.reduce((sum, one) => sum + one, 0) / list.length;

/** Number in the name of the next work of a kind: "Tank 3"; fields are counted by their names. */
function nextName(site: Site, schemeId: string, kind: PlaceKind, word: string): string {
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const names = new Set(works.map((work) => work.name));
  let count = works.filter((work) => work.kind === kind).length + 1;
  while (names.has(`${word} ${count}`)) count += 1;
  return `${word} ${count}`;
}

const FIELD_PIPE_NAME = "Field pipe";
const PIPE_NAMES = { gravity: "Drain", pressure: "Lift line", conduit: "Conduit" } as const;

/** A name for a pipe that no other pipe of the scheme has; `but` is left out of account. */
export function nextPipeName(
  site: Site,
  schemeId: string,
  service: Pipe["service"],
  but?: string,
  word: string = PIPE_NAMES[service],
): string {
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const pipes = works.flatMap((work) => (work.kind === "trench" ? work.pipes : []));
  const names = new Set(pipes.filter((pipe) => pipe.id !== but).map((pipe) => pipe.name));
  let count = 1;
  let name = word;
  while (names.has(name)) name = `${word} ${++count}`;
  return name;
}

/** Where clicks fell, to the centimetre, and the ground there, m. */
interface Spot {
  site: Site;
  schemeId: string;
  id: string;
  name: string;
  at: PlanPoint[];
  first: PlanPoint;
  /** Ground at each place. */
  heights: number[];
  /** Ground at the first. */
  ground: number;
}

function tankAt({ site, id, name, first, ground }: Spot): Tank {
  const body = tankBody(FIRST_TANK);
  const { underTop, overdig, bedding, holeWall } = sizesToPlace(site);
  return {
    kind: "tank",
    id,
    name,
    at: first,
    bearing: 0,
    body,
    base: toCentimetre(ground - underTop - body.height),
    overdig,
    bedding: { depth: bedding, material: materialFor(site, "crushed-gravel", "aggregate") },
    walls: { by: "run", run: holeWall },
    backfill: NATIVE,
  };
}

function bedAt({ site, id, name, first, ground }: Spot): Bed {
  const { bed, sand, gravel } = sizesToPlace(site);
  return {
    kind: "bed",
    id,
    name,
    at: first,
    bearing: 0,
    ...bed,
    base: toCentimetre(ground),
    filling: [
      { material: materialFor(site, "drain-sand", "aggregate"), depth: sand },
      { material: materialFor(site, "pea-gravel", "aggregate"), depth: gravel },
    ],
  };
}

function padOn({ site, id, name, at, heights }: Spot): Pad {
  const { holeWall, fillRun } = sizesToPlace(site);
  return {
    kind: "pad",
    id,
    name,
    outline: at,
    top: toCentimetre(meanOf(heights)),
    walls: { by: "run", run: holeWall },
    fillRun,
    fill: NATIVE,
  };
}

/** How deep a strip goes until the person says: the whole top layer where there is one to end. */
function stripDepth(site: Site): Pick<Strip, "depth"> {
  return site.ground.layers.length > 1 ? {} : { depth: sizesToPlace(site).topLayer };
}

function stripOn({ site, id, name, at }: Spot): Strip {
  return {
    kind: "strip",
    id,
    name,
    area: { by: "outline", outline: at },
    ...stripDepth(site),
    putBack: { depth: sizesToPlace(site).putBack },
  };
}

/** A strip of the topsoil over a work of the scheme that has an area, and a margin around it. */
export function stripOver(site: Site, schemeId: string, workId: string): Strip {
  const { beyond, putBack } = sizesToPlace(site);
  return {
    kind: "strip",
    id: freshId(site, "strip"),
    name: nextName(site, schemeId, "strip", NAMES.strip),
    area: { by: "work", work: workId, beyond },
    ...stripDepth(site),
    putBack: { depth: putBack },
  };
}

/** Place in the building order for a new strip: after the strips that come first, before all else. */
export function stripPlace(site: Site, schemeId: string): number {
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const first = works.findIndex((work) => work.kind !== "strip");
  return first < 0 ? works.length : first;
}

function trenchAlong(spot: Spot): Trench {
  const { site, id, name, at } = spot;
  const sizes = sizesToPlace(site);
  const gravel = materialFor(site, "crushed-gravel", "aggregate");
  return {
    kind: "trench",
    id,
    name,
    path: at,
    width: sizes.trench,
    walls: { by: "run", run: sizes.trenchWall },
    bedding: { depth: sizes.pipeBedding, material: gravel },
    zone: { above: sizes.zone, material: gravel },
    backfill: NATIVE,
    pipes: [newDrain(pipeIn(spot, nextPipeName(site, spot.schemeId, "gravity")))],
  };
}

function pipeIn({ site, schemeId, at, ground }: Spot, name: string): NewPipe {
  return { site, schemeId, name, size: pipeSize(GRAVITY_PIPE), path: at, ground };
}

/** A trench of the field: gravel under and over a level pipe. */
function fieldAlong(spot: Spot): Trench {
  const { site, schemeId } = spot;
  const { fieldTrench, fieldUnder, fieldOver } = sizesToPlace(site);
  const trench = trenchAlong(spot);
  const name = nextPipeName(site, schemeId, "gravity", undefined, FIELD_PIPE_NAME);
  return {
    ...trench,
    width: fieldTrench,
    bedding: { ...trench.bedding, depth: fieldUnder },
    zone: { ...trench.zone, above: fieldOver },
    pipes: [newFieldPipe(pipeIn(spot, name))],
  };
}

/** The site with a new work in it; one placed as a field takes the water from the start. */
export function withPlaced(site: Site, schemeId: string, kind: PlaceKind, work: Work): Site {
  const order = work.kind === "strip" ? stripPlace(site, schemeId) : undefined;
  const added = addWork(site, schemeId, work, order);
  if (kind !== "field") return added;
  const field = added.schemes.find((scheme) => scheme.id === schemeId)?.flow?.field ?? [];
  return changeFlow(added, schemeId, { field: [...field, work.id] });
}

const NAMES = {
  tank: "Tank",
  bed: "Raised bed",
  pad: "Pad",
  building: "Building",
  trench: "Trench",
  field: "Field trench",
  strip: "Topsoil strip",
} as const;
const LEAST_PLACES = {
  tank: 1,
  bed: 1,
  pad: 3,
  building: 3,
  trench: 2,
  field: 2,
  strip: 3,
} as const;

/**
 * The work that these clicks put down: one place for a tank or bed, the corners of a pad, building
 * or strip, the path of a trench or field trench. Null where the survey does not reach, or with too few places.
 */
export function placedWork(
  site: Site,
  schemeId: string,
  kind: Exclude<PlaceKind, "probe" | "outlet" | "limit">,
  places: readonly PlanPoint[],
): Work | null {
  const at = places.map(toMillimetre);
  const [first] = at;
  const heights = grounds(site, at);
  const [ground] = heights;
  if (first === undefined || ground === undefined || heights.length < at.length) return null;
  if (at.length < LEAST_PLACES[kind]) return null;
  const name = nextName(site, schemeId, kind, NAMES[kind]);
  const spot: Spot = { site, schemeId, id: freshId(site, kind), name, at, first, heights, ground };
  switch (kind) {
    case "tank":
      return tankAt(spot);
    case "bed":
      return bedAt(spot);
    case "pad":
      return padOn(spot);
    case "trench":
      return trenchAlong(spot);
    case "field":
      return fieldAlong(spot);
    case "strip":
      return stripOn(spot);
    case "building":
      return {
        kind,
        id: spot.id,
        name,
        outline: at,
        base: toCentimetre(Math.max(...heights)),
        height: sizesToPlace(site).storey,
      };
  }
}

/**
 * A probe at a place, with thicknesses to start from: the nearest probe's, or for the first one
 * 0.2 m of the top layer and 1 m of each layer under it. Its note says that none is measured.
 */
export function placedProbe(site: Site, place: PlanPoint): Probe {
  const id = freshId(site, "probe");
  const [x, y] = toMillimetre(place);
  const distance = (probe: Probe): number => Math.hypot(probe.x - x, probe.y - y);
  const nearest = site.ground.probes.toSorted((a, b) => distance(a) - distance(b))[0];
  const { topLayer, layer } = sizesToPlace(site);
  const typical = site.ground.layers
    .slice(0, -1)
    .map((_, index) => (index === 0 ? topLayer : layer));
  const note = guessedNote(site);
  return {
    id,
    x,
    y,
    thickness: nearest?.thickness.slice() ?? typical,
    ...(note === undefined ? {} : { note }),
  };
}
