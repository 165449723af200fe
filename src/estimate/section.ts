/** The ground cut open along a line, and at one place, at any stage. Site coordinates. */
import type { PipeRun } from "../dig/index.js";
import {
  groundColumn,
  groundSection,
  groundSurface,
  LayeredGround,
  type BaseGround,
  type ColumnLayer,
  type SectionPiece,
  type SectionPlace,
} from "../ground/index.js";
import type { PlanPoint, Scheme, Site } from "../site/index.js";
import { stageDig, wholeDig } from "./dugSites.js";
import { groundOf, schemeOf } from "./estimate.js";
import { pipesAcross, type PipeAcross, type PipeAlong } from "./pipesAcross.js";
import type { GroundKind, SectionArea } from "./sectionTypes.js";
import { hasCome } from "./stages.js";
import type { Stage } from "./types.js";
import { worksAcross } from "./worksAcross.js";

/** The ground along a line at one stage: what `--section` prints. SI; stations are m in plan. */
export interface Section {
  format: "bankyard-section";
  version: 1;
  /** The site's name, and the scheme's id. */
  site: string;
  scheme: string;
  stage: Stage;
  /** The line as given, site coordinates. */
  line: readonly PlanPoint[];
  /** m in plan, and the stations of the line's bends. */
  length: number;
  bends: readonly number[];
  /** Elevation that the deepest layer is drawn down to; it has no bottom of its own. */
  datum: number;
  areas: readonly SectionArea[];
  /**
   * Raised beds and buildings, which stand on the ground and are not in `areas`: fillings ("placed"),
   * walls and buildings ("structure"). Whole, from the base up: where the ground stands above a
   * base they overlap it, and the estimate has a finding.
   */
  standing: readonly SectionArea[];
  /** Surface as found, and at the stage; one list of [station, elevation] within the survey each. */
  found: readonly (readonly SectionPlace[])[];
  surface: readonly (readonly SectionPlace[])[];
  /** Pipes that cross the line, laid or yet to be laid, and those that lie along it. */
  pipes: readonly PipeAcross[];
  pipesAlong: readonly PipeAlong[];
}

/** m that a section shows below its lowest place, at least; else a quarter of its relief. */
const BELOW = 1;

/**
 * Cuts the ground of a scheme open along a line of two or more places (site coordinates, m) at a
 * stage. `datum` (elevation, m) is how far down the last layer is drawn; by default at least a metre
 * below the lowest surface, base of what stands there, or pipe on the line. Where the line leaves
 * the survey there is no ground: `areas` is empty when it lies wholly outside. Along a vertical wall the ground to the
 * left of the line shows. Throws on fewer than two different places, and like `estimate`.
 */
export function sectionAlong(
  site: Site,
  schemeId: string,
  stage: Stage,
  line: readonly PlanPoint[],
  datum?: number,
): Section {
  const [start] = line;
  if (!start || line.every(([x, y]) => Math.hypot(x - start[0], y - start[1]) < 1e-6)) {
    throw new Error(`got a line of ${line.length} places, expected two or more different ones`);
  }
  const scheme = schemeOf(site, schemeId);
  const base = groundOf(site);
  const { ground, pipes } = groundAtStage(site, scheme, base, stage);
  const [ox, oy, oz] = base.tin.origin;
  const places = line.map(([x, y]) => [x - ox, y - oy] as const);
  const raised = (lines: readonly (readonly SectionPlace[])[]): SectionPlace[][] =>
    lines.map((each) => each.map(([station, z]) => [station, z + oz] as const));
  const found = raised(groundSurface(new LayeredGround(base), places));
  const crossings = pipesAcross(scheme, pipes, line, hasCome(stage, "set"));
  const standing = worksAcross(scheme, stage, line);
  const lowest = { surface: raised(groundSurface(ground, places)), found, standing, ...crossings };
  const down = datum ?? datumUnder(lowest);
  const cut = groundSection(ground, places, down - oz);
  return {
    format: "bankyard-section",
    version: 1,
    site: site.name,
    scheme: scheme.id,
    stage,
    line,
    length: cut.length,
    bends: cut.bends,
    datum: down,
    areas: cut.pieces.map((piece) => areaOf(piece, scheme, oz)).sort(bySizeOfWork),
    standing,
    found,
    surface: raised(cut.surface),
    ...crossings,
  };
}

