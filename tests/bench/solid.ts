/** The same hole dug by a general-purpose solid kernel, manifold-3d. */
import makeKernel, { type Manifold } from "manifold-3d";
import type { BaseGround } from "../../src/ground/index.js";
import { DEPTH, FLOOR, heightAt } from "./hill.js";
import { timeOf } from "./timing.js";

const kernel = await makeKernel();
kernel.setup();

type Point = [number, number, number];

/** How far up the hole's walls are drawn above its floor, m: out of any ground. */
const TOP = 40;

/** A ground as a solid made beforehand, and the hole to be cut from it. */
export interface SolidDig {
  /** Cuts once: the ground within the hole and its volume, m³, kept in single precision. */
  dig: () => number;
  release: () => void;
}

/** Makes the solids of a ground and of the bench's hole. */
export function solidDig({ tin }: BaseGround): SolidDig {
  const mesh = groundMesh(tin);
  const ground = kernel.Manifold.ofMesh(mesh);
  const hole = holeSolid(tin.origin);
  return {
    dig: () => {
      const dug = ground.intersect(hole);
      const volume = dug.volume();
      dug.delete();
      return volume;
    },
    release: () => {
      ground.delete();
      hole.delete();
    },
  };
}

/** Times of digging once, ms, after one that is not counted. */
export function solidTimes({ dig }: SolidDig, runs: number): number[] {
  dig();
  return Array.from({ length: runs }, () => timeOf(dig));
}

function holeSolid(origin: BaseGround["tin"]["origin"]): Manifold {
  const floor = heightAt(0, 0) - DEPTH - origin[2];
  const corners = (out: number): Point[] => {
    const [x, y] = [FLOOR.width / 2 + out, FLOOR.length / 2 + out];
    return [
      [-x, -y, floor + out],
      [x, -y, floor + out],
      [x, y, floor + out],
      [-x, y, floor + out],
    ];
  };
  const hull = kernel.Manifold.hull([...corners(0), ...corners(TOP)]);
  const hole = hull.translate([-origin[0], -origin[1], 0]);
  hull.delete();
  return hole;
}

function groundMesh(tin: BaseGround["tin"]): InstanceType<typeof kernel.Mesh> {
  const count = tin.x.length;
  const bottom = tin.lowest - 20;
  const vertProperties = new Float32Array(6 * count);
  for (let i = 0; i < count; i++) {
    vertProperties.set([tin.x[i]!, tin.y[i]!, tin.z[i]!], 3 * i);
    vertProperties.set([tin.x[i]!, tin.y[i]!, bottom], 3 * (count + i));
  }
  const triVerts = new Uint32Array(2 * tin.triangles.length + 6 * tin.hull.length);
  let filled = 0;
  const add = (a: number, b: number, c: number): void => {
    triVerts.set([a, b, c], filled);
    filled += 3;
  };
  for (let t = 0; t < tin.triangles.length; t += 3) {
    const [a, b, c] = [tin.triangles[t]!, tin.triangles[t + 1]!, tin.triangles[t + 2]!];
    add(a, b, c);
    add(count + a, count + c, count + b);
  }
  tin.hull.forEach((v, i) => {
    const w = tin.hull[(i + 1) % tin.hull.length]!;
    add(v, count + v, w);
    add(w, count + v, count + w);
  });
  return new kernel.Mesh({ numProp: 3, vertProperties, triVerts });
}
