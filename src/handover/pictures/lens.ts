/**
 * How places are thrown on a picture. Everything here is in a frame of its own: m from an origin near
 * the lot, x east, y north, z up; on the picture x goes right and y down, in units of the lens.
 */
import { dot, unit, type Place } from "./normals.js";

/** Where a place shows: its spot, and how near it is: affine on the picture, larger is nearer. */
export interface Shown {
  x: number;
  y: number;
  near: number;
}

/** From where a view is seen; site coordinates, m and degrees. */
export type ViewCamera =
  | {
      kind: "parallel";
      /** The way that one looks, clockwise from north, and its angle below the level. */
      bearing: number;
      dip: number;
      /** What shows: the middle of the picture and m across it; all of the ground when absent. */
      window?: { middle: Place; across: number };
    }
  | {
      kind: "eye";
      bearing: number;
      dip: number;
      at: Place;
      /** Upright angle of view. */
      fov: number;
    };

/** What is nearer to an eye than this is not seen, m. */
const NEAREST = 0.1;

export interface Lens {
  /** Throws a place on the picture; it must not lie behind `inFront`. */
  show: (place: Place) => Shown;
  /** The part of a convex outline that lies before the eye. */
  inFront: (outline: readonly Place[]) => readonly Place[];
  /** How much `near` changes over one m of depth, at a place that is so near. */
  perMetre: (near: number) => number;
  /** Unit vector from a place to the eye. */
  toEye: (place: Place) => Place;
  /** Unit vectors to the right, up the picture, and away from the eye. */
  axes: { right: Place; up: Place; forward: Place };
}

const less = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

function axesOf(bearing: number, dip: number): Lens["axes"] {
  const [b, d] = [(bearing * Math.PI) / 180, (dip * Math.PI) / 180];
  return {
    forward: [Math.sin(b) * Math.cos(d), Math.cos(b) * Math.cos(d), -Math.sin(d)],
    right: [Math.cos(b), -Math.sin(b), 0],
    up: [Math.sin(b) * Math.sin(d), Math.cos(b) * Math.sin(d), Math.cos(d)],
  };
}

/**
 * The lens of a camera for places from `origin`. A parallel one shows in m; an eye's in tangents off
 * its axis, and near is one over the depth, since that is affine on its picture.
 */
export function lensOf(camera: ViewCamera, origin: Place): Lens {
  const axes = axesOf(camera.bearing, camera.dip);
  const { right, up, forward } = axes;
  if (camera.kind === "parallel") {
    const back: Place = [-forward[0], -forward[1], -forward[2]];
    return {
      axes,
      show: (place) => ({ x: dot(place, right), y: -dot(place, up), near: -dot(place, forward) }),
      inFront: (outline) => outline,
      perMetre: () => 1,
      toEye: () => back,
    };
  }
  const eye = less(camera.at, origin);
  const depth = (place: Place): number => dot(less(place, eye), forward);
  return {
    axes,
    show(place) {
      const from = less(place, eye);
      const deep = dot(from, forward);
      return { x: dot(from, right) / deep, y: -dot(from, up) / deep, near: 1 / deep };
    },
    inFront: (outline) => cutBehind(outline, (place) => depth(place) - NEAREST),
    perMetre: (near) => near * near,
    toEye: (place) => unit(less(eye, place)),
  };
}

/** The part of an outline, or of a line of two places, where `over` is not below nought. */
function cutBehind(outline: readonly Place[], over: (place: Place) => number): Place[] {
  const heights = outline.map(over);
  if (heights.every((height) => height >= 0)) return [...outline];
  const kept: Place[] = [];
  outline.forEach((a, i) => {
    const j = (i + 1) % outline.length;
    const [ha, hb, b] = [heights[i]!, heights[j]!, outline[j]!];
    if (ha >= 0) kept.push(a);
    if (outline.length === 2 && i === 1) return;
    if (ha < 0 !== hb < 0) {
      const s = ha / (ha - hb);
      kept.push([a[0] + (b[0] - a[0]) * s, a[1] + (b[1] - a[1]) * s, a[2] + (b[2] - a[2]) * s]);
    }
  });
  return kept;
}
