import { create } from "zustand";
import type { SceneShooter } from "../../scene/index.js";

/** What takes pictures of the scene; null while there is none. */
export const useShooter = create<{ shooter: SceneShooter | null }>()(() => ({ shooter: null }));

export function keepShooter(shooter: SceneShooter | null): void {
  useShooter.setState({ shooter });
}
