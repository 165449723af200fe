import { OrthographicCamera, PerspectiveCamera, Vector3 } from "three";
import type { SceneFrame, ScenePoint } from "./frame.js";
import { fitPerspective, uphillBearing, type Covered } from "./framing.js";
import { eyeOf, type Pose } from "./gliding.js";

export const FOV = 30;
const DIP = 36;
/** Degrees off straight uphill, so that a slope and the cut edges of the block both show. */
const ASIDE = 24;
/** m above the lot's edge that must show: trees and roofs. */
const HEADROOM = 4;
/** m: plan view stands this far over its target. */
const ALOFT = 1000;

/** The cameras, and where they look while another one is in use. */
export interface Rig {
  orbit: PerspectiveCamera;
  plan: OrthographicCamera;
  walk: PerspectiveCamera;
  /** How the orbit looks, and (its target and distance) how plan view does. */
  pose: Pose;
  /** True once a person has moved the view: then a resize must not move it again. */
  moved: boolean;
  /** The way that the view of the whole lot looks, degrees; null for up the hill. */
  bearing: number | null;
  /** The lot that was shown whole when it came; empty before the first. */
  place: string;
}

/** The view's size and what of it other things lie over, CSS px. */
export interface ViewWindow {
  width: number;
  height: number;
  top: number;
  bottom: number;
}

/** m that the view is high at one m from the eye. */
const REACH = 2 * Math.tan((FOV * Math.PI) / 360);

export function makeRig(): Rig {
  const orbit = new PerspectiveCamera(FOV, 1, 0.5, 4000);
  const plan = new OrthographicCamera(-1, 1, 1, -1, 0.5, 4000);
  const walk = new PerspectiveCamera(62, 1, 0.06, 3000);
  // fiber would reshape the cameras itself at each resize.
  for (const camera of [orbit, plan, walk]) Object.assign(camera, { manual: true });
  return {
    orbit,
    plan,
    walk,
    pose: { target: [0, 0, 0], bearing: 0, dip: DIP, far: 80 },
    moved: false,
    bearing: null,
    place: "",
  };
}

/** Makes the cameras fit a view of this size, CSS px. */
export function shapeCameras(rig: Rig, width: number, height: number): void {
  for (const camera of [rig.orbit, rig.walk]) {
    camera.aspect = width / Math.max(1, height);
    camera.updateProjectionMatrix();
  }
  rig.plan.left = -width / 2;
  rig.plan.right = width / 2;
  rig.plan.top = height / 2;
  rig.plan.bottom = -height / 2;
  rig.plan.updateProjectionMatrix();
}

/** Puts the camera of a kind where a pose has it; plan view is as wide at the target as orbit. */
export function takePose(rig: Rig, kind: "orbit" | "plan", pose: Pose, height: number): void {
  const target = new Vector3(...pose.target);
  if (kind === "orbit") {
    rig.orbit.position.set(...eyeOf(pose));
    rig.orbit.lookAt(target);
    // The control reads the matrix before the next frame is drawn.
    rig.orbit.updateMatrixWorld();
  } else {
    // A hair south of straight above, so that north is up and not undefined.
    rig.plan.position.set(target.x, target.y - 0.001, target.z + ALOFT);
    rig.plan.lookAt(target);
    rig.plan.zoom = height / (pose.far * REACH);
    rig.plan.updateProjectionMatrix();
    rig.plan.updateMatrixWorld();
  }
}

/** The pose that the camera of a kind has; plan view keeps the bearing and dip that orbit had. */
export function readPose(rig: Rig, kind: "orbit" | "plan", at: Vector3, height: number): Pose {
  const target: ScenePoint = [at.x, at.y, at.z];
  if (kind === "plan") return { ...rig.pose, target, far: height / (rig.plan.zoom * REACH) };
  const { x, y, z } = rig.orbit.position;
  const [east, north, up] = [at.x - x, at.y - y, at.z - z];
  const far = Math.hypot(east, north, up);
  return {
    target,
    bearing: (Math.atan2(east, north) * 180) / Math.PI,
    dip: (Math.asin(-up / far) * 180) / Math.PI,
    far,
  };
}

/** px at the top and bottom of the scene that the page lays its own bars over, from the style sheet. */
export function windowOf(element: HTMLElement, width: number, height: number): ViewWindow {
  const style = getComputedStyle(element);
  const px = (name: string): number => Number.parseFloat(style.getPropertyValue(name)) || 0;
  // A window too low to hold lot and bars at once: the bars may cover some of it, never all.
  const most = 0.3 * height;
  const [top, bottom] = [px("--scene-bar-top"), px("--scene-bar-bottom")];
  return { width, height, top: Math.min(top, most), bottom: Math.min(bottom, most) };
}

/** The pose that shows the whole lot: looking up the hill, or the way that is asked for. */
export function lotPose(
  { frame, floor }: { frame: SceneFrame; floor: number },
  kind: "orbit" | "plan",
  size: ViewWindow,
  bearing: number = uphillBearing(frame.edge) + ASIDE,
): Pose {
  const points: ScenePoint[] = frame.edge.flatMap((p) => [
    [p[0], p[1], p[2] + HEADROOM],
    [p[0], p[1], floor],
  ]);
  return kind === "orbit"
    ? orbitPose(points, { bearing, dip: DIP }, size)
    : planPose(frame.edge, { bearing, dip: DIP }, size, { across: 0.92, up: 0.96 });
}

/** The pose from which orbit sees all the points, looking the way given. */
export function orbitPose(
  points: readonly ScenePoint[],
  look: { bearing: number; dip: number },
  size: ViewWindow,
): Pose {
  const covered: Covered = { top: size.top / size.height, bottom: size.bottom / size.height };
  const aspect = size.width / Math.max(1, size.height);
  const fit = fitPerspective(points, middleOf(points), look, FOV, aspect, covered);
  const far = Math.hypot(...([0, 1, 2] as const).map((i) => fit.eye[i] - fit.target[i]));
  return { target: fit.target, ...look, far };
}

/** The pose in which plan view holds all the points, in the middle of what is free. */
export function planPose(
  points: readonly ScenePoint[],
  look: { bearing: number; dip: number },
  size: ViewWindow,
  fill: { across: number; up: number },
): Pose {
  const [wide, tall] = [spread(points, 0), spread(points, 1)];
  const upright = size.height - size.top - size.bottom;
  const zoom = Math.min((size.width * fill.across) / wide, (upright * fill.up) / tall);
  const [east, north, z] = middleOf(points);
  return {
    target: [east, north - (size.bottom - size.top) / 2 / zoom, z],
    ...look,
    far: size.height / (zoom * REACH),
  };
}

function spread(points: readonly ScenePoint[], axis: 0 | 1 | 2): number {
  const all = points.map((p) => p[axis]);
  return Math.max(...all) - Math.min(...all);
}

function middleOf(points: readonly ScenePoint[]): ScenePoint {
  const middle = (axis: 0 | 1 | 2): number => {
    const all = points.map((p) => p[axis]);
    return (Math.max(...all) + Math.min(...all)) / 2;
  };
  return [middle(0), middle(1), middle(2)];
}
