/** Breaklines turned into edges between vertices, none crossing another or passing a vertex. */
import type { Finding, Site } from "../site/index.js";
import { markLength } from "../units/index.js";
import { BoxIndex } from "./boxIndex.js";
import type { Places } from "./places.js";
import { shareOn, Vertices, type Way } from "./vertices.js";
import type { WeldedPlaces } from "./weld.js";

/** Vertices with the edges that triangles must follow. */
export interface LinedPlaces extends Places {
  /** Numbers of vertices, two for each edge. Vertices added at crossings come last. */
  edges: Uint32Array;
  findings: Finding[];
}

interface Leg {
  from: number;
  to: number;
  /** Vertices on the leg with their share of its length. */
  on: { share: number; vertex: number }[];
}

/**
 * How often edges are looked at again. A leg bent by up to the tolerance to a vertex may then touch
 * another vertex or leg; two rounds settle nearly all of that.
 */
const MOST_ROUNDS = 8;

/**
 * Turns breaklines (chains of point ids) into edges between vertices. A leg that passes within
 * `reach` (m) of a vertex is split there; where two legs cross, a vertex is added at the mean of
 * their heights, and a finding tells when those heights differ.
 */
export function splitBreaklines(
  survey: Site["survey"],
  welded: WeldedPlaces,
  reach: number,
): LinedPlaces {
  const findings: Finding[] = [];
  const chains = survey.breaklines ?? [];
  const { origin, x, y, z } = welded;
  if (chains.length === 0) return { origin, x, y, z, edges: new Uint32Array(0), findings };
  const vertices = new Vertices(welded, reach);
  const nameOf = (vertex: number): string => {
    const point = welded.points[vertex];
    return point === undefined ? "" : survey.points[point]!.id;
  };
  let legs = legsOf(chains, verticesNamed(survey, welded));
  const splitter = new LegSplitter(vertices);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    splitter.split(legs, (one, two, gap) => {
      // Later rounds only find what bending within the tolerance has brought about.
      if (round === 0) findings.push(crossingFinding(nameOf, one, two, gap));
    });
    const isSettled = legs.every((leg) => leg.on.length === 0);
    legs = legsOnce(legs);
    if (isSettled) break;
  }
  const edges = new Uint32Array(2 * legs.length);
  legs.forEach(({ from, to }, i) => edges.set([from, to], 2 * i));
  return { ...vertices.whole(), edges, findings };
}

/** The vertex of each point that breaklines name. */
function verticesNamed(survey: Site["survey"], welded: WeldedPlaces): Map<string, number> {
  const named = new Set(survey.breaklines?.flat());
  const vertexOf = new Map<string, number>();
  for (let i = 0; i < survey.points.length; i++) {
    const { id } = survey.points[i]!;
    if (named.has(id)) vertexOf.set(id, welded.vertices[i]!);
  }
  return vertexOf;
}

function legsOf(
  chains: NonNullable<Site["survey"]["breaklines"]>,
  vertexOf: ReadonlyMap<string, number>,
): Leg[] {
  const legs: Leg[] = [];
  for (const chain of chains) {
    for (let i = 1; i < chain.length; i++) {
      const from = vertexOf.get(chain[i - 1]!);
      const to = vertexOf.get(chain[i]!);
      if (from === undefined || to === undefined) continue;
      legs.push({ from, to, on: [] });
    }
  }
  return legsOnce(legs);
}

/** The parts of legs between the vertices on them, each once. */
function legsOnce(legs: readonly Leg[]): Leg[] {
  const known = new Set<string>();
  const parts: Leg[] = [];
  for (const leg of legs) {
    const between = leg.on.sort((a, b) => a.share - b.share).map((passed) => passed.vertex);
    let from = leg.from;
    for (const to of [...between, leg.to]) {
      const key = `${Math.min(from, to)},${Math.max(from, to)}`;
      if (from !== to && !known.has(key)) parts.push({ from, to, on: [] });
      known.add(key);
      from = to;
    }
  }
  return parts;
}

/** Told of two legs that cross, and how far apart in height they are there, m. */
type Crossed = (one: Leg, two: Leg, gap: number) => void;

class LegSplitter {
  constructor(private readonly vertices: Vertices) {}