/** One layer of the ground at a place. m. */
export interface ColumnPart {
  material: string;
  kind: GroundKind;
  work: string | null;
  top: number;
  /** Null for the deepest layer, which has no bottom. */
  bottom: number | null;
  thickness: number | null;
}

/** The ground at one place: what `--at` prints. */
export interface Column {
  format: "bankyard-column";
  version: 1;
  site: string;
  scheme: string;
  stage: Stage;
  at: PlanPoint;
  /** Elevation and layers, from the top down, as found and at the stage. */
  found: { elevation: number; layers: readonly ColumnPart[] };
  now: { elevation: number; layers: readonly ColumnPart[] };
}

/**
 * Elevation of the ground and of every layer at a place (site coordinates, m), as found and at a
 * stage; null beyond the survey. Throws like `estimate`.
 */
export function columnAt(site: Site, schemeId: string, stage: Stage, at: PlanPoint): Column | null {
  const scheme = schemeOf(site, schemeId);
  const base = groundOf(site);
  const { ground } = groundAtStage(site, scheme, base, stage);
  const [ox, oy, oz] = base.tin.origin;
  const found = groundColumn(new LayeredGround(base), at[0] - ox, at[1] - oy);
  const now = groundColumn(ground, at[0] - ox, at[1] - oy);
  if (!found || !now) return null;
  const shown = (layers: readonly ColumnLayer[]): Column["now"] => {
    const parts = layers.map((layer) => partOf(layer, scheme, oz));
    return { elevation: parts[0]!.top, layers: parts };
  };
  return {
    format: "bankyard-column",
    version: 1,
    site: site.name,
    scheme: scheme.id,
    stage,
    at,
    found: shown(found),
    now: shown(now),
  };
}

interface StageGround {
  ground: LayeredGround;
  pipes: readonly PipeRun[];
}

/** The ground of a scheme at a stage, and its pipes as in the whole job: to be read only. */
export function groundAtStage(
  site: Site,
  scheme: Scheme,
  base: BaseGround,
  stage: Stage,
): StageGround {
  const { pipes } = wholeDig(site, scheme, base).result;
  if (stage === "found") return { ground: new LayeredGround(base), pipes };
  return { ground: stageDig(site, scheme, base, stage), pipes };
}

function partOf(layer: ColumnLayer, scheme: Scheme, height: number): ColumnPart {
  const { material, top, bottom } = layer;
  return {
    material,
    kind: kindOf(layer),
    work: scheme.works[layer.by]?.id ?? null,
    top: top + height,
    bottom: bottom === null ? null : bottom + height,
    thickness: bottom === null ? null : top - bottom,
  };
}

function areaOf(piece: SectionPiece, scheme: Scheme, height: number): SectionArea {
  const raised = (ring: readonly SectionPlace[]): SectionPlace[] =>
    ring.map(([station, z]) => [station, z + height] as const);
  return {
    material: piece.material,
    kind: kindOf(piece),
    work: scheme.works[piece.by]?.id ?? null,
    outline: raised(piece.outline),
    holes: piece.holes.map(raised),
    area: piece.area,
  };
}

function kindOf({ by, structure }: { by: number; structure: boolean }): GroundKind {
  if (structure) return "structure";
  return by < 0 ? "natural" : "placed";
}

const KINDS: readonly GroundKind[] = ["natural", "placed", "structure"];

/** Natural ground first and built things last, as they are to be drawn. */
function bySizeOfWork(a: SectionArea, b: SectionArea): number {
  return KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind);
}

function datumUnder(shown: {
  surface: readonly (readonly SectionPlace[])[];
  found: readonly (readonly SectionPlace[])[];
  standing: readonly SectionArea[];
  pipes: readonly PipeAcross[];
  pipesAlong: readonly PipeAlong[];
}): number {
  let lowest = Infinity;
  let highest = -Infinity;
  const see = (z: number): void => {
    lowest = Math.min(lowest, z);
    highest = Math.max(highest, z);
  };
  for (const line of [...shown.surface, ...shown.found]) for (const [, z] of line) see(z);
  if (lowest > highest) return 0;
  for (const { outline } of shown.standing) see(Math.min(...outline.map(([, z]) => z)));
  for (const { centre, outside } of shown.pipes) see(centre[1] - outside / 2);
  for (const { centre, outside } of shown.pipesAlong) {
    for (const [, z] of centre) see(z - outside / 2);
  }
  const below = Math.max(BELOW, (highest - lowest) / 4);
  return Math.floor((lowest - below) * 10) / 10;
}
