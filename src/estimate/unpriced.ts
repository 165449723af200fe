import { partingsOf, soldSize, tankAt } from "../flow/index.js";
import { materialsOf } from "../site/index.js";
import type { Scheme, Site, Trench } from "../site/index.js";
import { schemeOf } from "./estimate.js";
import type { Estimate } from "./types.js";

/** A rectangle where soil lies on stone, m. */
export interface FabricCover {
  work: string;
  length: number;
  width: number;
}

/** A piece that joins or closes pipes. */
export type PieceKind =
  | "fitting"
  | "check-valve"
  | "drain-valve"
  | "branch-valve"
  | "bend"
  | "cleanout"
  | "tank-connector"
  | "distribution-box";

/** Pieces of one kind and one sold size. */
export interface UnpricedPiece {
  kind: "piece";
  piece: PieceKind;
  /** Of the pipe that it fits, m. */
  inside: number;
  /** Of the pipe that it fits, m; absent where only the bore is known. */
  outside?: number;
  /** True for wires, not for water: the electrician's. */
  electrical?: boolean;
  /** Id of the catalogue's row, of a fitting. */
  row?: string;
  /** Pipes into and out of a box. */
  ways?: { into: number; out: number };
  /** Degrees that a bend is made with. */
  made?: number;
  /** Degrees that the path turns where the bends stand. */
  turns: readonly number[];
  count: number;
  works: readonly string[];
}

/** What a scheme needs that no line of the cost prices. */
export type Unpriced =
  | { kind: "fabric"; covers: readonly FabricCover[]; works: readonly string[] }
  | {
      kind: "bed-pipe";
      /** Whether it lies in the beds, up from the main's end, or stands in the tank, or both. */
      places: readonly ("bed" | "tank")[];
      /** m. */
      inside: number;
      runs: readonly { name: string; length: number }[];
      works: readonly string[];
    }
  | UnpricedPiece;

/** Bends that drains are made with: 1/16, 1/8 and 1/4 of a turn (common practice, no source). */
const BENDS = [22.5, 45, 90] as const;
/** Degrees that joints take up: common practice, no source. */
const IN_JOINTS = 5;

/**
 * What the estimate's scheme needs and its cost has no line for: filter fabric, pipes of a pressure
 * bed, fittings. Throws on a scheme that the site does not have.
 */
export function unpricedOf(site: Site, estimate: Estimate): Unpriced[] {
  const scheme = schemeOf(site, estimate.scheme);
  const covers = fabricCovers(site, scheme, estimate);
  return [
    ...(covers.length === 0
      ? []
      : [{ kind: "fabric" as const, covers, works: unlike(covers.map(({ work }) => work)) }]),
    ...bedPipes(scheme, estimate),
    ...piecesOf(site, scheme, estimate),
  ];
}

const unlike = (ids: readonly string[]): string[] => [...new Set(ids)];

const trenchesOf = (scheme: Scheme): Trench[] =>
  scheme.works.flatMap((work) => (work.kind === "trench" ? [work] : []));

/** Plan areas of beds and field trenches where soil lies on stone. */
function fabricCovers(site: Site, scheme: Scheme, { flow }: Estimate): FabricCover[] {
  const materials = materialsOf(site);
  const isStone = (id: string): boolean => materials.get(id)?.kind === "aggregate";
  const field = new Set(flow.pipes.flatMap((pipe) => (pipe.field ? [pipe.trench] : [])));
  return scheme.works.flatMap((work): FabricCover[] => {
    if (work.kind === "bed") {
      const between = work.filling.filter(
        ({ material }, i) => i > 0 && isStone(work.filling[i - 1]!.material) && !isStone(material),
      );
      const inside = { length: work.length - 2 * work.wall, width: work.width - 2 * work.wall };
      return between.map(() => ({ work: work.id, ...inside }));
    }
    if (work.kind !== "trench" || !field.has(work.id)) return [];
    if (!isStone(work.zone.material) || isStone(work.backfill)) return [];
    const legs = work.path.slice(1).map(([x, y], i) => {
      const [px, py] = work.path[i]!;
      return Math.hypot(x - px, y - py);
    });
    const length = legs.reduce((sum, leg) => sum + leg, 0);
    return [{ work: work.id, length, width: work.width }];
  });
}

