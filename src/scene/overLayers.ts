/**
 * What is written over the ground, in ranks: each rank finds its places clear of those before it, so
 * that nothing is written over another thing.
 */
import { useEffect, useLayoutEffect, useRef } from "react";
import type { SceneView } from "./sceneView.js";
import type { ScreenBox } from "./spotLayout.js";

/** Ranks of what is written, the first the most wanted: handles that stand where they stand, then
 * works and what is picked, before all else. */
export const RANK = {
  grips: -2,
  ends: -1,
  labels: 0,
  nextProbe: 1,
  limits: 2,
  ladders: 3,
  heights: 4,
} as const;

export type Rank = (typeof RANK)[keyof typeof RANK];

/** Puts things at their places, clear of the boxes given, and says what boxes they take. */
export type LayOver = (taken: readonly ScreenBox[]) => readonly ScreenBox[];

/** Where things may be written: clear of the bars over the scene's top and along its foot. */
export function writable({ width, height }: SceneView): ScreenBox {
  return {
    left: SIDE,
    top: BARS.top,
    width: width - 2 * SIDE,
    height: height - BARS.top - BARS.foot,
  };
}

/** px. */
const SIDE = 8;
const BARS = { top: 56, foot: 76 };

/** Lays one rank over the ground; the ranks after it find their places at the next frame. */
export function layRank(view: SceneView, rank: Rank, lay: LayOver): void {
  const before = [...view.written].flatMap(([other, boxes]) => (other < rank ? boxes : []));
  view.written.set(rank, lay(before));
}

/** Lays a rank anew on every render and after every frame, the ranks before it first. */
export function useOverLayer(view: SceneView, rank: Rank, lay: LayOver): void {
  const latest = useRef(lay);
  useLayoutEffect(() => {
    latest.current = lay;
    layRank(view, rank, lay);
  });
  useEffect(() => {
    const stop = view.subscribe(() => layRank(view, rank, latest.current), rank);
    return () => {
      stop();
      view.written.delete(rank);
    };
  }, [view, rank]);
}
