/** Each hole of a scheme: what its layers want of its walls, what is drawn, water, ways out. */
import type { DigResult, WorkQuantities } from "../dig/index.js";
import { tankWater } from "../flow/index.js";
import {
  classRun,
  layerClass,
  layerRun,
  materialsOf,
  NATIVE,
  ruleOf,
  type Layer,
  type Material,
  type Scheme,
  type Site,
  type SoilClassId,
  type Tank,
  type Walls,
  type Work,
} from "../site/index.js";
import {
  faceAtOpening,
  floorLines,
  tallestPlace,
  type FloorLine,
  type FloorPlace,
  type HoleGround,
} from "./holeFloor.js";
import { laddersOf, type Ladder } from "./ladders.js";
import { sidesOf } from "./sides.js";
import { layeredRuns, topWidth } from "./wallRules.js";

/** One layer in the wall of a hole, over the floor's edge. */
export interface HoleLayer {
  /** Id of the site's layer; null for earth that stood there before and is no layer of the site. */
  layer: string | null;
  name: string;
  material: string;
  /** m thick there, within the hole. */
  thickness: number;
  class: SoilClassId;
  /** Whether the water stands in it. */
  submerged: boolean;
  /** Run per 1 of rise that it is given by itself, and what it wants over what lies under it. */
  own: number;
  wanted: number;
  /** Run per 1 of rise that it is drawn at: the steepest of the hole's sides. */
  drawn: number;
}

/** A hole and its walls. SI; runs per 1 of rise. */
export interface HoleReport {
  work: string;
  name: string;
  /** m of the tallest face: from the floor's level up to the ground where the wall comes out. */
  face: number;
  /**
   * Top down, over the floor's edge where the ground as found stands highest over it: there a wall has
   * its foot. Empty where the ground there is not known.
   */
  layers: readonly HoleLayer[];
  /** m of ground over the floor's edge there; on a slope less than `face`. Null where not known. */
  layersOver: number | null;
  /** m across the floor, and across the top in level ground as wanted and drawn; null for a pad. */
  width: { floor: number; wanted: number; drawn: number } | null;
  /** Walls that stand as the layers want; null where nothing is to change. */
  change: Walls | null;
  /** Whether the ½ : 1 of type A soil, open a day and not too deep, was used. */
  shortTerm: boolean;
  /** Water that was met near it: m below the ground over the floor's edge, and m over the floor. */
  water: { depth: number; overFloor: number; met: boolean } | null;
  ladders: readonly Ladder[];
}

/** m: ground of the site that is missing over a face by less than this is the sampling's doing. */
const NOTICEABLE = 0.1;

/** The holes of a scheme in building order, those that cut something. */
export function holesOf(
  site: Site,
  scheme: Scheme,
  dig: Pick<DigResult, "works" | "pipes">,
  ground: HoleGround,
): HoleReport[] {
  const materials = materialsOf(site);
  return scheme.works.flatMap((work) => {
    const dug = dig.works.find(({ id }) => id === work.id);
    if (dug === undefined || dug.deepest <= 0 || !("walls" in work)) return [];
    const lines = floorLines(work, dig.pipes, ground.groundAt);
    return [holeReport({ site, scheme, work, dug, lines, ground, materials })];
  });
}

type Holed = Extract<Work, { walls: Walls }>;

interface Around {
  site: Site;
  scheme: Scheme;
  work: Holed;
  dug: WorkQuantities;
  lines: readonly FloorLine[];
  ground: HoleGround;
  materials: ReadonlyMap<string, Material>;
}

function holeReport(around: Around): HoleReport {
  const { site, work, dug, lines } = around;
  const face = Math.max(dug.tallestFace, dug.deepest);
  const at = tallestPlace(lines);
  const water = waterOf(around, at);
  // The highest groundwater of the year need not stand there on the day.
  const wet = water?.met === true ? water.depth : Infinity;
  const stack = at === null ? [] : stackAt(around, at, face, wet);
  const shortTerm = isShortTerm(around, face, stack);
  const own = stack.map((each) =>
    shortTerm && each.class === "type-a" ? classRun("type-a-short") : each.own,
  );
  const wanted = layeredRuns(own);
  const drawn = drawnRuns(around, stack);
  const layers = stack.map((each, i) => ({
    ...each,
    own: own[i]!,
    wanted: wanted[i]!,
    drawn: drawn[i]!,
  }));
  return {
    work: work.id,
    name: work.name,
    face,
    layers,
    layersOver: at?.face ?? null,
    width: widthsOf(work, layers),
    change: wallsWanted(around, layers),
    shortTerm,
    water,
    ladders: laddersOf(work, face, lines, site),
  };
}

/**
 * Water under a hole: as the probes met it, or where none did, the highest that the scheme says it
 * comes to. (Empty tanks are weighed against the higher of the two, since they stand all year.)
 */
function waterOf(around: Around, at: FloorPlace | null): HoleReport["water"] {
  if (at === null) return null;
  const { scheme, ground, work } = around;
  if (work.kind === "tank") return waterAtTank(around, work);
  const met = ground.waterAt?.(at.at);
  const depth = met ?? scheme.flow?.flotation?.water;
  if (depth === undefined || !Number.isFinite(depth)) return null;
  return { depth, overFloor: at.face - depth, met: met !== undefined };
}

