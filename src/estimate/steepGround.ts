/** Ground as found that is steeper than a site's rule book calls steep, to be drawn. */
import { corners, trusted, type BaseGround } from "../ground/index.js";
import { ruleOf, type Site } from "../site/index.js";
import { ringArea, slopeOf } from "./checkSteep.js";
import { groundOf } from "./estimate.js";

/** East, north and elevation, m. */
export type GroundPlace = readonly [number, number, number];

export interface SteepGround {
  /** Rise per run from which ground is steep here. */
  from: number;
  source: string;
  /** m² in plan within the trusted ground. */
  area: number;
  /** Ends of the lines along its edge, in site coordinates, m. */
  edge: readonly (readonly [GroundPlace, GroundPlace])[];
  /** Corners of its triangles, in site coordinates, m. */
  triangles: readonly (readonly [GroundPlace, GroundPlace, GroundPlace])[];
}

/** The steep ground of a site whose survey is sound. */
export function steepGround(site: Site): SteepGround {
  const base = groundOf(site);
  const { tin } = base;
  const rule = ruleOf(site, "steep-from");
  const isSteep = steepTriangles(base, rule.value);
  const [ox, oy, oz] = tin.origin;
  const at = (v: number): GroundPlace => [tin.x[v]! + ox, tin.y[v]! + oy, tin.z[v]! + oz];
  const edge: [GroundPlace, GroundPlace][] = [];
  const triangles: [GroundPlace, GroundPlace, GroundPlace][] = [];
  let area = 0;
  for (let t = 0; t < isSteep.length; t++) {
    if (isSteep[t] === 0) continue;
    const [a, b, c] = corners(tin, t);
    triangles.push([at(a), at(b), at(c)]);
    area += ringArea([at(a), at(b), at(c)]);
    [a, b, c].forEach((v, side) => {
      const twin = tin.twins[3 * t + side]!;
      const other = twin < 0 ? 0 : (isSteep[Math.floor(twin / 3)] ?? 0);
      if (other === 0) edge.push([at(v), at([b, c, a][side]!)]);
    });
  }
  return { from: rule.value, source: rule.source, area, edge, triangles };
}

/** 1 for each triangle of trusted ground at least this steep. */
function steepTriangles({ tin, ...rest }: BaseGround, from: number): Uint8Array {
  const isSteep = new Uint8Array(tin.triangles.length / 3);
  for (let t = 0; t < isSteep.length; t++) {
    if (slopeOf(tin, t) < from) continue;
    const [a, b, c] = corners(tin, t);
    const x = (tin.x[a]! + tin.x[b]! + tin.x[c]!) / 3;
    const y = (tin.y[a]! + tin.y[b]! + tin.y[c]!) / 3;
    if (trusted({ tin, ...rest }, x, y)) isSteep[t] = 1;
  }
  return isSteep;
}
