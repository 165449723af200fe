// three's cameras and controls are changed in place: they are no React state.
/* eslint-disable react-hooks/immutability */
import { useFrame, useThree } from "@react-three/fiber";
import { useEffect, useRef, type ReactElement } from "react";
import { MOUSE, TOUCH } from "three";
import { OrbitControls } from "three/examples/jsm/controls/OrbitControls.js";
import { lotPose, orbitPose, planPose, readPose, takePose, windowOf, type Rig } from "./cameras.js";
import type { SceneFrame } from "./frame.js";
import { glideAt, GLIDE_MS, type Pose } from "./gliding.js";
import { roomAbout } from "./pickedPlaces.js";
import { listenForTwist } from "./twisting.js";
import type { SceneCamera, SceneView } from "./sceneView.js";

interface OutsideRigProps {
  rig: Rig;
  frame: SceneFrame;
  /** Lowest place of the block of ground, scene frame. */
  floor: number;
  kind: "orbit" | "plan";
  reducedMotion: boolean;
  view: SceneView;
}

/** Orbit in perspective and plan truly flat with north up, with the control that moves them. */
export function OutsideRig(props: OutsideRigProps): ReactElement {
  const { rig, frame, floor, kind, reducedMotion, view } = props;
  const { gl, set, invalidate } = useThree();
  const size = useThree((state) => state.size);
  const hand = useRef<RigHand | null>(null);
  const lot = useRef({ frame, floor });
  useEffect(() => {
    lot.current = { frame, floor };
  }, [frame, floor]);

  useEffect(() => {
    const made = new RigHand(rig, kind, view, gl.domElement, invalidate);
    hand.current = made;
    view.camera = made.camera;
    view.setOrbit = (on) => {
      made.controls.enabled = on;
    };
    view.fitLot = (northUp) => {
      rig.moved = false;
      rig.bearing = northUp === true ? 0 : null;
      made.showLot(lot.current, northUp === true);
    };
    view.fitAgain = () => {
      if (!rig.moved) made.showLot(lot.current, false);
    };
    view.frame = (points) => {
      if (points.length > 0) made.showPlaces(points);
    };
    set({ camera: made.camera });
    invalidate();
    return () => {
      rig.pose = made.pose();
      hand.current = null;
      made.dispose();
    };
  }, [gl, invalidate, kind, rig, set, view]);

  useEffect(() => {
    if (!rig.moved) hand.current?.showLot(lot.current, false);
    invalidate();
    // A new lot (another site opened) is framed anew; an edit of this one is not.
  }, [size, kind, rig, invalidate]);

  const place = frame.origin.join();
  useEffect(() => {
    // Coming back from a walk is no new lot.
    if (rig.place === place) return;
    rig.place = place;
    view.fitLot();
  }, [place, rig, view]);

  useEffect(() => hand.current?.setSmooth(!reducedMotion), [reducedMotion, kind]);
  useFrame(() => hand.current?.tick(), -2);
  return <group />;
}

/** How much larger than the thing its view is, and m that it is at the least each way. */
const ROOM = { share: 1.3, least: 2 };

/** The control of one of the two cameras, and the glide that it is in. */
class RigHand {
  readonly controls: OrbitControls;
  readonly camera: SceneCamera;
  private glide: { from: Pose; to: Pose; start: number } | null = null;
  private smooth = true;
  /** Stops listening to two fingers. */
  private readonly deaf: () => void;

  constructor(
    private readonly rig: Rig,
    private readonly kind: "orbit" | "plan",
    private readonly view: SceneView,
    private readonly element: HTMLElement,
    private readonly invalidate: () => void,
  ) {
    this.camera = kind === "plan" ? rig.plan : rig.orbit;
    this.controls = makeControls(this.camera, element, kind);
    this.put(rig.pose);
    // In plan north stays up.
    this.deaf =
      kind === "plan" ? () => undefined : listenForTwist(element, (degrees) => this.twist(degrees));
    this.controls.addEventListener("change", () => this.invalidate());
    this.controls.addEventListener("start", () => {
      this.glide = null;
      rig.moved = true;
    });
  }

  dispose(): void {
    this.deaf();
    this.controls.dispose();
  }

  setSmooth(smooth: boolean): void {
    this.smooth = smooth;
    this.controls.enableDamping = smooth;
    this.controls.dampingFactor = 0.14;
  }

  /** How the camera looks now. */
  pose(): Pose {
    return readPose(this.rig, this.kind, this.controls.target, this.view.height);
  }

  showLot(lot: { frame: SceneFrame; floor: number }, glides: boolean): void {
    const { rig } = this;
    const bearing = rig.bearing ?? undefined;
    const to = lotPose(lot, this.kind, this.window(), bearing);
    // The other view shows the whole lot too when it is turned to.
    this.show(to, glides);
  }

  showPlaces(points: Parameters<SceneView["frame"]>[0]): void {
    this.rig.moved = true;
    const room = roomAbout(points, ROOM.share, ROOM.least);
    const { bearing, dip } = this.pose();
    // From too low, what lies in a hole would not show.
    const look = { bearing, dip: Math.max(24, dip) };
    const to =
      this.kind === "orbit"
        ? orbitPose(room, look, this.window())
        : planPose(room, look, this.window(), { across: 0.9, up: 0.9 });
    this.show(to, true);
  }

  /** Before each frame: a step of the glide, or of the control's own coming to rest. */
  tick(): void {
    const { glide, controls } = this;
    if (glide !== null) {
      const share = (performance.now() - glide.start) / GLIDE_MS;
      if (share >= 1) this.glide = null;
      else this.invalidate();
      this.put(glideAt(glide.from, glide.to, share));
    } else if (controls.enabled) controls.update();
    this.view.target.copy(controls.target);
  }

  /** The picture turned clockwise about the upright through the middle. */
  private twist(degrees: number): void {
    if (!this.controls.enabled) return;
    const pose = this.pose();
    this.put({ ...pose, bearing: pose.bearing - degrees });
    this.invalidate();
  }

  private window() {
    return windowOf(this.element, this.view.width, this.view.height);
  }

  private show(to: Pose, glides: boolean): void {
    this.glide = null;
    if (glides && this.smooth) {
      this.glide = { from: this.pose(), to, start: performance.now() };
    } else this.put(to);
    this.invalidate();
  }

  private put(pose: Pose): void {
    takePose(this.rig, this.kind, pose, this.view.height);
    this.controls.target.set(...pose.target);
    this.controls.update();
    this.view.target.copy(this.controls.target);
  }
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