/** The water of a tank's hole, where it comes highest over the floor. */
function waterAtTank({ scheme, ground }: Around, tank: Tank): HoleReport["water"] {
  const given = scheme.flow?.flotation?.water;
  const depthAt = ground.waterAt ?? (given === undefined ? null : (): number => given);
  const water = depthAt === null ? null : tankWater(tank, ground.groundAt, depthAt);
  if (water === null) return null;
  const overFloor = water.elevation - (tank.base - tank.bedding.depth);
  return { depth: water.depth, overFloor, met: ground.waterAt !== null };
}

type Stacked = Omit<HoleLayer, "wanted" | "drawn">;

/** The layers of a face from the top down. */
function stackAt(around: Around, at: FloorPlace, face: number, water: number): Stacked[] {
  const { site, ground, dug } = around;
  const thickness = ground.thicknessAt(at.at);
  const stack: Stacked[] = [];
  // On a slope the wall comes out higher than over the floor's edge: that is no earlier earth.
  const found = faceAtOpening(around.lines, dug.outlines?.daylight ?? [], ground.groundAt);
  const gone = found - face > NOTICEABLE ? found - face : 0;
  let depth = 0;
  for (const [i, layer] of site.ground.layers.entries()) {
    const bottom = Math.min(at.face, depth + (thickness[i] ?? Infinity));
    // What was stripped or dug away before is no wall of this hole.
    const top = Math.max(depth, gone);
    if (bottom - top > 1e-6) stack.push(layerIn(around, layer, bottom - top, bottom > water));
    depth = bottom;
  }
  const missing = face - found;
  const filled = dug.materialsMet.includes(NATIVE);
  if (missing <= NOTICEABLE || !filled) return stack;
  return [earlierFill(around, missing), ...stack];
}

function layerIn(around: Around, layer: Layer, thickness: number, submerged: boolean): Stacked {
  const said = layerClass(layer).id;
  // App. A (b), type C (iii) and (iv): rock that somebody has found stable stays what it is.
  const wet = submerged && said !== "stable-rock";
  const id: SoilClassId = wet ? "type-c" : said;
  return {
    layer: layer.id,
    name: layer.name,
    material: layer.material,
    thickness,
    class: id,
    submerged,
    own: wet
      ? Math.max(classRun("type-c"), layerRun(layer, around.materials))
      : layerRun(layer, around.materials),
  };
}

/** Old fill is never type A, and nobody has typed this. */
function earlierFill({ site }: Around, thickness: number): Stacked {
  return {
    layer: null,
    name: "Earlier backfill",
    material: NATIVE,
    thickness,
    class: "untyped",
    submerged: false,
    own: ruleOf(site, "untyped-run").value,
  };
}

/** Table B-1's note: an excavation in type A soil, so deep at most, open 24 hours or less. */
function isShortTerm({ site, work }: Around, face: number, stack: readonly Stacked[]): boolean {
  if (!("openDay" in work) || work.openDay !== true) return false;
  if (face > ruleOf(site, "short-open-depth").value + 1e-9) return false;
  return stack.length > 0 && stack.every((each) => each.class === "type-a");
}

function drawnRuns({ site, work, materials }: Around, stack: readonly Stacked[]): number[] {
  const { walls } = work;
  if (walls.by === "layers") {
    return layeredRuns(
      stack.map(({ layer, own }) => {
        const found = site.ground.layers.find(({ id }) => id === layer);
        return found === undefined ? own : layerRun(found, materials);
      }),
    );
  }
  const run =
    walls.by === "benches"
      ? walls.tread / walls.rise
      : Math.min(...(sidesOf(work) ?? [{ run: walls.run }]).map((side) => side.run));
  return stack.map(() => run);
}

function widthsOf(work: Holed, layers: readonly HoleLayer[]): HoleReport["width"] {
  if (work.kind === "pad") return null;
  const floor = work.kind === "trench" ? work.width : work.body.width + 2 * work.overdig;
  const thick = layers.map((each) => each.thickness);
  const across = (runs: readonly number[]) => topWidth(floor, thick, runs);
  return {
    floor,
    wanted: across(layers.map((each) => each.wanted)),
    drawn: across(layers.map((each) => each.drawn)),
  };
}

/**
 * Walls for a hole as its layers want them: each layer at its own slope where that is enough, else
 * one slope at the flattest that any wants (the water asks for more than a layer does by itself).
 */
function wallsWanted(around: Around, layers: readonly HoleLayer[]): Walls | null {
  const steep = layers.some((each) => each.drawn < each.wanted - 1e-9);
  if (!steep) return null;
  const byLayers = drawnRuns(
    { ...around, work: { ...around.work, walls: { by: "layers" } } },
    layers,
  );
  const enough = layers.every((each, i) => byLayers[i]! >= each.wanted - 1e-9);
  if (enough) return { by: "layers" };
  return { by: "run", run: Math.max(...layers.map((each) => each.wanted)) };
}
