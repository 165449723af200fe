/** The general-purpose solid kernel manifold-3d, and the solids that digs are compared with. */
import makeKernel, { type Manifold } from "manifold-3d";
import { facets, type Spot } from "./columns.js";

const kernel = await makeKernel();
kernel.setup();

type Point = [number, number, number];
type Place = readonly [number, number];

/**
 * The ground below a surface of spot heights, down to `bottom`, as a solid. The kernel reads meshes
 * in single precision; the corners are put back in double precision afterwards.
 */
export function groundSolid(spots: readonly Spot[], bottom: number): Manifold {
  const count = spots.length;
  const tops = facets(spots).map(({ corners }) => corners.map((spot) => spots.indexOf(spot)));
  const faces: number[] = [];
  const sides = new Map<string, [number, number]>();
  for (const [a, b, c] of tops.map(counterClockwise(spots))) {
    faces.push(a, b, c, count + a, count + c, count + b);
    for (const [p, q] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      if (!sides.delete(`${q},${p}`)) sides.set(`${p},${q}`, [p, q]);
    }
  }
  for (const [p, q] of sides.values()) faces.push(p, count + p, count + q, p, count + q, q);
  const all: Point[] = [
    ...spots.map(([x, y, z]): Point => [x, y, z]),
    ...spots.map(([x, y]): Point => [x, y, bottom]),
  ];
  const mesh = new kernel.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(all.flat()),
    triVerts: Uint32Array.from(faces),
  });
  const exact = new Map(all.map((point) => [point.map(Math.fround).join(), point]));
  return kernel.Manifold.ofMesh(mesh).warp((vertex) => {
    const point = exact.get(vertex.map(Math.fround).join());
    if (!point) throw new Error(`got a corner at ${vertex.join()}, expected one of the spots`);
    [vertex[0], vertex[1], vertex[2]] = point;
  });
}

function counterClockwise(spots: readonly Spot[]) {
  return (triangle: number[]): [number, number, number] => {
    const [a, b, c] = [triangle[0]!, triangle[1]!, triangle[2]!];
    const [p, q, r] = [spots[a]!, spots[b]!, spots[c]!];
    const twice = (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
    return twice > 0 ? [a, b, c] : [a, c, b];
  };
}

/** A convex solid about points. */
export function hullSolid(points: readonly Point[]): Manifold {
  return kernel.Manifold.hull([...points]);
}

export function unionOf(solids: readonly Manifold[]): Manifold {
  return kernel.Manifold.union([...solids]);
}

/**
 * The hole over a convex outline (counter-clockwise) with a level floor and walls `run`, up to
 * `top`: the hull of the floor and of the outline pushed out at the top.
 */
export function holeSolid(
  outline: readonly Place[],
  floor: number,
  run: number,
  top: number,
): Manifold {
  const pushed = pushedOut(outline, run * (top - floor));
  return hullSolid([
    ...outline.map(([x, y]): Point => [x, y, floor]),
    ...pushed.map(([x, y]): Point => [x, y, top]),
  ]);
}

/** The outline with every side moved out by a distance, corners mitred. */
export function pushedOut(outline: readonly Place[], by: number): Place[] {
  const count = outline.length;
  return outline.map(([x, y], i): Place => {
    const before = outward(outline[(i + count - 1) % count]!, [x, y]);
    const after = outward([x, y], outline[(i + 1) % count]!);
    const scale = by / (1 + before[0] * after[0] + before[1] * after[1]);
    return [x + scale * (before[0] + after[0]), y + scale * (before[1] + after[1])];
  });
}

function outward(p: Place, q: Place): Place {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  return [(q[1] - p[1]) / length, -(q[0] - p[0]) / length];
}

/** Legs and outside corners of a trench as solids up to `top`; `floor` by station. */
export function trenchSolids(
  path: readonly Place[],
  width: number,
  run: number,
  top: number,
  floor: (station: number) => number,
): Manifold[] {
  const solids: Manifold[] = [];
  let station = 0;
  for (let i = 1; i < path.length; i++) {
    const [p, q] = [path[i - 1]!, path[i]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const out = outward(p, q);
    const across = ([x, y]: Place, height: number): Point[] =>
      [height, top].flatMap((z) =>
        [-1, 1].map((side): Point => {
          const off = side * (width / 2 + run * (z - height));
          return [x + off * out[0], y + off * out[1], z];
        }),
      );
    solids.push(hullSolid([...across(p, floor(station)), ...across(q, floor(station + length))]));
    station += length;
    const next = path[i + 1];
    if (next) solids.push(bendSolid(p, q, next, width, run, top, floor(station)));
  }
  return solids;
}

function bendSolid(
  p: Place,
  q: Place,
  r: Place,
  width: number,
  run: number,
  top: number,
  floor: number,
): Manifold {
  const [u, v] = [outward(p, q), outward(q, r)];
  // To the right of both legs when the path turns left, else to the left.
  const side = u[0] * v[1] - u[1] * v[0] > 0 ? 1 : -1;
  const mitre = 1 + u[0] * v[0] + u[1] * v[1];
  const points = [floor, top].flatMap((z) => {
    const off = side * (width / 2 + run * (z - floor));
    const tip: Place = [(u[0] + v[0]) / mitre, (u[1] + v[1]) / mitre];
    return [[0, 0] as const, u, tip, v].map(([dx, dy]): Point => [
      q[0] + off * dx,
      q[1] + off * dy,
      z,
    ]);
  });
  return hullSolid(points);
}
