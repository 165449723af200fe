/** Digger and crane as plain masses: boxes and beams about an axis. Local m: x ahead, y left, z up. */
import type { BufferGeometry } from "three";
import { BoxGeometry, Matrix4, Vector3 } from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import type { ScenePoint } from "./frame.js";

/** The figures of a digger that are drawn, m. */
export interface DiggerSizes {
  width: number;
  trackLength: number;
  tailSwing: number;
  reach: number;
  bucketWidth: number;
}

/** What is drawn in one tone each. */
export type MachineParts = Readonly<Record<"body" | "dark" | "arm", BufferGeometry>>;

type Span = readonly [number, number];

/**
 * A digger that stands on its axis and points ahead, its bucket's edge at `tip` as far as it reaches.
 * Width, tracks, tail swing, reach and bucket are the digger's own; the heights are a drawing's.
 */
export function diggerParts(sizes: DiggerSizes, tip: { ahead: number; up: number }): MachineParts {
  const { width, trackLength, tailSwing, reach, bucketWidth } = sizes;
  const [half, track] = [width / 2, trackLength / 2];
  const shoe = 0.22 * width;
  const deck = 0.3 + 0.12 * trackLength;
  const tracks = [-1, 1].map((side) =>
    box([-track, track], [side * half, side * (half - shoe)], [0, deck * 0.85]),
  );
  const ahead = 0.36 * trackLength;
  // The tail's corners lie on the circle that it swings.
  const tail = Math.sqrt(Math.max(0.1, tailSwing ** 2 - (0.46 * width) ** 2));
  const houseTop = deck + 0.55 + 0.12 * width;
  const house = box([-tail, ahead], [-0.46 * width, 0.46 * width], [deck, houseTop]);
  const cabWide = Math.min(1, 0.48 * width);
  const cab = box(
    [ahead - 1.3, ahead + 0.1],
    [0.46 * width - cabWide, 0.46 * width],
    [deck, deck + 1.6],
  );
  const turntable = box(
    [-0.3 * width, 0.3 * width],
    [-0.3 * width, 0.3 * width],
    [deck * 0.5, deck],
  );
  const pivot: ScenePoint = [ahead, -0.12 * width, deck + 0.5];
  const { elbow, end } = bend(pivot, tip, reach);
  const thick = 0.07 * reach ** 0.8;
  const bucket = bucketAt(end, bucketWidth, 0.55 * bucketWidth + 0.15);
  return {
    body: merged([house]),
    dark: merged([...tracks, turntable, cab]),
    arm: merged([beam(pivot, elbow, thick * 1.3), beam(elbow, end, thick), bucket]),
  };
}

/** Elbow and end of an arm of two pieces from a pivot towards a tip, stretched where it is too far. */
function bend(
  pivot: ScenePoint,
  tip: { ahead: number; up: number },
  reach: number,
): { elbow: ScenePoint; end: ScenePoint } {
  const whole = Math.max(1, reach - pivot[0]);
  const [boom, stick] = [0.58 * whole, 0.46 * whole];
  const [dx, dz] = [tip.ahead - pivot[0], tip.up - pivot[2]];
  const far = Math.hypot(dx, dz);
  const held = Math.min(Math.max(far, boom - stick + 0.05), boom + stick - 0.02);
  const aim = Math.atan2(dz, dx);
  const open = Math.acos((boom ** 2 + held ** 2 - stick ** 2) / (2 * boom * held));
  const at = (from: ScenePoint, angle: number, long: number): ScenePoint => [
    from[0] + Math.cos(angle) * long,
    from[1],
    from[2] + Math.sin(angle) * long,
  ];
  return { elbow: at(pivot, aim + open, boom), end: at(pivot, aim, held) };
}

function bucketAt([x, y, z]: ScenePoint, wide: number, deep: number): BufferGeometry {
  return box([x - deep * 0.7, x + deep * 0.3], [y - wide / 2, y + wide / 2], [z - 0.1, z + deep]);
}

