// three's cameras, controls and lights are changed in place: they are no React state.
/* eslint-disable react-hooks/immutability */
import { useFrame, useThree } from "@react-three/fiber";
import { useEffect, useMemo, useRef, type ReactElement } from "react";
import { MOUSE, OrthographicCamera, PerspectiveCamera, TOUCH, Vector3 } from "three";
import { OrbitControls } from "three/examples/jsm/controls/OrbitControls.js";
import type { SceneFrame, ScenePoint } from "./frame.js";
import { fitPerspective, uphillBearing } from "./framing.js";
import type { SceneCamera, SceneView } from "./sceneView.js";

const FOV = 30;
const DIP = 36;
/** Degrees off straight uphill, so that a slope and the cut edges of the block both show. */
const ASIDE = 24;
/** m above the lot's edge that must show: trees and roofs. */
const HEADROOM = 4;

interface CameraRigProps {
  frame: SceneFrame;
  /** Lowest place of the block of ground, scene frame. */
  floor: number;
  kind: "orbit" | "plan";
  reducedMotion: boolean;
  view: SceneView;
}

interface Rig {
  orbit: PerspectiveCamera;
  plan: OrthographicCamera;
  /** Where the orbit's eye was, from its target, when plan view took over. */
  offset: Vector3;
  /** True once a person has moved the view: then a resize must not move it again. */
  moved: boolean;
}

/** The two cameras and their control: orbit in perspective, plan truly flat with north up. */
export function CameraRig({
  frame,
  floor,
  kind,
  reducedMotion,
  view,
}: CameraRigProps): ReactElement {
  const { gl, set, invalidate } = useThree();
  const size = useThree((state) => state.size);
  const rig = useMemo(() => makeRig(), []);
  const controls = useRef<OrbitControls | null>(null);
  const lot = useRef({ frame, floor });
  useEffect(() => {
    lot.current = { frame, floor };
  }, [frame, floor]);

  useEffect(() => {
    const camera = kind === "plan" ? rig.plan : rig.orbit;
    const made = makeControls(camera, gl.domElement, kind);
    made.addEventListener("change", () => invalidate());
    made.addEventListener("start", () => (rig.moved = true));
    controls.current = made;
    if (rig.moved) keepScale(rig, kind, view.height);
    turnTo(rig, kind, view.target);
    made.target.copy(view.target);
    made.update();
    view.camera = camera;
    view.setOrbit = (on) => {
      made.enabled = on;
    };
    set({ camera });
    invalidate();
    return () => {
      view.target.copy(made.target);
      if (kind === "orbit") rig.offset.copy(rig.orbit.position).sub(made.target);
      controls.current = null;
      made.dispose();
    };
  }, [gl, invalidate, kind, rig, set, view]);

  useEffect(() => {
    const fit = () => {
      shapeCameras(rig, size.width, size.height);
      fitLot(rig, lot.current, view, kind, { ...size, ...barsOver(gl.domElement) });
      controls.current?.target.copy(view.target);
      turnTo(rig, kind, view.target);
      controls.current?.update();
      invalidate();
    };
    view.width = size.width;
    view.height = size.height;
    view.fitLot = () => {
      rig.moved = false;
      fit();
    };
    if (rig.moved) shapeCameras(rig, size.width, size.height);
    else fit();
    invalidate();
    // A new lot (another site opened) is framed anew; an edit of this one is not.
  }, [gl, size, kind, rig, view, invalidate]);

  const place = frame.origin.join();
  useEffect(() => view.fitLot(), [place, view]);

  useEffect(() => {
    if (controls.current === null) return;
    controls.current.enableDamping = !reducedMotion;
    controls.current.dampingFactor = 0.14;
  }, [reducedMotion, kind]);

  useFrame(() => {
    const now = controls.current;
    if (now === null) return;
    if (now.enabled) now.update();
    view.target.copy(now.target);
  }, -2);
  return <group />;
}

function makeRig(): Rig {
  const orbit = new PerspectiveCamera(FOV, 1, 0.5, 4000);
  const plan = new OrthographicCamera(-1, 1, 1, -1, 0.5, 4000);
  // fiber would reshape the cameras itself at each resize.
  Object.assign(orbit, { manual: true });
  Object.assign(plan, { manual: true });
  return { orbit, plan, offset: new Vector3(0, -60, 50), moved: false };
}

