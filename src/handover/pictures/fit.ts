/** Where a view lies on its page. */
import type { Lens, Shown, ViewCamera } from "./lens.js";
import type { Facet } from "./visible.js";
import type { ViewScene } from "./viewScene.js";

/** mm of the page, and what is left free about the picture. */
export const WIDTH = 280;
export const MARGIN = 8;
const MOST_HEIGHT = 280;

/** Room for names and the arrow beside what is drawn, as a share of it. */
const SPARE = 0.09;

/** The picture's box on the page, mm, and the way there from a lens. */
export interface Fit {
  width: number;
  height: number;
  at: (shown: Shown) => Shown;
}

/** What the lens shows of everything, put on the paper; or the window that the camera has. */
export function fitOf(scene: ViewScene, lens: Lens, camera: ViewCamera, aspect: number): Fit {
  const width = WIDTH - 2 * MARGIN;
  let [west, east, north, south] = [Infinity, -Infinity, Infinity, -Infinity];
  if (camera.kind === "parallel" && camera.window === undefined) {
    for (const { corners } of scene.faces) {
      for (const { x, y } of corners.map((corner) => lens.show(corner))) {
        [west, east] = [Math.min(west, x), Math.max(east, x)];
        [north, south] = [Math.min(north, y), Math.max(south, y)];
      }
    }
    const [spareX, spareY] = [(east - west) * SPARE, (south - north) * SPARE];
    [west, east, north, south] = [west - spareX, east + spareX, north - spareY, south + spareY];
  } else {
    const { x, y, across } = windowOf(scene, lens, camera, aspect);
    [west, east] = [x - across / 2, x + across / 2];
    [north, south] = [y - across / aspect / 2, y + across / aspect / 2];
  }
  const scale = Math.min(width / (east - west), MOST_HEIGHT / (south - north));
  const height = (south - north) * scale;
  const left = MARGIN + (width - (east - west) * scale) / 2;
  return {
    width,
    height,
    at: ({ x, y, near }) => ({
      x: left + (x - west) * scale,
      y: MARGIN + (y - north) * scale,
      near,
    }),
  };
}

/** Middle and width of what a camera with a window of its own shows, in units of the lens. */
function windowOf(scene: ViewScene, lens: Lens, camera: ViewCamera, aspect: number) {
  if (camera.kind === "eye") {
    return { x: 0, y: 0, across: 2 * Math.tan((camera.fov * Math.PI) / 360) * aspect };
  }
  if (camera.window === undefined) throw new Error("a parallel view of no window: got none");
  const [x, y, z] = camera.window.middle;
  const { origin } = scene;
  const middle = lens.show([x - origin[0], y - origin[1], z - origin[2]]);
  return { x: middle.x, y: middle.y, across: camera.window.across };
}

/** The sides of the picture as half planes that hold it. */
export function frameSides({ width, height }: Fit): Facet["near"][] {
  return [
    [1, 0, -MARGIN],
    [-1, 0, MARGIN + width],
    [0, 1, -MARGIN],
    [0, -1, MARGIN + height],
  ];
}
