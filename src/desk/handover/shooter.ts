import { create } from "zustand";
import type { SceneShooter } from "../../scene/index.js";

interface Held {
  /** What takes pictures of the scene; null while there is none. */
  shooter: SceneShooter | null;
  /** True while pictures are taken: they are handed over and printed, so the scene is drawn by day. */
  byDay: boolean;
}

export const useShooter = create<Held>()(() => ({ shooter: null, byDay: false }));

export function keepShooter(shooter: SceneShooter | null): void {
  useShooter.setState({ shooter });
}