/** Pipes of one bore, m, with where they lie. */
interface OneBore {
  inside: number;
  runs: { name: string; length: number }[];
  places: Set<"bed" | "tank">;
  works: Set<string>;
}

/** Where a pipe lies, and the work that it serves. */
interface BoreAt {
  place: "bed" | "tank";
  work: string | undefined;
}

/** Bores that differ by less, m, are the same pipe. */
const SAME_BORE = 1e-4;

/**
 * Pipes of the pressure systems that lie in no trench, by bore: laterals, manifolds, branches with
 * their rise from the main's end, and risers in the tanks. Rise and riser of a system that could not
 * be worked out are not known.
 */
function bedPipes(scheme: Scheme, { flow }: Estimate): Unpriced[] {
  const bores: OneBore[] = [];
  const boreOf = (inside: number): OneBore => {
    const known = bores.find((one) => Math.abs(one.inside - inside) < SAME_BORE);
    const bore = known ?? { inside, runs: [], places: new Set(), works: new Set() };
    if (known === undefined) bores.push(bore);
    return bore;
  };
  for (const system of scheme.flow?.pressure ?? []) {
    const solved = flow.pressure.find(({ id }) => id === system.id);
    const add = (at: BoreAt, inside: number, name: string, length: number): void => {
      if (!(length > 0)) return;
      const bore = boreOf(inside);
      bore.runs.push({ name, length });
      bore.places.add(at.place);
      if (at.work !== undefined) bore.works.add(at.work);
    };
    for (const { id, inside, name, length, laterals, bed } of system.branches) {
      const at: BoreAt = { place: "bed", work: bed };
      const rise = solved?.branches.find((branch) => branch.id === id)?.rise ?? 0;
      add(at, inside, name, length);
      add(at, inside, `${name}, rise from the main's end`, rise);
      const across = (laterals.count - 1) * laterals.apart;
      add(at, laterals.manifold.inside, `${name}, manifold`, across);
      for (let i = 0; i < laterals.count; i += 1) {
        add(at, laterals.inside, `${name}, lateral`, laterals.length);
      }
    }
    if (solved === undefined) continue;
    const { inside, length } = solved.riser;
    add({ place: "tank", work: solved.tank }, inside, `${solved.name}, riser in the tank`, length);
  }
  return bores.map(({ inside, runs, places, works }) => ({
    ...{ kind: "bed-pipe", inside, runs, places: [...places], works: [...works] },
  }));
}

/** A piece as it is found, before those alike are counted. */
type Found = Omit<UnpricedPiece, "kind" | "works" | "turns"> & { work: string; turn?: number };

function piecesOf(site: Site, scheme: Scheme, estimate: Estimate): UnpricedPiece[] {
  const alike = new Map<string, UnpricedPiece>();
  for (const { work, turn, ...found } of [
    ...pressurePieces(scheme),
    ...drainPieces(scheme, estimate),
    ...boxes(scheme, estimate),
  ]) {
    const { piece, row = "", made = "", electrical = false, ways, inside, outside } = found;
    const parts = ways === undefined ? "" : `${ways.into}-${ways.out}`;
    const sold = soldSize(inside, site.units, outside);
    const key = [piece, row, made, electrical, parts, sold].join("|");
    const known = alike.get(key);
    alike.set(key, {
      ...found,
      kind: "piece",
      count: found.count + (known?.count ?? 0),
      turns: [...(known?.turns ?? []), ...(turn === undefined ? [] : [turn])],
      works: unlike([...(known?.works ?? []), work]),
    });
  }
  return [...alike.values()];
}

