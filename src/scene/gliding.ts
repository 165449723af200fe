import type { ScenePoint } from "./frame.js";

/** How the orbit looks: at what, which way, how steeply, and from how far. */
export interface Pose {
  target: ScenePoint;
  /** The way that the eye looks, degrees clockwise from north. */
  bearing: number;
  /** Its angle below the level, degrees. */
  dip: number;
  /** m from the eye to the target. */
  far: number;
}

/** ms that the view takes from one pose to another. */
export const GLIDE_MS = 420;

/** Where the eye of a pose is, scene frame. */
export function eyeOf({ target, bearing, dip, far }: Pose): ScenePoint {
  const [b, d] = [(bearing * Math.PI) / 180, (dip * Math.PI) / 180];
  return [
    target[0] - Math.sin(b) * Math.cos(d) * far,
    target[1] - Math.cos(b) * Math.cos(d) * far,
    target[2] + Math.sin(d) * far,
  ];
}

/**
 * The pose a share (0 to 1) of the way from one to another: slow at both ends, turning the short
 * way round, the distance changing by equal factors so that coming nearer looks even.
 */
export function glideAt(from: Pose, to: Pose, share: number): Pose {
  const s = Math.min(1, Math.max(0, share));
  if (s === 1) return to;
  const t = s * s * (3 - 2 * s);
  const mix = (a: number, b: number): number => a + (b - a) * t;
  return {
    target: [
      mix(from.target[0], to.target[0]),
      mix(from.target[1], to.target[1]),
      mix(from.target[2], to.target[2]),
    ],
    bearing: from.bearing + shortTurn(from.bearing, to.bearing) * t,
    dip: mix(from.dip, to.dip),
    far: from.far * (to.far / from.far) ** t,
  };
}

/** Degrees from one bearing to another the short way round: over -180 to 180. */
export function shortTurn(from: number, to: number): number {
  const turn = (((to - from) % 360) + 360) % 360;
  return turn > 180 ? turn - 360 : turn;
}