  /** Adds to each leg the vertices that it passes and the places where it crosses another. */
  split(legs: readonly Leg[], crossed: Crossed): void {
    const index = this.indexOf(legs);
    for (const leg of legs) {
      for (const { vertex, share } of this.vertices.along(this.wayOf(leg))) {
        attach(leg, vertex, share);
      }
    }
    for (const vertex of this.vertices.added()) this.attachToAll(legs, index, vertex);
    for (let i = 0; i < legs.length; i++) {
      const { ax, ay, bx, by } = this.wayOf(legs[i]!);
      const met = index.search(
        [Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)],
        (j) => j > i,
      );
      // In the order of the legs, so that the answer does not hang on the index.
      for (const j of met.sort((p, q) => p - q)) {
        const added = this.addCrossing(legs[i]!, legs[j]!, crossed);
        if (added >= 0) this.attachToAll(legs, index, added);
      }
    }
  }

  /** Puts a vertex on every leg that passes within reach of it. */
  private attachToAll(legs: readonly Leg[], index: BoxIndex, vertex: number): void {
    const { reach } = this.vertices;
    const [x, y] = [this.vertices.x(vertex), this.vertices.y(vertex)];
    for (const leg of index.search([x - reach, y - reach, x + reach, y + reach])) {
      const share = shareOn(this.wayOf(legs[leg]!), x, y, reach);
      if (share >= 0) attach(legs[leg]!, vertex, share);
    }
  }

  private indexOf(legs: readonly Leg[]): BoxIndex {
    const ways = legs.map((leg) => this.wayOf(leg));
    return BoxIndex.over(
      Float64Array.from(ways, ({ ax, bx }) => Math.min(ax, bx)),
      Float64Array.from(ways, ({ ay, by }) => Math.min(ay, by)),
      Float64Array.from(ways, ({ ax, bx }) => Math.max(ax, bx)),
      Float64Array.from(ways, ({ ay, by }) => Math.max(ay, by)),
    );
  }

  private wayOf({ from, to }: Leg): Way {
    const { vertices } = this;
    return { ax: vertices.x(from), ay: vertices.y(from), bx: vertices.x(to), by: vertices.y(to) };
  }

  /** Where two legs cross, puts one vertex on both; returns it if it is a new one, or -1. */
  private addCrossing(one: Leg, two: Leg, crossed: Crossed): number {
    const crossing = this.crossingOf(one, two);
    if (!crossing) return -1;
    const { x, y, shareOne, shareTwo } = crossing;
    const known = this.vertices.near(x, y);
    const heightOne = this.heightOn(one, shareOne);
    const heightTwo = this.heightOn(two, shareTwo);
    const vertex = known >= 0 ? known : this.vertices.add(x, y, (heightOne + heightTwo) / 2);
    attach(one, vertex, shareOne);
    attach(two, vertex, shareTwo);
    // A third line through a place where two have crossed already shares their vertex.
    if (known >= 0) return -1;
    crossed(one, two, Math.abs(heightOne - heightTwo));
    return vertex;
  }

  private heightOn({ from, to }: Leg, share: number): number {
    const { vertices } = this;
    return vertices.z(from) + share * (vertices.z(to) - vertices.z(from));
  }

  private crossingOf(
    one: Leg,
    two: Leg,
  ): { x: number; y: number; shareOne: number; shareTwo: number } | null {
    const [p, q] = [this.wayOf(one), this.wayOf(two)];
    const [rx, ry] = [p.bx - p.ax, p.by - p.ay];
    const [sx, sy] = [q.bx - q.ax, q.by - q.ay];
    const [dx, dy] = [q.ax - p.ax, q.ay - p.ay];
    const denominator = rx * sy - ry * sx;
    if (denominator === 0) return null;
    const shareOne = (dx * sy - dy * sx) / denominator;
    const shareTwo = (dx * ry - dy * rx) / denominator;
    if (shareOne <= 0 || shareOne >= 1 || shareTwo <= 0 || shareTwo >= 1) return null;
    return { x: p.ax + shareOne * rx, y: p.ay + shareOne * ry, shareOne, shareTwo };
  }
}

/** Puts a vertex on a leg, unless it is one of its ends or there already. */
function attach(leg: Leg, vertex: number, share: number): void {
  if (vertex === leg.from || vertex === leg.to) return;
  if (leg.on.some((passed) => passed.vertex === vertex)) return;
  leg.on.push({ share, vertex });
}

function crossingFinding(
  nameOf: (vertex: number) => string,
  one: Leg,
  two: Leg,
  gap: number,
): Finding {
  const name = (leg: Leg): string => `${nameOf(leg.from)}–${nameOf(leg.to)}`;
  return {
    level: gap > 0.05 ? "caution" : "note",
    code: "survey.breaklines-cross",
    where: nameOf(one.from),
    text: `Breaklines ${name(one)} and ${name(two)} cross; a point was added there at their mean height (they differ by ${markLength(gap)}).`,
    source: "geometry",
  };
}
