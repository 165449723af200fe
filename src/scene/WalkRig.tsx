import { useFrame, useThree } from "@react-three/fiber";
import { useEffect, useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import { Vector3 } from "three";
import { FACE } from "../estimate/index.js";
import type { Rig } from "./cameras.js";
import { uphillBearing } from "./framing.js";
import { pickedPlaces, spreadOf } from "./pickedPlaces.js";
import type { Selection } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SceneView, WalkWay } from "./sceneView.js";
import { terrainOf } from "./terrain.js";
import {
  atLowEdge,
  besideThing,
  isSettling,
  lookAt,
  lookRound,
  stepWalker,
  type Going,
  type Terrain,
  type Walker,
} from "./walking.js";

interface WalkRigProps {
  rig: Rig;
  contents: SceneContents;
  selected: Selection | null;
  reducedMotion: boolean;
  view: SceneView;
}

/** The eye of someone who walks on the ground as it is drawn. */
export function WalkRig(props: WalkRigProps): ReactElement {
  const { rig, contents, reducedMotion, view } = props;
  const { gl, set, invalidate } = useThree();
  const terrain = useMemo(() => terrainOf(contents), [contents]);
  const latest = useRef({ ...props, terrain });
  const hand = useRef<WalkHand | null>(null);
  useLayoutEffect(() => {
    latest.current = { ...props, terrain };
    hand.current?.standOn(terrain, !reducedMotion);
  });
  const place = contents.frame.origin.join();
  useEffect(() => {
    const { contents: on, selected, reducedMotion: still } = latest.current;
    const begin = beginning(on, selected, latest.current.terrain);
    const made = new WalkHand(rig, view, gl.domElement, begin, invalidate);
    made.standOn(latest.current.terrain, !still);
    hand.current = made;
    set({ camera: rig.walk });
    return () => {
      hand.current = null;
      made.dispose();
    };
  }, [gl, invalidate, place, rig, set, view]);
  useFrame((_, seconds) => hand.current?.tick(seconds), -2);
  return <group />;
}

/** Beside what is picked, looking at it; else at the lot's low edge, looking up the hill. */
function beginning(contents: SceneContents, selected: Selection | null, terrain: Terrain): Walker {
  const { frame, ground } = contents;
  const uphill = uphillBearing(frame.edge);
  const places = selected === null ? [] : pickedPlaces(contents, selected);
  let walker: Walker | null = null;
  if (places.length > 0) {
    const { middle, half } = spreadOf(places);
    // A long trench is looked at from beside its middle, not from beyond its end.
    const off = Math.min(6, Math.hypot(half[0], half[1])) + 3.5;
    const isDug = (x: number, y: number): boolean => ground.heightAt(x, y)?.face !== FACE.found;
    walker =
      besideThing({ at: middle, off }, uphill, terrain, isDug) ??
      besideThing({ at: middle, off }, uphill, terrain, () => false);
  }
  return (
    walker ??
    atLowEdge(frame.centre, frame.reach, uphill, terrain) ?? {
      eye: [frame.centre[0], frame.centre[1], frame.centre[2] + 1.65],
      heading: uphill,
      pitch: 0,
    }
  );
}

/** s that one frame may take the walker on, however long the page was at rest before it. */
const MOST_SECONDS = 0.1;

/** The one who walks: what is held down, and the drag that looks round. */
class WalkHand {
  private terrain: Terrain = { heightAt: () => null, isBlocked: () => false };
  private smooth = true;
  private readonly held = new Set<WalkWay>();
  private looking: { pointer: number; x: number; y: number } | null = null;
  private enabled = true;
  private readonly ends = new AbortController();

  constructor(
    private readonly rig: Rig,
    private readonly view: SceneView,
    private readonly element: HTMLElement,
    private walker: Walker,
    private readonly invalidate: () => void,
  ) {
    const { signal } = this.ends;
    element.addEventListener("pointerdown", (e) => this.down(e), { signal });
    element.addEventListener("pointermove", (e) => this.move(e), { signal });
    const gone = (event: PointerEvent): void => {
      if (this.looking?.pointer === event.pointerId) this.looking = null;
    };
    element.addEventListener("pointerup", gone, { signal });
    element.addEventListener("pointercancel", gone, { signal });
    view.camera = rig.walk;
    view.setOrbit = (on) => {
      this.enabled = on;
      if (!on) this.looking = null;
    };
    view.fitLot = () => this.turn({ ...this.walker, heading: 0 });
    view.frame = (points) => {
      if (points.length > 0) this.turn(lookAt(this.walker, spreadOf(points).middle));
    };
    view.go = (way, on) => {
      if (on) this.held.add(way);
      else this.held.delete(way);
      this.invalidate();
    };
    this.pose();
    invalidate();
  }

  dispose(): void {
    this.ends.abort();
    this.view.go = () => undefined;
  }

  /** What is walked on from now: the ground may have been dug away under the feet. */
  standOn(terrain: Terrain, smooth: boolean): void {
    if (terrain === this.terrain && smooth === this.smooth) return;
    this.terrain = terrain;
    this.smooth = smooth;
    this.invalidate();
  }

  /** Before each frame. */
  tick(seconds: number): void {
    const going = goingOf(this.held);
    const moves = going.ahead !== 0 || going.aside !== 0 || going.turn !== 0 || going.tilt !== 0;
    if (moves || isSettling(this.walker, this.terrain)) {
      const time = Math.min(MOST_SECONDS, seconds);
      this.walker = stepWalker(this.walker, going, time, this.terrain, this.smooth);
      if (moves || isSettling(this.walker, this.terrain)) this.invalidate();
    }
    this.pose();
  }

  private turn(walker: Walker): void {
    this.walker = walker;
    this.invalidate();
  }

  private pose(): void {
    const { eye, heading, pitch } = this.walker;
    const [h, p] = [(heading * Math.PI) / 180, (pitch * Math.PI) / 180];
    const way = new Vector3(Math.sin(h) * Math.cos(p), Math.cos(h) * Math.cos(p), Math.sin(p));
    const { walk } = this.rig;
    walk.position.set(...eye);
    walk.lookAt(walk.position.clone().add(way));
    // What is some steps ahead sets the size of what is measured on the screen.
    this.view.target.copy(walk.position).addScaledVector(way, 8);
  }

  private down(event: PointerEvent): void {
    // Another finger may be walking meanwhile.
    if (this.looking !== null || event.button !== 0 || !this.enabled) return;
    this.looking = { pointer: event.pointerId, x: event.clientX, y: event.clientY };
    this.element.setPointerCapture(event.pointerId);
  }

  private move(event: PointerEvent): void {
    const { looking } = this;
    if (looking === null || looking.pointer !== event.pointerId || !this.enabled) return;
    // The picture goes along with the pointer.
    const degrees = this.rig.walk.fov / Math.max(1, this.view.height);
    const [dx, dy] = [event.clientX - looking.x, event.clientY - looking.y];
    this.looking = { ...looking, x: event.clientX, y: event.clientY };
    this.turn(lookRound(this.walker, -dx * degrees, dy * degrees));
  }
}

function goingOf(held: ReadonlySet<WalkWay>): Going {
  const between = (more: WalkWay, less: WalkWay): number =>
    Number(held.has(more)) - Number(held.has(less));
  return {
    ahead: between("ahead", "back"),
    aside: between("right", "left"),
    turn: between("turnRight", "turnLeft"),
    tilt: between("up", "down"),
    runs: held.has("run"),
  };
}
