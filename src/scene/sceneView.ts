import { Vector3, type Camera, type OrthographicCamera, type PerspectiveCamera } from "three";
import type { DragState, ScreenPoint } from "./dragging.js";
import type { ScenePoint } from "./frame.js";
import type { Ray } from "./picking.js";
import type { ScreenBox } from "./spotLayout.js";

/** What the one who walks can be asked to do. */
export type WalkWay =
  "ahead" | "back" | "left" | "right" | "turnLeft" | "turnRight" | "up" | "down" | "run";

export type SceneCamera = PerspectiveCamera | OrthographicCamera;

/**
 * The bridge between the drawn scene and what lies over it in HTML: projects places to the screen,
 * makes pick rays, and tells its listeners after each drawn frame. One per scene; not React state,
 * so that moving the camera renders no component.
 */
export interface SceneView {
  camera: SceneCamera | null;
  /** CSS px. */
  width: number;
  height: number;
  /** What the orbit turns about; scene frame. */
  target: Vector3;
  /** Cut of the estimate that the latest drawn frame shows, m³ bank; NaN before there is one. */
  drawnCut: number;
  /** Boxes of what is written over the ground, by its rank (see overLayers.ts). */
  readonly written: Map<number, readonly ScreenBox[]>;
  /** Latest drag, for listeners outside React. */
  drag: DragState;
  /** Stops or frees the orbit. */
  setOrbit: (on: boolean) => void;
  /** Shows the whole lot again; `northUp` also turns north to the top. */
  fitLot: (northUp?: boolean) => void;
  /** Turns the view to these places, from near by. */
  frame: (points: readonly ScenePoint[]) => void;
  /** Begins or ends a step or turn of the one who walks; nothing in the other views. */
  go: (way: WalkWay, on: boolean) => void;
  /** Shows the whole lot again if the person has not moved the view, as after a bar grew over it. */
  fitAgain: () => void;
  /** A listener that is called after each frame, those of a lower rank first; the last unless given. */
  subscribe: (listener: () => void, rank?: number) => () => void;
  /** Called as a frame is drawn, with the cut of the estimate that it shows. */
  notify: (drawnCut: number) => void;
}

export function createSceneView(): SceneView {
  let listeners: readonly { call: () => void; rank: number }[] = [];
  return {
    camera: null,
    width: 1,
    height: 1,
    target: new Vector3(),
    drawnCut: NaN,
    written: new Map(),
    drag: { phase: "idle" },
    setOrbit: () => undefined,
    fitLot: () => undefined,
    frame: () => undefined,
    go: () => undefined,
    fitAgain: () => undefined,
    subscribe(call, rank = Infinity) {
      const one = { call, rank };
      const after = listeners.findIndex((other) => other.rank > rank);
      listeners = listeners.toSpliced(after < 0 ? listeners.length : after, 0, one);
      return () => {
        listeners = listeners.filter((other) => other !== one);
      };
    },
    notify(drawnCut) {
      this.drawnCut = drawnCut;
      for (const { call } of listeners) call();
    },
  };
}

const scratch = new Vector3();

/** Where a place shows, CSS px from the scene's top left; null behind the eye or before a camera. */
export function projectPoint(view: SceneView, at: ScenePoint): ScreenPoint | null {
  if (view.camera === null) return null;
  scratch.set(at[0], at[1], at[2]).project(view.camera);
  if (scratch.z < -1 || scratch.z > 1) return null;
  return {
    left: ((scratch.x + 1) / 2) * view.width,
    top: ((1 - scratch.y) / 2) * view.height,
  };
}

/** The ray under a place on the screen; null before there is a camera. */
export function rayAt(view: SceneView, screen: ScreenPoint): Ray | null {
  if (view.camera === null) return null;
  const x = (screen.left / view.width) * 2 - 1;
  const y = 1 - (screen.top / view.height) * 2;
  const near = unprojected(view.camera, x, y, -1);
  const far = unprojected(view.camera, x, y, 1);
  const size = Math.hypot(far[0] - near[0], far[1] - near[1], far[2] - near[2]);
  return {
    from: near,
    along: [(far[0] - near[0]) / size, (far[1] - near[1]) / size, (far[2] - near[2]) / size],
  };
}

function unprojected(camera: Camera, x: number, y: number, z: number): ScenePoint {
  scratch.set(x, y, z).unproject(camera);
  return [scratch.x, scratch.y, scratch.z];
}

/** m that one CSS px covers, across the view, at a place; exact everywhere in plan view. */
export function metresPerPixel(view: SceneView, at: Vector3): number {
  const camera = view.camera;
  if (camera === null) return 1;
  if ("isOrthographicCamera" in camera) {
    return (camera.right - camera.left) / camera.zoom / view.width;
  }
  const deep = camera.position.distanceTo(at);
  return (2 * deep * Math.tan((camera.fov * Math.PI) / 360)) / view.height;
}

/** px on the screen of one metre upwards from a place; 0 where it cannot be seen. */
export function pixelsPerMetre(view: SceneView, [x, y, z]: ScenePoint): number {
  const [foot, top] = [projectPoint(view, [x, y, z]), projectPoint(view, [x, y, z + 1])];
  return foot === null || top === null ? 0 : foot.top - top.top;
}
