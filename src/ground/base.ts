/** The ground as found: triangles, layers, and the starting cells, made once for a survey. */
import type { Finding, Site } from "../site/index.js";
import type { Cell, CellLayer } from "./cell.js";
import { insideOutline, type Place } from "./outline.js";
import { clipToRegion, probeRegions, type ProbeRegion } from "./probes.js";
import { buildTin, corners, type SurveyProblem, type Tin } from "./tin.js";

export interface BaseGround {
  tin: Tin;
  /** Trusted ground in plan, local m, or null when it is the hull. */
  boundary: readonly Place[] | null;
  /** Layers from the bottom up. */
  layers: readonly CellLayer[];
  regions: readonly ProbeRegion[];
  findings: readonly Finding[];
  /** Starting cells of a triangle: its parts in each probe region. Made when first asked for. */
  cellsOf: (triangle: number) => readonly Cell[];
}

const made = new WeakMap<Site["survey"], { ground: Site["ground"]; base: BuiltGround }>();

type BuiltGround = { ok: true; base: BaseGround } | { ok: false; problem: SurveyProblem };

/**
 * The ground of a site. Remembered by the identity of `site.survey` and `site.ground` (documents
 * are never changed in place), so that an edit of a work costs nothing here.
 */
export function baseGround(site: Site): BuiltGround {
  const known = made.get(site.survey);
  if (known && known.ground === site.ground) return known.base;
  const base = build(site);
  made.set(site.survey, { ground: site.ground, base });
  return base;
}

function build(site: Site): BuiltGround {
  const built = buildTin(site.survey);
  if ("problem" in built) return { ok: false, problem: built.problem };
  const { tin, findings } = built;
  const layers = [...site.ground.layers]
    .reverse()
    .map((layer) => ({ material: layer.material, by: -1, structure: false }));
  const regions = probeRegions(site.ground, tin.origin);
  const boundary =
    site.survey.boundary?.map(([x, y]): Place => [x - tin.origin[0], y - tin.origin[1]]) ?? null;
  const kept = new Map<number, readonly Cell[]>();
  const cellsOf = (triangle: number): readonly Cell[] => {
    let cells = kept.get(triangle);
    if (!cells) {
      cells = startingCells(tin, triangle, layers, regions);
      kept.set(triangle, cells);
    }
    return cells;
  };
  const all = [...findings, ...probeFindings(site.ground.probes)];
  return { ok: true, base: { tin, boundary, layers, regions, findings: all, cellsOf } };
}

/** Probes at one place that met different depths: the first is used, and that is said. */
function probeFindings(probes: Site["ground"]["probes"]): Finding[] {
  return probes.flatMap((probe, i): Finding[] => {
    const first = probes.slice(0, i).find((p) => Math.hypot(p.x - probe.x, p.y - probe.y) < 1e-6);
    if (!first || first.thickness.every((t, k) => t === probe.thickness[k])) return [];
    return [
      {
        level: "caution",
        code: "probe.two-logs",
        where: probe.id,
        text: `Probes ${first.id} and ${probe.id} are at one place but met different depths; ${first.id} is used. Check which is right.`,
        source: "geometry",
      },
    ];
  });
}

function startingCells(
  tin: Tin,
  triangle: number,
  layers: readonly CellLayer[],
  regions: readonly ProbeRegion[],
): Cell[] {
  const vertices = corners(tin, triangle);
  const x = vertices.map((v) => tin.x[v]!);
  const y = vertices.map((v) => tin.y[v]!);
  const z = vertices.map((v) => tin.z[v]!);
  const whole: Cell = { x, y, layers, tops: [z], before: null, part: 0, face: "found" };
  const cells: Cell[] = [];
  for (const region of regions) {
    const part = clipToRegion({ cell: whole, carry: [] }, region);
    if (part) cells.push(withLayers(part.cell, layers.length, region));
  }
  return cells;
}

/** Gives a cell its layer tops: the surface less the thickness of every layer above. */
function withLayers(cell: Cell, count: number, region: ProbeRegion): Cell {
  let top = cell.tops[0]!;
  const fromTop: (readonly number[])[] = [top];
  for (let i = 0; i + 1 < count; i++) {
    const { a, b, c } = region.thickness[i]!;
    const above = top;
    // Beyond rounding a thickness cannot be negative: it is a mean of thicknesses that are not.
    top = above.map((at, k) => at - Math.max(0, a * cell.x[k]! + b * cell.y[k]! + c));
    fromTop.push(top);
  }
  return { ...cell, tops: fromTop.reverse() };
}

/** True when a place (local m) lies on ground that the survey may be trusted for. */
export function trusted(base: BaseGround, x: number, y: number): boolean {
  return base.boundary === null || insideOutline(base.boundary, x, y);
}
