import type { Stage } from "../estimate/index.js";

/** How the scene is looked at; site coordinates, m, degrees. */
export type SceneLook =
  | {
      kind: "parallel";
      bearing: number;
      dip: number;
      window: { middle: readonly [number, number, number]; across: number };
    }
  | {
      kind: "eye";
      bearing: number;
      dip: number;
      at: readonly [number, number, number];
      fov: number;
    };

/** Takes pictures of the scene beside what is on the screen, which nothing of it changes. */
export interface SceneShooter {
  /** Of the scene, CSS px. */
  size: () => { width: number; height: number };
  look: () => SceneLook | null;
  /** The stage that is drawn. */
  stage: () => Stage;
  /** The colours that are drawn: by day or by night. */
  theme: () => "light" | "dark";
  /**
   * The scene in so many px as it is seen; or, with degrees, from a little farther off and turned so
   * much about its middle. Null without a camera.
   */
  shoot: (width: number, height: number, turn?: number) => Promise<ImageData | null>;
}
