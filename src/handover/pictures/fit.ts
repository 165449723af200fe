/** Where a view lies on its page. */
import type { Lens, Shown, ViewCamera } from "./lens.js";
import type { Place } from "./normals.js";
import type { Facet } from "./visible.js";
import type { ViewScene } from "./viewScene.js";

/** mm across the page of a drawing, and what is left free about it. */
export const WIDTH = 280;
export const MARGIN = 8;

/** Room for names and the arrow beside what is drawn, as a share of it. */
const SPARE = 0.07;

/** The picture's box on the page, mm, and the way there from a lens. */
export interface Fit {
  /** Across the whole page. */
  page: number;
  width: number;
  height: number;
  at: (shown: Shown) => Shown;
}

/** What shows of a picture, in units of the lens: x to the right, y down. */
export interface Extent {
  west: number;
  east: number;
  north: number;
  south: number;
}

/** What the lens shows of everything, put on the paper; or the window that the camera has. */
export function fitOf(
  scene: ViewScene,
  lens: Lens,
  camera: ViewCamera,
  aspect: number,
  page = WIDTH,
): Fit {
  if (camera.kind === "parallel" && camera.window === undefined) {
    return fitTo(withSpare(extentOf(scene, lens)), page);
  }
  const { x, y, across } = windowOf(scene, lens, camera, aspect);
  const [half, tall] = [across / 2, across / aspect / 2];
  return fitTo({ west: x - half, east: x + half, north: y - tall, south: y + tall }, page);
}

/** What a parallel lens shows of all faces, from where `pivot` shows. */
export function extentOf(scene: ViewScene, lens: Lens, pivot?: Place): Extent {
  const extent = { west: Infinity, east: -Infinity, north: Infinity, south: -Infinity };
  const from = pivot === undefined ? { x: 0, y: 0 } : lens.show(pivot);
  for (const { corners } of scene.faces) {
    for (const corner of corners) {
      const { x, y } = lens.show(corner);
      extent.west = Math.min(extent.west, x - from.x);
      extent.east = Math.max(extent.east, x - from.x);
      extent.north = Math.min(extent.north, y - from.y);
      extent.south = Math.max(extent.south, y - from.y);
    }
  }
  return extent;
}

/** What holds both. */
export function jointExtent(a: Extent, b: Extent): Extent {
  return {
    west: Math.min(a.west, b.west),
    east: Math.max(a.east, b.east),
    north: Math.min(a.north, b.north),
    south: Math.max(a.south, b.south),
  };
}

/** With room for names and the arrow on all sides. */
export function withSpare({ west, east, north, south }: Extent): Extent {
  const [x, y] = [(east - west) * SPARE, (south - north) * SPARE];
  return { west: west - x, east: east + x, north: north - y, south: south + y };
}

/** Puts an extent on a page so many mm wide, no higher than it is wide. */
export function fitTo({ west, east, north, south }: Extent, page: number): Fit {
  const width = page - 2 * MARGIN;
  const scale = Math.min(width / (east - west), page / (south - north));
  const left = MARGIN + (width - (east - west) * scale) / 2;
  return {
    page,
    width,
    height: (south - north) * scale,
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