/** Fittings and valves of the pressure systems: of the main, then of each branch. */
function pressurePieces(scheme: Scheme): Found[] {
  const mains = trenchesOf(scheme).flatMap(({ id, pipes }) =>
    pipes.map((pipe) => ({ ...pipe, work: id })),
  );
  return (scheme.flow?.pressure ?? []).flatMap((system): Found[] => {
    const main = mains.find(({ id }) => id === system.main[0]);
    const ofMain = (main: (typeof mains)[number]): Found[] => {
      const { inside, outside, work } = main;
      const at = { inside, outside, work };
      const fittings = (system.fittings ?? []).map(({ id, count }): Found => ({
        ...{ piece: "fitting", row: id, count, ...at },
      }));
      const valves = [
        ...(system.checkValve === true ? (["check-valve"] as const) : []),
        ...(system.drainValve === true ? (["drain-valve"] as const) : []),
      ];
      return [...fittings, ...valves.map((piece): Found => ({ piece, count: 1, ...at }))];
    };
    const ofBranches = system.branches.flatMap(({ inside, fittings = [], valve, bed }): Found[] => {
      const at = { inside, work: bed ?? system.tank };
      return [
        ...fittings.map(({ id, count }): Found => ({ piece: "fitting", row: id, count, ...at })),
        ...(valve === undefined ? [] : [{ piece: "branch-valve" as const, count: 1, ...at }]),
      ];
    });
    return [...(main === undefined ? [] : ofMain(main)), ...ofBranches];
  });
}

/** Ids of the tanks whose walls a pipe goes through, one for each of its ends at a tank. */
function tanksMet(scheme: Scheme, { pipes }: Estimate["flow"], id: string): string[] {
  const run = pipes.find((pipe) => pipe.id === id);
  const ends = run === undefined ? [] : [run.stations[0], run.stations.at(-1)];
  return ends.flatMap((end) => {
    const tank = end && tankAt(end.at, scheme, run?.service !== "gravity");
    return tank === undefined ? [] : [tank.id];
  });
}

/** Bends of the drains, then cleanouts of every pipe and its connectors at tanks. */
function drainPieces(scheme: Scheme, { flow }: Estimate): Found[] {
  const bends = flow.pipes
    .filter(({ service }) => service === "gravity")
    .flatMap(({ inside, trench, id, bends }) => {
      const outside = outsideOf(scheme, id);
      return bends
        .filter(({ angle }) => angle >= IN_JOINTS)
        .map(({ angle }): Found => ({
          ...{ piece: "bend", made: nearestBend(angle), count: 1, turn: angle, work: trench },
          ...{ inside, ...(outside !== undefined && { outside }) },
        }));
    });
  const ends = trenchesOf(scheme).flatMap(({ id: trench, pipes }) =>
    pipes.flatMap(({ inside, outside, id, service, cleanouts = [] }): Found[] => {
      const at = { inside, outside };
      return [
        ...(cleanouts.length === 0
          ? []
          : [{ piece: "cleanout" as const, count: cleanouts.length, work: trench, ...at }]),
        ...tanksMet(scheme, flow, id).map((work): Found => ({
          ...{ piece: "tank-connector", count: 1, work, ...at },
          ...(service === "conduit" && { electrical: true }),
        })),
      ];
    }),
  );
  return [...bends, ...ends];
}

/** A box, or tees, where a drain's water parts to the pipes of a field. */
function boxes(scheme: Scheme, { flow }: Estimate): Found[] {
  return partingsOf(flow.pipes).flatMap(({ into, out }): Found[] => {
    const drain = flow.pipes.find(({ id }) => id === into[0]);
    if (drain === undefined) return [];
    const outside = outsideOf(scheme, drain.id);
    const ways = { into: into.length, out: out.length };
    return [
      {
        ...{ piece: "distribution-box", ways, count: 1, work: drain.trench, inside: drain.inside },
        ...(outside !== undefined && { outside }),
      },
    ];
  });
}

const outsideOf = (scheme: Scheme, id: string): number | undefined =>
  trenchesOf(scheme)
    .flatMap(({ pipes }) => pipes)
    .find((pipe) => pipe.id === id)?.outside;

const nearestBend = (angle: number): number =>
  BENDS.reduce<number>(
    (best, bend) => (Math.abs(bend - angle) < Math.abs(best - angle) ? bend : best),
    BENDS[0],
  );
