import { useThree } from "@react-three/fiber";
import { useEffect, useLayoutEffect, useRef } from "react";
import { SRGBColorSpace, Vector3, WebGLRenderTarget } from "three";
import type { Stage } from "../estimate/index.js";
import type { ViewKind } from "./props.js";
import type { SceneFrame } from "./frame.js";
import type { SceneCamera, SceneView } from "./sceneView.js";
import type { SceneLook, SceneShooter } from "./shooter.js";

const UP = new Vector3(0, 0, 1);

type SceneTheme = ReturnType<SceneShooter["theme"]>;

interface SceneShooterProps {
  view: SceneView;
  frame: SceneFrame;
  kind: ViewKind;
  stage: Stage;
  theme: SceneTheme;
  onReady: (shooter: SceneShooter | null) => void;
}

/** Hands out a way to take pictures; renders nothing. */
export function ScenePictures(props: SceneShooterProps): null {
  const { view, frame, kind, stage, theme, onReady } = props;
  const gl = useThree((state) => state.gl);
  const scene = useThree((state) => state.scene);
  const now = useRef({ frame, kind, stage, theme });
  useLayoutEffect(() => {
    now.current = { frame, kind, stage, theme };
  });
  useEffect(() => {
    onReady({
      size: () => ({ width: view.width, height: view.height }),
      look: () => lookOf(view, now.current.frame),
      stage: () => now.current.stage,
      theme: () => now.current.theme,
      async shoot(width, height, turn) {
        if (view.camera === null) return null;
        const camera = view.camera.clone();
        if (turn !== undefined) turnCamera(camera, turn, middleOf(view, now.current));
        const target = new WebGLRenderTarget(width, height, {
          samples: 4,
          colorSpace: SRGBColorSpace,
        });
        const rows = new Uint8Array(width * height * 4);
        try {
          gl.setRenderTarget(target);
          gl.render(scene, camera);
          gl.setRenderTarget(null);
          await gl.readRenderTargetPixelsAsync(target, 0, 0, width, height, rows);
        } finally {
          target.dispose();
        }
        return upright(rows, width, height);
      },
    });
    return () => onReady(null);
  }, [gl, scene, view, onReady]);
  return null;
}

/** How much smaller all is while it turns, so that corners that come near stay in the picture. */
const ASIDE = 0.84;

/** What turns stands still about this: the lot's middle where all of it is looked at. */
function middleOf(
  view: SceneView,
  { frame, kind }: { frame: SceneFrame; kind: ViewKind },
): Vector3 {
  const { position } = view.camera ?? { position: view.target };
  if (kind === "walk") return position;
  return position.distanceTo(view.target) > 1.5 * frame.reach
    ? new Vector3(...frame.centre)
    : view.target;
}

/** Turns a camera clockwise about the upright through a place. */
function turnCamera(camera: SceneCamera, degrees: number, about: Vector3): void {
  const by = (-degrees * Math.PI) / 180;
  const middle = about.clone();
  camera.position.sub(middle).applyAxisAngle(UP, by).add(middle);
  camera.rotateOnWorldAxis(UP, by);
  camera.zoom *= ASIDE;
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}

/** Rows from the top down: the GPU gives them from the bottom up. */
function upright(rows: Uint8Array, width: number, height: number): ImageData {
  const picture = new ImageData(width, height);
  const long = width * 4;
  for (let y = 0; y < height; y++) {
    picture.data.set(rows.subarray(y * long, (y + 1) * long), (height - 1 - y) * long);
  }
  // The ground covers nothing of the paper by halves.
  for (let i = 3; i < picture.data.length; i += 4) picture.data[i] = 255;
  return picture;
}

function lookOf(view: SceneView, { origin }: SceneFrame): SceneLook | null {
  const { camera, target } = view;
  if (camera === null) return null;
  const place = ({ x, y, z }: Vector3) => [x + origin[0], y + origin[1], z + origin[2]] as const;
  if ("isOrthographicCamera" in camera) {
    const across = (camera.right - camera.left) / camera.zoom;
    return { kind: "parallel", bearing: 0, dip: 90, window: { middle: place(target), across } };
  }
  const way = camera.getWorldDirection(new Vector3());
  return {
    kind: "eye",
    bearing: (Math.atan2(way.x, way.y) * 180) / Math.PI,
    dip: (Math.asin(-way.z) * 180) / Math.PI,
    at: place(camera.position),
    fov: camera.fov,
  };
}
