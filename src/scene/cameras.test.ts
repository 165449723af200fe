import { Object3D, Vector3 } from "three";
import { beforeAll, describe, expect, it } from "vitest";
import { lotPose, makeRig, planPose, readPose, shapeCameras, takePose } from "./cameras.js";
import { scaleBar } from "./figures.js";
import type { SceneFrame, ScenePoint } from "./frame.js";
import type { Pose } from "./gliding.js";
import { roomAbout } from "./pickedPlaces.js";
import { createSceneView, metresPerPixel, projectPoint, type SceneView } from "./sceneView.js";

const SIZE = { width: 900, height: 600, top: 24, bottom: 72 };
const EDGE: readonly ScenePoint[] = [
  [-30, -20, 0],
  [40, -25, 1],
  [35, 30, 9],
  [-28, 22, 8],
];
const FRAME: SceneFrame = {
  origin: [0, 0, 0],
  edge: EDGE,
  centre: [5, 2.5, 4],
  low: 0,
  high: 9,
  reach: 45,
};

/** A view through one of the cameras at a pose. */
function viewAt(kind: "orbit" | "plan", pose: Pose): SceneView {
  const rig = makeRig();
  shapeCameras(rig, SIZE.width, SIZE.height);
  takePose(rig, kind, pose, SIZE.height);
  const view = createSceneView();
  view.camera = kind === "plan" ? rig.plan : rig.orbit;
  view.camera.updateMatrixWorld();
  Object.assign(view, { width: SIZE.width, height: SIZE.height });
  view.target.set(...pose.target);
  return view;
}

function onScreen(view: SceneView, at: ScenePoint): [number, number] {
  const place = projectPoint(view, at);
  if (place === null) throw new Error(`${at.join()} does not show`);
  return [place.left, place.top];
}

beforeAll(() => Object3D.DEFAULT_UP.set(0, 0, 1));

describe("plan view", () => {
  const view = viewAt("plan", lotPose({ frame: FRAME, floor: -3 }, "plan", SIZE));

  it("shows a known length right, wherever, whichever way and however high it lies", () => {
    const scale = metresPerPixel(view, view.target);
    for (const from of [
      [-20, -10, 0],
      [30, 20, 9],
      [5, 5, 400],
    ] as const) {
      for (const bearing of [0, 37, 90, 200]) {
        const b = (bearing * Math.PI) / 180;
        const to: ScenePoint = [from[0] + 10 * Math.sin(b), from[1] + 10 * Math.cos(b), from[2]];
        const [ax, ay] = onScreen(view, from);
        const [bx, by] = onScreen(view, to);
        expect(Math.hypot(bx - ax, by - ay) * scale).toBeCloseTo(10, 4);
        expect((Math.atan2(bx - ax, ay - by) * 180) / Math.PI).toBeCloseTo(
          bearing > 180 ? bearing - 360 : bearing,
          3,
        );
      }
    }
  });

  it("shows places above each other as one, within a hundredth of a px", () => {
    const [ax, ay] = onScreen(view, [12, 7, -4]);
    const [bx, by] = onScreen(view, [12, 7, 12]);
    expect(Math.hypot(ax - bx, ay - by)).toBeLessThan(0.01);
  });

  it("has a scale bar that is as long as a length of its text on the ground", () => {
    const bar = scaleBar("us", metresPerPixel(view, view.target), 140);
    const [ax] = onScreen(view, [0, 0, 3]);
    const [bx] = onScreen(view, [bar.metres, 0, 3]);
    expect(bx - ax).toBeCloseTo(bar.pixels, 3);
    expect(bar.metres).toBeCloseTo(Number.parseFloat(bar.text) * 0.3048, 9);
  });

  it("holds the whole lot between the bars", () => {
    for (const corner of EDGE) {
      const [x, y] = onScreen(view, corner);
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(SIZE.width);
      expect(y).toBeGreaterThan(SIZE.top);
      expect(y).toBeLessThan(SIZE.height - SIZE.bottom);
    }
  });
});

describe("turning to a thing", () => {
  const thing: ScenePoint[] = [
    [10, 10, 3],
    [14, 12, 1],
  ];
  it("puts it large in the middle of what is free, in plan", () => {
    const fill = { across: 0.9, up: 0.9 };
    const room = roomAbout(thing, 1.5, 2);
    const view = viewAt("plan", planPose(room, { bearing: 0, dip: 40 }, SIZE, fill));
    const [x, y] = onScreen(view, [12, 11, 2]);
    expect(x).toBeCloseTo(SIZE.width / 2, 2);
    expect(y).toBeCloseTo((SIZE.top + SIZE.height - SIZE.bottom) / 2, 1);
    // The room is 6 m by 4 m: the upright way is the tighter one.
    expect(metresPerPixel(view, view.target) * 504 * 0.9).toBeCloseTo(4, 6);
  });
});

describe("readPose", () => {
  it("gives back the pose that was taken, in both views", () => {
    const pose: Pose = { target: [12, -7, 3], bearing: 20, dip: 36, far: 55 };
    for (const kind of ["orbit", "plan"] as const) {
      const rig = makeRig();
      rig.pose = pose;
      shapeCameras(rig, SIZE.width, SIZE.height);
      takePose(rig, kind, pose, SIZE.height);
      const read = readPose(rig, kind, new Vector3(...pose.target), SIZE.height);
      expect(read.bearing).toBeCloseTo(20, 6);
      expect(read.dip).toBeCloseTo(36, 6);
      expect(read.far).toBeCloseTo(55, 6);
      expect(read.target).toEqual(pose.target);
    }
  });
});