function makeControls(
  camera: SceneCamera,
  element: HTMLElement,
  kind: "orbit" | "plan",
): OrbitControls {
  const made = new OrbitControls(camera, element);
  made.screenSpacePanning = false;
  made.zoomToCursor = true;
  made.minDistance = 4;
  made.maxDistance = 1500;
  made.minZoom = 0.5;
  made.maxZoom = 400;
  if (kind === "plan") {
    made.enableRotate = false;
    made.mouseButtons = { LEFT: MOUSE.PAN, MIDDLE: MOUSE.DOLLY, RIGHT: MOUSE.PAN };
    made.touches = { ONE: TOUCH.PAN, TWO: TOUCH.DOLLY_PAN };
  } else {
    made.maxPolarAngle = (86 * Math.PI) / 180;
    made.touches = { ONE: TOUCH.ROTATE, TWO: TOUCH.DOLLY_PAN };
  }
  return made;
}

/** Puts the camera of a kind over the target: straight above for plan, where it was for orbit. */
function turnTo(rig: Rig, kind: "orbit" | "plan", target: Vector3): void {
  if (kind === "orbit") {
    rig.orbit.position.copy(target).add(rig.offset);
    rig.orbit.lookAt(target);
    return;
  }
  // A hair south of straight above, so that north is up and not undefined.
  rig.plan.position.set(target.x, target.y - 0.001, target.z + 1000);
  rig.plan.lookAt(target);
}

/** Gives the camera of a kind the scale at the target that the other one had. */
function keepScale(rig: Rig, kind: "orbit" | "plan", height: number): void {
  const reach = 2 * Math.tan((FOV * Math.PI) / 360);
  if (kind === "plan") rig.plan.zoom = height / (rig.offset.length() * reach);
  else rig.offset.setLength(height / (rig.plan.zoom * reach));
  rig.plan.updateProjectionMatrix();
}

function shapeCameras(rig: Rig, width: number, height: number): void {
  rig.orbit.aspect = width / Math.max(1, height);
  rig.orbit.updateProjectionMatrix();
  rig.plan.left = -width / 2;
  rig.plan.right = width / 2;
  rig.plan.top = height / 2;
  rig.plan.bottom = -height / 2;
  rig.plan.updateProjectionMatrix();
}

/** The view's size and what of it other things lie over, CSS px. */
interface Window {
  width: number;
  height: number;
  top: number;
  bottom: number;
}

/** px at the top and bottom of the scene that the page lays its own bars over, from the style sheet. */
function barsOver(element: HTMLElement): { top: number; bottom: number } {
  const style = getComputedStyle(element);
  const px = (name: string): number => Number.parseFloat(style.getPropertyValue(name)) || 0;
  return { top: px("--scene-bar-top"), bottom: px("--scene-bar-bottom") };
}

function fitLot(
  rig: Rig,
  lot: { frame: SceneFrame; floor: number },
  view: SceneView,
  kind: "orbit" | "plan",
  size: Window,
): void {
  const { frame, floor } = lot;
  const points: ScenePoint[] = frame.edge.flatMap((p) => [
    [p[0], p[1], p[2] + HEADROOM],
    [p[0], p[1], floor],
  ]);
  const look = { bearing: uphillBearing(frame.edge) + ASIDE, dip: DIP };
  const aspect = size.width / Math.max(1, size.height);
  // A window too low to hold lot and bars at once: the bars may cover some of it, never all.
  const most = 0.3 * size.height;
  const [top, bottom] = [Math.min(size.top, most), Math.min(size.bottom, most)];
  const covered = { top: top / size.height, bottom: bottom / size.height };
  const fit = fitPerspective(points, frame.centre, look, FOV, aspect, covered);
  rig.offset.set(
    fit.eye[0] - fit.target[0],
    fit.eye[1] - fit.target[1],
    fit.eye[2] - fit.target[2],
  );
  const xs = frame.edge.map((p) => p[0]);
  const ys = frame.edge.map((p) => p[1]);
  const wide = Math.max(...xs) - Math.min(...xs);
  const tall = Math.max(...ys) - Math.min(...ys);
  const upright = size.height - top - bottom;
  rig.plan.zoom = Math.min((size.width * 0.92) / wide, (upright * 0.96) / tall);
  rig.plan.updateProjectionMatrix();
  if (kind === "orbit") view.target.set(...fit.target);
  else {
    // The middle of the lot in the middle of what is free.
    const [east, north] = [
      (Math.max(...xs) + Math.min(...xs)) / 2,
      (Math.max(...ys) + Math.min(...ys)) / 2,
    ];
    view.target.set(east, north - (bottom - top) / 2 / rig.plan.zoom, frame.centre[2]);
  }
}