/** The figures of a crane that are drawn, m and m². */
export interface CraneSizes {
  /** Between the pads; null where nobody gave it: then it has no legs. */
  spread: number | null;
  padArea: number | null;
  /** Of the axis to the hook in plan, and of the hook's pulley over the crane's ground. */
  radius: number;
  rise: number;
}

/** m that a truck is wide: the most that may use a road without a permit is about this. */
const TRUCK = 2.5;

/**
 * A crane on its legs with its axis of rotation at the origin: the truck lies along x, the boom turned
 * by `swing` (radians, counter-clockwise). Radius, spread and pads are its own; the rest is a drawing's.
 */
export function craneParts(
  { spread, padArea, radius, rise }: CraneSizes,
  swing: number,
): MachineParts {
  const long = 1.55 * (spread ?? 4.5);
  const [rear, front] = [-0.36 * long, 0.64 * long];
  const [low, deck] = [0.55, 1.15];
  const half = TRUCK / 2;
  const wheels = [rear + 0.7, rear + 1.9, front - 1.1].flatMap((x) =>
    [-1, 1].map((side) => box([x - 0.5, x + 0.5], [side * half, side * (half - 0.35)], [0, 1])),
  );
  const bed = box([rear, front - 1.9], [-half, half], [low, deck]);
  const cab = box([front - 1.8, front], [-half, half], [low, 2.6]);
  const turned = new Matrix4().makeRotationZ(swing);
  const post = box([-0.7, 0.6], [-0.7, 0.7], [deck, deck + 1.1]).applyMatrix4(turned);
  const boom = beam([-0.4, 0, deck + 0.9], [radius, 0, rise], 0.42).applyMatrix4(turned);
  const legs = spread === null ? [] : legsOf(spread, padArea);
  return {
    body: merged([bed, post]),
    dark: merged([...wheels, cab, ...legs]),
    arm: merged([boom]),
  };
}

function legsOf(spread: number, padArea: number | null): BufferGeometry[] {
  const at = spread / 2;
  const side = Math.sqrt(padArea ?? 0.16) / 2;
  return [-1, 1].flatMap((x) => [
    // The beams that slide out, one for each pair of legs.
    beam([x * at, -at, 0.7], [x * at, at, 0.7], 0.24),
    ...[-1, 1].flatMap((y) => [
      beam([x * at, y * at, 0.1], [x * at, y * at, 0.85], 0.2),
      box([x * at - side, x * at + side], [y * at - side, y * at + side], [0, 0.1]),
    ]),
    beam([0, 0, 0.7], [x * at, 0, 0.7], 0.3),
  ]);
}

/** A box from one corner to another along each axis. */
function box(x: Span, y: Span, z: Span): BufferGeometry {
  const size = [x, y, z].map(([a, b]) => Math.abs(b - a)) as [number, number, number];
  const made = new BoxGeometry(...size);
  return made.translate((x[0] + x[1]) / 2, (y[0] + y[1]) / 2, (z[0] + z[1]) / 2);
}

/** A square beam between two places. */
function beam(from: ScenePoint, to: ScenePoint, thick: number): BufferGeometry {
  const [a, b] = [new Vector3(...from), new Vector3(...to)];
  const way = b.clone().sub(a);
  const long = way.length();
  way.normalize();
  const side = Math.abs(way.z) > 0.999 ? new Vector3(0, 1, 0) : new Vector3(0, 0, 1);
  side.cross(way).normalize();
  const top = way.clone().cross(side);
  const turned = new Matrix4().makeBasis(way, side, top).setPosition(a.add(b).multiplyScalar(0.5));
  return new BoxGeometry(long, thick, thick).applyMatrix4(turned);
}

function merged(parts: BufferGeometry[]): BufferGeometry {
  const whole = mergeGeometries(parts);
  for (const part of parts) part.dispose();
  return whole;
}
