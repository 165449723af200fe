/** The ground as found: triangles, layers, and the starting cells, made once for a survey. */
import type { Finding, Site } from "../site/index.js";
import { BLOCK_SIZE } from "./blocks.js";
import type { Cell } from "./cell.js";
import { insideOutline, type Place } from "./outline.js";
import { probeRegions } from "./probes.js";
import { regionHolding, startCells, type Found } from "./start.js";
import { CellStore } from "./store.js";
import { buildTin, type SurveyProblem, type Tin } from "./tin.js";

export interface BaseGround extends Found {
  /** Trusted ground in plan, local m, or null when it is the hull. */
  boundary: readonly Place[] | null;
  findings: readonly Finding[];
  /** Starting cells of a triangle: its parts in each probe region. Made when first asked for. */
  cellsOf: (triangle: number) => readonly Cell[];
  /** Number of the probe region that holds a whole triangle, or −1 when it lies in several. */
  regionOf: (triangle: number) => number;
  /** Triangles of a block that have a side on the outer edge of the survey. */
  atEdge: (block: number) => readonly number[];
  /** Memory for cells, used again from one edit to the next; empty. */
  takeStore: () => CellStore;
  returnStore: (store: CellStore) => void;
}

interface Made {
  triangulated: ReturnType<typeof buildTin>;
  ground: Site["ground"];
  base: BuiltGround;
}

const made = new WeakMap<Site["survey"], Made>();

type BuiltGround = { ok: true; base: BaseGround } | { ok: false; problem: SurveyProblem };

/**
 * The ground of a site. Remembered by the identity of `site.survey` and `site.ground` (documents
 * are never changed in place), so that an edit of a work costs nothing here. When only the probes
 * or layers change, the triangles are kept.
 */
export function baseGround(site: Site): BuiltGround {
  const known = made.get(site.survey);
  if (known && known.ground === site.ground) return known.base;
  return remember(site, known?.triangulated ?? buildTin(site.survey));
}

/**
 * Takes triangles that were made elsewhere (in a worker) from this very `site.survey`, with the
 * findings of that, so that `baseGround` need not make them.
 */
export function adoptGround(site: Site, tin: Tin, findings: Finding[]): void {
  remember(site, { tin, findings });
}

function remember(site: Site, triangulated: Made["triangulated"]): BuiltGround {
  const base = build(site, triangulated);
  made.set(site.survey, { triangulated, ground: site.ground, base });
  return base;
}

function build(site: Site, built: Made["triangulated"]): BuiltGround {
  if ("problem" in built) return { ok: false, problem: built.problem };
  const { tin, findings } = built;
  const layers = [...site.ground.layers]
    .reverse()
    .map((layer) => ({ material: layer.material, by: -1, structure: false, step: 0 }));
  const regions = probeRegions(site.ground, tin.origin);
  const boundary =
    site.survey.boundary?.map(([x, y]): Place => [x - tin.origin[0], y - tin.origin[1]]) ?? null;
  const found = { tin, layers, regions };
  const all = [...findings, ...probeFindings(site.ground.probes)];
  return {
    ok: true,
    base: {
      ...found,
      boundary,
      findings: all,
      cellsOf: rememberedCells(found),
      regionOf: rememberedRegions(found),
      atEdge: edgeByBlock(tin),
      ...storePool(tin.rounding),
    },
  };
}

function rememberedCells(found: Found) {
  const kept = new Map<number, readonly Cell[]>();
  const store = new CellStore(found.tin.rounding);
  const stack = store.stacks.of(found.layers);
  return (triangle: number): readonly Cell[] => {
    let cells = kept.get(triangle);
    if (!cells) {
      const made: Cell[] = [];
      const first = startCells(found, store, stack, triangle);
      for (let cell = first; cell >= 0; cell = store.nextOf(cell)) made.push(store.read(cell));
      store.clear();
      cells = made;
      kept.set(triangle, cells);
    }
    return cells;
  };
}

/** Regions are looked up as triangles are first touched, each beginning with the last one found. */
function rememberedRegions(found: Pick<Found, "tin" | "regions">) {
  if (found.regions.length === 1) return () => 0;
  const unknown = -2;
  const known = new Int16Array(found.tin.triangles.length / 3).fill(unknown);
  let likely = 0;
  return (triangle: number): number => {
    if (known[triangle] === unknown) known[triangle] = regionHolding(found, triangle, likely);
    const region = known[triangle]!;
    if (region >= 0) likely = region;
    return region;
  };
}

/** Made for all blocks at once when first asked for. */
function edgeByBlock({ twins }: Tin) {
  let byBlock: Map<number, number[]> | null = null;
  return (block: number): readonly number[] => {
    if (!byBlock) {
      byBlock = new Map();
      for (let side = 0; side < twins.length; side++) {
        if (twins[side] !== -1) continue;
        const triangle = Math.floor(side / 3);
        const number = Math.floor(triangle / BLOCK_SIZE);
        const there = byBlock.get(number);
        if (!there) byBlock.set(number, [triangle]);
        else if (there[there.length - 1] !== triangle) there.push(triangle);
      }
    }
    return byBlock.get(block) ?? [];
  };
}

/** Keeps the memory of grounds that are done with, so that a drag allocates next to nothing. */
function storePool(rounding: number): Pick<BaseGround, "takeStore" | "returnStore"> {
  const spare: CellStore[] = [];
  return {
    takeStore: () => spare.pop() ?? new CellStore(rounding),
    returnStore: (store) => {
      store.clear();
      store.stacks.clear();
      if (spare.length < 2) spare.push(store);
    },
  };
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

/** True when a place (local m) lies on ground that the survey may be trusted for. */
export function trusted(base: BaseGround, x: number, y: number): boolean {
  return base.boundary === null || insideOutline(base.boundary, x, y);
}
