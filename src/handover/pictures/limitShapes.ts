/** What limits a site, in space: lines laid on the ground, trees, posts, wires and the barrier. */
import { groundAt, hasCome, subdivide } from "../../estimate/index.js";
import type { Stage } from "../../estimate/index.js";
import { limitStyle, kindName } from "../../sheets/index.js";
import type { Pen } from "../../sheets/index.js";
import type { Limit, PlanPoint, Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { HandoverJob } from "../job.js";
import { prism } from "../models/solids.js";
import { normalOf, type Place } from "./normals.js";
import { chain, circle, cone, runsOf, triangles, type Face, type Stroke } from "./shapes.js";

/** Lines that are drawn alike, under the name of what they are. */
export interface LineLayer {
  name: string;
  pen: Pen;
  strokes: readonly Stroke[];
  /** Whether the legend names it: not a line that only goes with what it names already. */
  listed: boolean;
}

export interface LimitShapes {
  lines: readonly LineLayer[];
  faces: readonly Face[];
  /** Base colour of each layer of faces. */
  layers: ReadonlyMap<string, string>;
  names: readonly { name: string; at: Place }[];
}

const says = words.pictures.view;

const COLOUR = { leaf: "#69804d", trunk: "#6a4b33", cloth: "#5b6a74", well: "#2f6f93" } as const;
const POST = "#5d655f";
const WIRE: Pen = { width: 0.3, color: "#d4541c" };
/** How wide a plan's pen is on a picture, which is smaller. */
const THINNER = 0.8;

/** m over the ground that a line lies, and between places that follow it. */
const LIFT = 0.05;
const STEP = 1;

/** m: the barrier's cloth over the ground. Drawn so; no maker's size. */
const BARRIER = 0.6;

/** The two cones of a tree: m of radius, and of their foot and tip over the ground. */
const CONES = [
  [1.5, 0.8, 3.9],
  [1.05, 2.6, 5.1],
] as const;

/** Where along its longest run a line is named: not at its middle, where works often are. */
const NAMED_AT = 0.22;

/** All limits and the erosion barrier of a stage, m from `origin`. */
export function limitShapes(job: HandoverJob, stage: Stage, origin: Place): LimitShapes {
  const { site, estimate } = job;
  const maker = new ShapeMaker(site, origin);
  for (const limit of site.limits ?? []) maker.addLimit(limit);
  // What is not there before the job begins.
  if (hasCome(stage, "stripped")) for (const line of estimate.land.barriers) maker.barrier(line);
  return maker.shapes();
}

class ShapeMaker {
  readonly #lines = new Map<string, LineLayer & { strokes: Stroke[] }>();
  readonly #faces: Face[] = [];
  readonly #layers = new Map<string, string>();
  readonly #names: { name: string; at: Place }[] = [];

  constructor(
    private readonly site: Site,
    private readonly origin: Place,
  ) {}

  shapes(): LimitShapes {
    return {
      lines: [...this.#lines.values()],
      faces: this.#faces,
      layers: this.#layers,
      names: this.#names,
    };
  }

  addLimit(limit: Limit): void {
    if (limit.path !== undefined) this.#path(limit, limit.path);
    if (limit.at === undefined) return;
    const foot = this.#onGround(limit.at);
    if (foot === null) return;
    if (limit.kind === "tree") this.#tree(foot, limit.id);
    else this.#post(limit, foot);
  }

  /** A low fence of cloth along a line of places in site coordinates. */
  barrier(line: readonly Place[]): void {
    const feet = line.map((at) => this.#local(at));
    const upper = feet.map(([x, y, z]): Place => [x, y, z + BARRIER]);
    feet.slice(1).forEach((b, i) => {
      const [a, over, beyond] = [feet[i]!, upper[i]!, upper[i + 1]!];
      for (const [p, q, r] of [
        [a, b, beyond],
        [a, beyond, over],
      ] as const) {
        this.#face([p, q, r], says.barrier, COLOUR.cloth);
        this.#face([r, q, p], says.barrier, COLOUR.cloth);
      }
    });
    const edge = chain(upper);
    this.#draw(says.barrierEdge, { width: 0.2, color: "#26323a" }, edge, false);
  }

  #path(limit: Limit, path: readonly PlanPoint[]): void {
    const way = limit.closed === true && path.length > 2 ? [...path, path[0]!] : path;
    const runs = runsOf(subdivide(way, STEP).map((at) => this.#onGround(at, LIFT)));
    const { width, color, dash } = limitStyle(limit).line.pen;
    const pen = { width: width * THINNER, color, ...(dash !== undefined && { dash }) };
    const name = kindName(limit);
    for (const run of runs) this.#draw(name, pen, chain(run));
    if (limit.height !== undefined && limit.kind === "overhead-line") {
      this.#wire(name, way, limit.height);
    }
    const longest = runs.reduce<readonly Place[]>((a, b) => (b.length > a.length ? b : a), []);
    const at = longest[Math.floor(longest.length * NAMED_AT)];
    if (at !== undefined) this.#names.push({ name: limit.name ?? name, at });
  }

  /** A wire straight from support to support, as high over the ground at each as is known. */
  #wire(name: string, way: readonly PlanPoint[], height: number): void {
    const feet = way.map((at) => this.#onGround(at)).filter((foot) => foot !== null);
    const tops = feet.map(([x, y, z]): Place => [x, y, z + height]);
    this.#draw(says.wires(name), WIRE, [
      ...chain(tops),
      ...feet.map((foot, i): Stroke => [foot, tops[i]!]),
    ]);
  }

  #post(limit: Limit, foot: Place): void {
    const [x, y, z] = foot;
    const name = kindName(limit);
    const isWater = limit.kind === "well";
    for (const each of triangles(prism(circle([x, y], 0.25, 10), z, z + 1))) {
      this.#face(each, name, isWater ? COLOUR.well : POST);
    }
    const ring = circle([x, y], 0.9, 24);
    const round = [...ring, ring[0]!].map(([east, north]) =>
      this.#onGround([east + this.origin[0], north + this.origin[1]], LIFT),
    );
    const pen = { width: 0.3, color: isWater ? COLOUR.well : POST };
    for (const run of runsOf(round)) this.#draw(says.ring(name), pen, chain(run), false);
    this.#names.push({ name: limit.name ?? name, at: [x, y, z + 1] });
  }

  /** A plain tree of two cones: its size is drawn so, and is not the tree's own. */
  #tree(foot: Place, id: string): void {
    const [x, y, z] = foot;
    const size = 0.8 + 0.45 * shareOf(id);
    const turn = shareOf(`${id}.`) * Math.PI;
    const trunk = circle([x, y], 0.16 * size, 6, turn);
    for (const each of triangles(prism(trunk, z, z + 1.1 * size))) {
      this.#face(each, says.trunks, COLOUR.trunk);
    }
    for (const [radius, low, high] of CONES) {
      const ring = circle([x, y], radius * size, 9, turn);
      for (const each of cone(ring, z + low * size, [x, y, z + high * size])) {
        this.#face(each, says.trees, COLOUR.leaf);
      }
    }
  }

  #draw(name: string, pen: Pen, strokes: readonly Stroke[], listed = true): void {
    const known = this.#lines.get(name);
    if (known === undefined) this.#lines.set(name, { name, pen, strokes: [...strokes], listed });
    else known.strokes.push(...strokes);
  }

  #face(corners: readonly [Place, Place, Place], layer: string, colour: string): void {
    const normal = normalOf(...corners);
    if (normal === null) return;
    this.#layers.set(layer, colour);
    this.#faces.push({ corners, normal, layer });
  }

  /** A place on the ground as found; null beyond the survey. */
  #onGround(at: PlanPoint, lift = 0): Place | null {
    const z = groundAt(this.site, at);
    return z === null ? null : this.#local([at[0], at[1], z + lift]);
  }

  #local([x, y, z]: Place): Place {
    return [x - this.origin[0], y - this.origin[1], z - this.origin[2]];
  }
}

/** From 0 to 1, always the same for the same id, so that trees differ and stay as they are. */
function shareOf(id: string): number {
  let sum = 7;
  for (const letter of id) sum = (sum * 31 + letter.charCodeAt(0)) % 997;
  return sum / 997;
}
